import { percent } from '../words.ts';
import type { Evaluation } from './evaluate.ts';
import { GLASS } from './input.ts';
import { resolving } from './phrases.ts';
import { TOLD } from './registry.ts';
import type { Coverage } from './verdict.ts';

const CORNER = TOLD.findIndex((f) => f.id === 'cornerIllumination');

/** The part of the doubt, as squares, that one input must make to be named alone. */
const MAIN_PART = 0.7;
/** Narrower spreads than this are not worth words. */
const TOLD_SPREAD = 0.05;

const share = (E: number): string =>
  E < 0.001 ? 'no light' : E >= 0.9995 ? 'all of the light' : `${percent(Math.min(E, 0.99))} of the light`;
const bare = (E: number): string => (E < 0.001 ? 'nothing' : E >= 0.9995 ? 'all' : percent(Math.min(E, 0.99)));

/** Both ends with one sign where both are per cent. */
const between = (low: number, high: number): string => `${bare(high) === 'all' ? bare(low) : bare(low).replace(' %', '')} to ${bare(high)}`;

/**
 * The corner's light and what it may be. What narrows it down is named where one input makes nearly all of
 * the doubt, and only once: `named` are those that the sentence has named already.
 */
export function cornerLight({ answers, spread }: Evaluation, named?: readonly string[]): string {
  const E = answers.cornerIllumination;
  if (E.state !== 'known') return 'an unknown share of the light';
  const low = E.low ?? E.value;
  const high = E.high ?? E.value;
  if (high - low < TOLD_SPREAD) return share(E.value);
  const pull = (m: (typeof spread.moves)[number]): number => Math.max(m.up[CORNER] as number, m.down[CORNER] as number);
  const most = spread.moves.toSorted((a, b) => pull(b) - pull(a))[0];
  if (most?.input.path === GLASS) return `${share(E.value)}, or ${bare(low)} by the way the relay maps angles`;
  const others = spread.moves.filter((m) => m !== most).reduce((sum, m) => sum + pull(m) ** 2, 0);
  const alone = named && most && !named.includes(most.input.path) && pull(most) ** 2 >= MAIN_PART * (pull(most) ** 2 + others);
  const may =
    E.value >= 0.9995
      ? `or as little as ${bare(low)}`
      : E.value < 0.001
        ? `or as much as ${bare(high)}`
        : `anywhere from ${between(low, high)}`;
  return `${share(E.value)}, ${may}${alone ? ` until you ${resolving(most.input.path)}` : ''}`;
}

/** The light in the corners, where it is not what bites. */
export function lightBesides(evaluation: Evaluation, coverage: Coverage): string {
  const E = evaluation.answers.cornerIllumination;
  if (coverage.bites === 'lit') return '';
  if (E.state !== 'known') return "How much light the corners get is not known: give the relay's clear opening.";
  if (E.value >= 0.9995 && (E.low ?? E.value) > 1 - TOLD_SPREAD) return 'Light reaches the corners fully.';
  return `The corners get ${cornerLight(evaluation)}.`;
}
