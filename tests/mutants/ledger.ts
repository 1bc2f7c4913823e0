import { createHash } from 'node:crypto';
import { existsSync, readdirSync, readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import type { Mutant } from './sites.ts';

/** What is kept between runs: which mutants were noticed, and which can't be. */

const NOTICED = join(import.meta.dirname, 'noticed.json');
/** A file for each room of core. */
const EQUIVALENT = join(import.meta.dirname, 'equivalent');

/** A file as it was tried, and its mutants in the order of the text: `1` noticed, `0` not. In hexadecimal. */
type Noticed = Record<string, { readonly text: string; readonly noticed: string }>;

const hashOf = (text: string): string => createHash('sha256').update(text).digest('hex').slice(0, 16);
const read = <T>(file: string, otherwise: T): T => (existsSync(file) ? JSON.parse(readFileSync(file, 'utf8')) : otherwise);

const packed = (bits: readonly boolean[]): string =>
  Array.from({ length: Math.ceil(bits.length / 4) }, (_, i) =>
    [0, 1, 2, 3].reduce((digit, j) => digit + (bits[4 * i + j] ? 1 << j : 0), 0).toString(16),
  ).join('');

/** Whether the i-th mutant of a file was noticed when its text was what it is now. */
export function readNoticed(texts: ReadonlyMap<string, string>): (file: string, i: number) => boolean {
  const kept = read<Noticed>(NOTICED, {});
  const valid = new Map([...texts].map(([file, text]) => [file, kept[file]?.text === hashOf(text) ? kept[file] : undefined]));
  return (file, i) => {
    const digit = valid.get(file)?.noticed[i >> 2];
    return digit !== undefined && (Number.parseInt(digit, 16) >> (i & 3)) % 2 === 1;
  };
}

export function writeNoticed(texts: ReadonlyMap<string, string>, all: readonly { readonly file: string; readonly state: string }[]): void {
  const kept: Noticed = {};
  const by = new Map<string, boolean[]>();
  for (const { file, state } of all) {
    const bits = by.get(file) ?? [];
    bits.push(state === 'noticed');
    by.set(file, bits);
  }
  for (const [file, bits] of by) kept[file] = { text: hashOf(texts.get(file) as string), noticed: packed(bits) };
  writeFileSync(NOTICED, `${JSON.stringify(kept, null, 1)}\n`);
}

/** Changes nothing that could be noticed, with the reason. */
interface Equivalent {
  readonly file: string;
  /** The line that it begins on, without its indent. */
  readonly line: string;
  readonly was: string;
  readonly becomes: string;
  readonly why: string;
}

/** Whether a mutant is listed as equivalent; `stale` has the entries that no mutant answers to any more. */
export function readEquivalent(texts: ReadonlyMap<string, string>) {
  const key = ({ file, line, was, becomes }: Omit<Equivalent, 'why'>): string => JSON.stringify([file, line, was, becomes]);
  const stale = new Map(
    readdirSync(EQUIVALENT).flatMap((name) =>
      read<readonly Equivalent[]>(join(EQUIVALENT, name), []).map((entry) => [key(entry), entry] as const),
    ),
  );
  const listed = new Set(stale.keys());
  const lines = new Map([...texts].map(([file, text]) => [file, text.split('\n').map((line) => line.trim())]));
  const listedOf = (file: string, { line, was, becomes }: Mutant): boolean => {
    const entry = key({ file, line: lines.get(file)?.[line - 1] as string, was, becomes });
    stale.delete(entry);
    return listed.has(entry);
  };
  return { listed: listedOf, stale };
}
