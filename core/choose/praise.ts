import { capital, listed } from '../words.ts';
import { inSentence, PRAISE } from './compared.ts';
import type { Row } from './standing.ts';

/** What pairings abreast are called: A, B, C. */
export const letter = (place: number): string => String.fromCharCode(65 + place);

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
  if (ties.length === places - 1)
    return `A tie on paper with ${listed(ties.map(letter))}: photograph ${ties.length > 1 ? 'them all' : 'both'}.`;
  const best = named(rows, i, 'best');
  const worst = named(rows, i, 'worst');
  const claims =
    best && worst
      ? `${best} of ${all}; ${worst}`
      : best
        ? `${best} of ${all}; worst in nothing`
        : worst
          ? `${worst} of ${all}; best in nothing`
          : `neither best nor worst of ${all} in anything`;
  const levels = ties.length > 0 ? [`on paper a tie with ${listed(ties.map(letter))}: photograph both`] : levelIn(rows, i);
  return capital(`${[claims, ...levels].join('; ')}.`);
}

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

/** Where it shares the first place: with whom, and in what. */
function levelIn(rows: readonly Row[], i: number): string[] {
  const groups = new Map<string, string[]>();
  for (const { id, first } of rows) {
    const words = PRAISE[id]?.level;
    if (!words || !first.includes(i)) continue;
    const others = listed(first.filter((j) => j !== i).map(letter));
    groups.set(others, [...(groups.get(others) ?? []), words]);
  }
  return [...groups].map(([others, words]) => `on paper level with ${others} in ${listed(words)}`);
}
