import { execFileSync } from 'node:child_process';
import { existsSync } from 'node:fs';

/** Where a Chromium stands on this machine, or undefined. `CHROMIUM_PATH` comes first. */
export function findChromium() {
  const usual = [
    '/usr/bin/chromium',
    '/usr/bin/chromium-browser',
    '/usr/bin/google-chrome',
    '/usr/bin/google-chrome-stable',
    '/snap/bin/chromium',
    '/Applications/Chromium.app/Contents/MacOS/Chromium',
  ];
  return [process.env.CHROMIUM_PATH, ...usual].find((path) => path && existsSync(path));
}

/** Finds a Chromium, installing Debian's when root; undefined where there is none to be had. */
export function ensureChromium() {
  const found = findChromium();
  if (found) return found;
  if (process.getuid?.() === 0 && existsSync('/usr/bin/apt-get')) {
    try {
      console.log('installing chromium …');
      execFileSync('apt-get', ['update'], { stdio: 'ignore' });
      execFileSync('apt-get', ['install', '-y', 'chromium'], {
        stdio: 'ignore',
        env: { ...process.env, DEBIAN_FRONTEND: 'noninteractive' },
      });
    } catch {
      return undefined;
    }
  }
  return findChromium();
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
