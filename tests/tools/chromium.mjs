import { execFileSync } from 'node:child_process';
import { existsSync } from 'node:fs';

/** Debian's packages, the better first: the shell without windows draws the same in half the time. */
const PACKAGES = ['chromium-headless-shell', 'chromium'];

const SHELL = '/usr/bin/chromium-headless-shell';
const USUAL = [
  SHELL,
  '/usr/bin/chromium',
  '/usr/bin/chromium-browser',
  '/usr/bin/google-chrome',
  '/usr/bin/google-chrome-stable',
  '/snap/bin/chromium',
  '/Applications/Chromium.app/Contents/MacOS/Chromium',
];

/** Where a Chromium stands on this machine, or undefined. `CHROMIUM_PATH` comes first. */
export function findChromium() {
  return [process.env.CHROMIUM_PATH, ...USUAL].find((path) => path && existsSync(path));
}

/** Finds a Chromium, installing Debian's when root; undefined where there is none to be had. */
export function ensureChromium() {
  const found = findChromium();
  if (process.env.CHROMIUM_PATH || found === SHELL || process.getuid?.() !== 0 || !existsSync('/usr/bin/apt-get')) return found;
  // Lists of packages may be missing or old: they are fetched when nothing can be installed without.
  for (const name of PACKAGES) if (installed(name) || (apt('update') && installed(name)) || findChromium()) return findChromium();
  return undefined;
}

function installed(name) {
  console.log(`installing ${name} …`);
  return apt('install', '-y', name);
}

function apt(...words) {
  try {
    execFileSync('apt-get', words, { stdio: 'ignore', env: { ...process.env, DEBIAN_FRONTEND: 'noninteractive' } });
    return true;
  } catch {
    return false;
  }
}

/** Switches for a quiet start, as root too. */
export const CHROMIUM_ARGS = [
  '--no-sandbox',
  '--disable-gpu',
  '--disable-quic',
  '--no-first-run',
  '--disable-background-networking',
  '--disable-component-update',
  '--disable-sync',
];
