import { createHash, randomBytes } from 'node:crypto';
import { readFileSync } from 'node:fs';
import { hostname } from 'node:os';
import { basename, dirname, join } from 'node:path';
import { setTimeout } from 'node:timers/promises';
import { FILES, type Files, isUnfinished } from './disk.ts';

/**
 * Whose turn it is to write a file, among all servers on one machine. A server puts up a flag, an empty
 * file whose name says which process it is, and looks round: where no other living process has one up it is
 * its turn, else it takes its own down and tries again a little later. Of two, the one that looks last sees
 * the other's flag, so that never both go ahead. A flag's name is used once: what a killed process left
 * behind can be taken away by anyone at any time, and stops nobody.
 */

/** Flags of another machine on a shared folder, or of one that cannot tell when a process began, count for so long, ms. */
const STRANGE_FLAG = 60_000;
/** A write takes some milliseconds: one who waits longer than this is told so. */
const PATIENCE = 10_000;

interface Process {
  host: string;
  boot: string;
  pid: number;
  /** When it began, in ticks since the machine did; '0' where that cannot be known. */
  since: string;
}

const read = (path: string): string => {
  try {
    return readFileSync(path, 'utf8');
  } catch {
    return '';
  }
};

const short = (text: string): string => createHash('sha256').update(text).digest('hex').slice(0, 8);

/** When a process began; undefined where it is no more, or ended and only its parent has not heard of it. */
function began(pid: number): string | undefined {
  try {
    process.kill(pid, 0);
  } catch (error) {
    if ((error as NodeJS.ErrnoException).code === 'ESRCH') return undefined;
  }
  if (process.platform !== 'linux') return '0';
  // Its name, in brackets, may hold anything: what follows the last bracket is its state, then numbers.
  const [state, ...numbers] = read(`/proc/${pid}/stat`).split(') ').at(-1)?.split(' ') ?? [];
  return state === 'Z' || state === 'X' ? undefined : (numbers[18] ?? '0');
}

const SELF: Process = {
  host: short(hostname()),
  boot: short(read('/proc/sys/kernel/random/boot_id')),
  pid: process.pid,
  since: began(process.pid) ?? '0',
};

const flagOf = (base: string): string =>
  `${base}.turn.${SELF.host}.${SELF.boot}.${SELF.pid}.${SELF.since}.${randomBytes(4).toString('hex')}`;

function processOf(flag: string, base: string): Process | undefined {
  const [, host, boot, pid, since] =
    (flag.startsWith(`${base}.turn.`) &&
      flag.slice(base.length).match(/^\.turn\.([0-9a-f]{8})\.([0-9a-f]{8})\.(\d+)\.(\d+)\.[0-9a-f]{8}$/)) ||
    [];
  return host && boot && pid && since ? { host, boot, pid: Number(pid), since } : undefined;
}

async function isUp(path: string, { host, boot, pid, since }: Process, files: Files): Promise<boolean> {
  const young = async (): Promise<boolean> => {
    const found = await files.stat(path).catch(() => undefined);
    return found !== undefined && Date.now() - found.mtimeMs < STRANGE_FLAG;
  };
  if (host !== SELF.host) return young();
  if (boot !== SELF.boot) return false;
  const now = began(pid);
  if (now === undefined) return false;
  return now === '0' || since === '0' ? young() : now === since;
}

/**
 * Waits for the turn to write the file at `path`.
 *
 * @returns what ends the turn
 * @throws the system's error where no flag can be put up; EBUSY where others never cease
 */
export async function takeTurn(path: string, files: Files = FILES, patience = PATIENCE): Promise<() => Promise<void>> {
  const [folder, base] = [dirname(path), basename(path)];
  const until = performance.now() + patience;
  for (;;) {
    const mine = flagOf(base);
    const down = (): Promise<void> => files.rm(join(folder, mine), { force: true }).catch(() => {});
    await (await files.open(join(folder, mine), 'wx', 0o600)).close();
    try {
      const names = await files.readdir(folder);
      let others = 0;
      for (const name of names) {
        const owner = name === mine ? undefined : processOf(name, base);
        if (!owner) continue;
        if (await isUp(join(folder, name), owner, files)) others++;
        else await files.rm(join(folder, name), { force: true });
      }
      if (others === 0) {
        // Whoever left a new file unfinished is dead, or has lost its turn and shall not end it.
        for (const name of names) if (isUnfinished(name, base)) await files.rm(join(folder, name), { force: true });
        return down;
      }
    } catch (error) {
      await down();
      throw error;
    }
    await down();
    if (performance.now() > until) throw Object.assign(new Error('others are writing'), { code: 'EBUSY' });
    await setTimeout(1 + 8 * Math.random());
  }
}
