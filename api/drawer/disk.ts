import { randomBytes } from 'node:crypto';
import { type BigIntStats, statSync } from 'node:fs';
import * as real from 'node:fs/promises';
import { dirname } from 'node:path';

/** What is used of the file system; a test hands in one that fails. */
export type Files = Pick<typeof real, 'open' | 'rename' | 'rm' | 'mkdir' | 'readdir' | 'stat' | 'realpath'>;
export const FILES: Files = real;

/** Tells one state of a file from any other: a file written anew is another one, with another time. */
export type Stamp = string;

const stampOf = ({ ino, size, mtimeNs }: BigIntStats): Stamp => `${ino}.${size}.${mtimeNs}`;

/** The stamp of what stands at a path now, or undefined where nothing does or can. @throws the system's error */
export function stampAt(path: string): Stamp | undefined {
  try {
    return stampOf(statSync(path, { bigint: true }));
  } catch (error) {
    if (['ENOENT', 'ENOTDIR'].includes((error as NodeJS.ErrnoException).code ?? '')) return undefined;
    throw error;
  }
}

/** A new file beside the old one until it takes its place. */
const unfinished = (path: string): string => `${path}.${randomBytes(6).toString('hex')}.new`;
export const isUnfinished = (name: string, of: string): boolean =>
  name.startsWith(`${of}.`) && /^[0-9a-f]{12}\.new$/.test(name.slice(of.length + 1));

/**
 * Writes a file whole or not at all: the text goes into a new file, onto the disk, and only then takes the
 * old one's name. Whatever fails or stops in between, what stands under the name is the old text or the new
 * one. Done means that the name too is on the disk.
 *
 * @param mode what the new file may be used for by whom
 * @throws the system's error, ENOSPC among them, with the old file as it was
 */
export async function writeWhole(path: string, text: string, mode: number, files: Files = FILES): Promise<Stamp> {
  const fresh = unfinished(path);
  let stamp: Stamp;
  try {
    const handle = await files.open(fresh, 'wx', mode);
    try {
      // Writes on until all of it is there: one write alone may be short on a disk that is nearly full.
      await handle.writeFile(text, 'utf8');
      await handle.sync();
      stamp = stampOf(await handle.stat({ bigint: true }));
    } finally {
      await handle.close();
    }
    await files.rename(fresh, path);
  } catch (error) {
    await files.rm(fresh, { force: true }).catch(() => {});
    throw error;
  }
  await settle(dirname(path), files);
  return stamp;
}

/** Puts a folder's names onto the disk; Windows cannot, and does so by itself. */
async function settle(folder: string, files: Files): Promise<void> {
  if (process.platform === 'win32') return;
  const handle = await files.open(folder, 'r');
  try {
    await handle.sync();
  } finally {
    await handle.close();
  }
}
