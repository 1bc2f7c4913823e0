import type { Glassworks } from '../../pairing/glassworks.ts';
import type { Input } from '../../pairing/input.ts';
import type { Pairing } from '../../pairing/schema.ts';
import { type Bench, benchOf } from './bench.ts';
import { type Chosen, choose, meets } from './chosen.ts';
import { along, axis, type Found, type Outcome, type Solved, spansOf, type Unmet } from './found.ts';
import { solveOne } from './one.ts';
import type { Reading } from './readings.ts';
import { restsOn, type Share } from './rests-on.ts';
import { solveTwo } from './two.ts';
import { clashOf, type Known, knownOf, rangeOf, type Unknown } from './unknowns.ts';

/** A number of the pairing that what was seen gives, to be taken as measured. */
export interface Finding extends Chosen {
  /** JSON Pointer of the input that it replaces. */
  readonly path: string;
  /** The greater distance to the ends of its 95 %. */
  readonly plusMinus: number;
  /** The sightings that give it, by place. */
  readonly from: readonly number[];
  /** The pairing's inputs whose ± it carries, as shares of its variance, the greatest first. */
  readonly restsOn: readonly Share[];
  /** Inputs that it hangs on and that have no ±. */
  readonly asTheyStand: readonly string[];
  /** Other values that would show the same. */
  readonly also: readonly { readonly value: number; readonly low: number; readonly high: number }[];
  /** What stood there as exact, and where it comes from, if it is far from this. */
  readonly clash?: { readonly value: number; readonly path: string };
  /** How well several sightings agree. */
  readonly fit?: { readonly chiSquare: number; readonly freedom: number; readonly birge: number };
}

/** What could not be found, and why. */
export interface Unsolved {
  readonly path: string;
  readonly from: readonly number[];
  readonly why: 'missing' | 'unmet' | 'nothing learnt' | 'contradicts';
  /** What the pairing would have to say first, for want of which nothing is foretold. */
  readonly missing?: readonly string[];
  /** What could be seen at all, in the sighting's own unit; an absent end is without limit. */
  readonly spans?: readonly { readonly place: number; readonly least?: number; readonly greatest?: number }[];
  /** What the pairing would say against it. */
  readonly message?: string;
}

export interface Sought {
  readonly findings: readonly Finding[];
  readonly unsolved: readonly Unsolved[];
  readonly solved?: Solved;
  readonly bench: Bench;
}

/** Sightings so many times farther apart than their ± are no doubt to be widened: something was read wrong. */
const FAR_APART = 5;
/** And a result so wide, as a share of itself, is none. */
const WIDE = 0.5;

/** At so many places between its ends a number's interval is looked through for what could be seen. */
const SPAN_PLACES = 25;

/** The unknowns from the readings, with what each finding rests on. */
export function seek(
  pairing: Pairing,
  readings: readonly Reading[],
  unknowns: readonly Unknown[],
  inputs: readonly Input[],
  works?: Glassworks,
): Sought {
  const bench = benchOf(pairing, readings, unknowns, works);
  const from = readings.flatMap(({ place }) => (place < 0 ? [] : [place]));
  const missing = [...new Set(readings.flatMap((_, i) => bench.missing(i)))];
  const failed = (why: Unsolved['why'], more: Partial<Unsolved> = {}): Sought => ({
    bench,
    findings: [],
    unsolved: unknowns.map(({ path }) => ({ path, from, why, ...more })),
  });
  if (missing.length > 0) return failed('missing', { missing });
  const spaces = bench.spaces;
  const ranges = unknowns.map((unknown) => rangeOf(unknown, spaces, inputs));
  const outcome: Outcome = unknowns.length === 1 ? solveOne(bench, ranges[0] as readonly [number, number]) : solveTwo(bench, ranges);
  const known = unknowns.map((unknown) => knownOf(unknown, inputs));
  /** What could be seen at all with unknown k anywhere it is known to be, the others at `xs`. */
  const spansAlong = (k: number, xs: readonly number[]): Spans => {
    const { ratio } = unknowns[k] as Unknown;
    const { least, greatest } = known[k] as Known;
    const line = axis(ratio, [least, greatest]);
    const rows = along(line, SPAN_PLACES).map((x) => readings.map((_, i) => bench.foretold(i, xs.with(k, line.at(x)))));
    return told(spansOf(bench, rows));
  };
  if (!outcome.solved)
    return failed('unmet', { spans: unknowns.length === 1 && known[0] ? spansAlong(0, [0]) : told(outcome.unmet.spans) });
  const { solved } = outcome;
  const xs = (solved.ways[0] as readonly Found[]).map(({ value }) => value);
  const asTheyStand = bench.asTheyStand(xs);
  const inside = solved.ways.filter((way) => way.every((found, k) => meets(found, known[k])));
  const kept = inside.length > 0 ? inside : solved.ways.slice(0, 1);
  const others = solved.ways.filter((way) => !kept.includes(way) || kept.length > 1);
  const findings: Finding[] = [];
  const unsolved: Unsolved[] = [];
  unknowns.forEach((unknown, k) => {
    const of = (ways: Solved['ways']): Found[] => ways.map((way) => way[k] as Found);
    const chosen = choose(of(kept), known[k]);
    // What only the utmost end of its range would show, far from where it surely is, nothing shows.
    if (chosen?.beyond && chosen.cut) {
      unsolved.push({ path: unknown.path, from, why: 'unmet', spans: spansAlong(k, xs) });
      return;
    }
    if (!chosen) {
      unsolved.push({ path: unknown.path, from, why: 'nothing learnt' });
      return;
    }
    const wide = unknown.ratio && chosen.high - chosen.low > WIDE * Math.abs(chosen.value);
    if (wide && solved.freedom > 0 && solved.birge > FAR_APART) {
      unsolved.push({
        path: unknown.path,
        from,
        why: 'contradicts',
        message: 'the sightings are much farther apart than their ±, and one of them is wrong',
      });
      return;
    }
    const { value, low, high } = chosen;
    const clash = clashOf(unknown, chosen, inputs);
    findings.push({
      path: unknown.path,
      ...chosen,
      also: of(others).map(({ value, low, high }) => ({ value, low, high })),
      plusMinus: Math.max(value - low, high - value),
      from,
      restsOn: restsOn(bench, solved, xs, k),
      asTheyStand,
      ...(clash ? { clash } : {}),
      ...(solved.freedom > 0 ? { fit: { chiSquare: solved.chiSquare, freedom: solved.freedom, birge: solved.birge } } : {}),
    });
  });
  return { findings, unsolved, solved, bench };
}

type Spans = NonNullable<Unsolved['spans']>;

/** Of the sightings alone, an end without limit left out. */
const told = (spans: Unmet['spans']): Spans =>
  spans
    .filter(({ place }) => place >= 0)
    .map(({ place, least, greatest }) => ({
      place,
      ...(Number.isFinite(least) ? { least } : {}),
      ...(Number.isFinite(greatest) ? { greatest } : {}),
    }));
