import { capital, listed } from '../words.ts';
import { inSentence, PRAISE } from './compared.ts';
import type { Row } from './standing.ts';

/** What pairings abreast are called: A, B, C. */
export const letter = (place: number): string => String.fromCharCode(65 + place);

/** Several of them, in order: `A and B`, `A, C and E to H`. */
export function letters(places: readonly number[]): string {
  const runs: number[][] = [];
  for (const place of places) {
    const run = runs.at(-1);
    if (run && run.at(-1) === place - 1) run.push(place);
    else runs.push([place]);
  }
  return listed(
    runs.flatMap((run) => (run.length > 2 ? [`${letter(run[0] as number)} to ${letter(run.at(-1) as number)}`] : run.map(letter))),
  );
}

const COUNTS = ['no', 'one', 'two', 'three', 'four', 'five', 'six', 'seven', 'eight', 'nine', 'ten', 'eleven', 'twelve'];
const count = (n: number): string => COUNTS[n] ?? String(n);

/** So many strengths and so many weaknesses are named; the table has them all. */
const NAMED = 4;

/**
 * What each pairing is best and worst at among these, in one sentence a pairing. Best or worst is only
 * who is so beyond the ± of every difference; where two share the first place both are told as level.
 */
export function praiseOf(rows: readonly Row[]): string[] {
  const places = rows[0]?.answers.length ?? 0;
  return Array.from({ length: places }, (_, i) => sentence(rows, i, places));
}

function sentence(rows: readonly Row[], i: number, places: number): string {
  const ties = tiedWith(rows, i, places);
  const all = `the ${count(places)}`;
  const them = ties.length > 1 ? 'them all' : 'both';
  if (ties.length === places - 1) return `A tie on paper with ${letters(ties)}: photograph ${them}.`;
  const [best, worst] = [named(rows, i, 'best'), named(rows, i, 'worst')];
  const [first, last] = [shares(rows, i, 'first'), shares(rows, i, 'last')];
  // Who is best or worst in anything is tied with nobody.
  const claims =
    best || worst
      ? [`${best || worst} of ${all}`, best ? worst || noneOf(rows, i, 'worst') : noneOf(rows, i, 'best')]
      : [`nowhere alone best or worst of ${all}`, ties.length > 0 ? `on paper a tie with ${letters(ties)}: photograph ${them}` : ''];
  const shared = first || last ? `on paper it shares ${[first, last].filter(Boolean).join(', and ')}` : '';
  return capital(`${[...claims, shared].filter(Boolean).join('; ')}.`);
}

/** `worst in nothing`: only where of no figure it is open who is last, and it shares no last place. */
const noneOf = (rows: readonly Row[], i: number, which: 'best' | 'worst'): string =>
  rows.some((row) => (which === 'best' ? row.firstOpen || row.first.includes(i) : row.lastOpen || row.last.includes(i)))
    ? ''
    : `${which} in nothing`;

/** Those from which nothing that is compared tells it apart. */
const tiedWith = (rows: readonly Row[], i: number, places: number): number[] =>
  Array.from({ length: places }, (_, j) => j).filter((j) => {
    if (j === i) return false;
    const stands = rows.map((row) => row.stands[j]?.[i]);
    return stands.includes('level') && stands.every((s) => s === 'level' || s === 'not known');
  });

/** The figures in which it is so, those that set it apart most first. */
function named(rows: readonly Row[], i: number, which: 'best' | 'worst'): string {
  const own = rows.filter((row) => row[which] === i && PRAISE[row.id]).toSorted((a, b) => apart(b, i) - apart(a, i));
  const words = own.slice(0, NAMED).map((row) => {
    const answer = row.answers[i];
    return `${PRAISE[row.id]?.[which]}${answer?.state === 'known' ? ` (${inSentence(row.id, answer)})` : ''}`;
  });
  return listed(own.length > NAMED ? [...words, `${count(own.length - NAMED)} more`] : words);
}

/** How far it is from the nearest other, as a part of the larger of the two. */
function apart({ answers }: Row, i: number): number {
  const value = (j: number): number => {
    const told = answers[j];
    return told?.state === 'known' ? Math.abs(told.value) : 0;
  };
  const own = value(i);
  return Math.min(...answers.flatMap((_, j) => (j === i ? [] : [Math.abs(value(j) - own) / Math.max(value(j), own, Number.MIN_VALUE)])));
}

/** With whom it shares the first or the last place, and in what. */
function shares(rows: readonly Row[], i: number, which: 'first' | 'last'): string {
  const groups = new Map<string, string[]>();
  for (const row of rows) {
    const words = PRAISE[row.id]?.level;
    if (!words || !row[which].includes(i)) continue;
    const names = letters(row[which].filter((j) => j !== i));
    groups.set(names, [...(groups.get(names) ?? []), words]);
  }
  return groups.size === 0
    ? ''
    : `the ${which} place ${[...groups].map(([names, words]) => `with ${names} in ${listed(words)}`).join(', ')}`;
}
