import { existsSync, readFileSync, statSync } from 'node:fs';
import { dirname, join } from 'node:path';
import { Refusal, refusal } from '../problems.ts';
import { FILES, type Files, type Stamp, stampAt, writeWhole } from './disk.ts';
import { type Contents, EMPTY, MOST_BYTES, readContents, reconciled, textOf } from './form.ts';
import { takeTurn } from './turn.ts';

/** What stands in the drawer at this moment, or why its file is left alone. */
export type DrawerState =
  | { readonly state: 'open'; readonly contents: Contents; readonly file: string }
  | { readonly state: 'refused'; readonly why: string; readonly file: string };

/** What a change makes of the contents, if anything, and what it answers. */
export interface Change<Answer> {
  contents?: Contents;
  answer: Answer;
}

export interface Drawer {
  /** Looks whether the file is still the one that was read, and reads it anew where it is not. Never throws. */
  now(): DrawerState;
  /**
   * Changes the contents, one change after the other: `edit` sees what stands on the disk, and what it makes
   * of it is there, whole, when this is done.
   *
   * @param edit may throw a Refusal; then nothing is written
   * @throws Refusal 409 the file is left alone, 422 too much, 503 or 507 it cannot be written
   */
  change<Answer>(edit: (contents: Contents) => Change<Answer>): Promise<Answer>;
}

interface Setting {
  /** The folder of the user's own data: it need not be there yet. */
  folder: string;
  onFault?: (error: unknown) => void;
  files?: Files;
}

/** The drawer of the user's own parts: one file, read when it changes, written whole. */
export function openDrawer({ folder, onFault = () => {}, files = FILES }: Setting): Drawer {
  const file = join(folder, 'drawer.json');
  let known: Contents = EMPTY;
  let seen: { stamp: Stamp | undefined; state: DrawerState } | undefined;

  const remember = (stamp: Stamp | undefined, contents: Contents): DrawerState => {
    known = contents;
    const state: DrawerState = { state: 'open', contents, file };
    seen = { stamp, state };
    return state;
  };

  function now(): DrawerState {
    let stamp: Stamp | undefined;
    try {
      // Before the file is read: what changes while it is read is then seen to have changed.
      stamp = stampAt(file);
      if (seen && seen.stamp === stamp) return seen.state;
      if (stamp === undefined) return remember(stamp, reconciled(known, EMPTY));
      const read =
        statSync(file).size > MOST_BYTES ? { why: `is larger than ${MOST_BYTES} bytes` } : readContents(readFileSync(file, 'utf8'));
      if ('contents' in read) return remember(stamp, reconciled(known, read.contents));
      seen = { stamp, state: { state: 'refused', why: read.why, file } };
      return seen.state;
    } catch (error) {
      // Not kept: it is looked at again each time.
      seen = undefined;
      return { state: 'refused', why: `cannot be read (${(error as NodeJS.ErrnoException).code ?? 'for an unknown reason'})`, file };
    }
  }

  async function changed<Answer>(edit: (contents: Contents) => Change<Answer>): Promise<Answer> {
    openOnly(now());
    let done: (() => Promise<void>) | undefined;
    let began = false;
    try {
      await files.mkdir(folder, { recursive: true, mode: 0o700 });
      // A name that stands for a file elsewhere goes on standing for it.
      const target = existsSync(file) ? await files.realpath(file) : file;
      done = await takeTurn(target, files);
      const { contents } = openOnly(now());
      const { contents: next, answer } = edit(contents);
      if (next) {
        const fresh = { ...next, revision: contents.revision + 1 };
        const text = textOf(fresh);
        if (Buffer.byteLength(text) > MOST_BYTES) throw full(Buffer.byteLength(text));
        const mode = existsSync(target) ? (await files.stat(target)).mode & 0o777 : 0o600;
        began = true;
        remember(await writeWhole(target, text, mode, files), fresh);
      }
      return answer;
    } catch (error) {
      if (error instanceof Refusal) throw error;
      onFault(error);
      if (began) seen = undefined;
      throw unwritten(error, file);
    } finally {
      await done?.();
    }
  }

  let last: Promise<unknown> = Promise.resolve();
  const change = <Answer>(edit: (contents: Contents) => Change<Answer>): Promise<Answer> => {
    const mine = last.then(() => changed(edit));
    last = mine.catch(() => {});
    return mine;
  };

  return { now, change };
}

/** @throws Refusal 409 */
export function openOnly(state: DrawerState): Extract<DrawerState, { state: 'open' }> {
  if (state.state === 'open') return state;
  throw refusal(
    409,
    'drawerRefused',
    `cannot be done: the drawer's file ${state.file} ${state.why}, and is left as it is`,
    state.file,
    'the file mended, or moved elsewhere; a new one is made when the next part is put in',
  );
}

const full = (length: number): Refusal =>
  refusal(
    422,
    'drawerFull',
    'makes the drawer larger than its file may be',
    `${length} bytes`,
    `at most ${MOST_BYTES} bytes: shorter notes or fewer parts`,
  );

/** The system's error in words that say what to do. */
function unwritten(error: unknown, file: string): Refusal {
  const code = (error as NodeJS.ErrnoException).code ?? 'an unknown error';
  const folder = dirname(file);
  if (code === 'ENOSPC' || code === 'EDQUOT')
    return refusal(
      507,
      'diskFull',
      'was not kept: the disk is full; the drawer is as it was before',
      `${code} at ${file}`,
      'some room on the disk, then the same again',
    );
  const would: Record<string, string> = {
    EROFS: `a folder that can be written in place of ${folder}: PUPILWALK_DATA names another`,
    EACCES: `the right to write in ${folder}, or another folder by PUPILWALK_DATA`,
    EPERM: `the right to write in ${folder}, or another folder by PUPILWALK_DATA`,
    ENOTDIR: `a folder: something on the way to ${folder} is a file`,
    EEXIST: `a folder: ${folder} is a file`,
    EBUSY: 'the same again a little later: another server is writing the drawer',
  };
  return refusal(
    503,
    'notWritten',
    'was not kept: the drawer cannot be written now',
    `${code} at ${file}`,
    would[code] ?? `the disk looked after (${code}), then the same again`,
  );
}
