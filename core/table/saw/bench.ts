import { Gap } from '../../figure.ts';
import type { Sheet } from '../../graph.ts';
import { LeafValues } from '../../leaf-values.ts';
import { soundInputs } from '../../pairing/evaluate.ts';
import type { Glassworks } from '../../pairing/glassworks.ts';
import type { Input } from '../../pairing/input.ts';
import { infinitySpace } from '../../pairing/leaves.ts';
import type { Pairing } from '../../pairing/schema.ts';
import { BOUNDS } from '../../parts/quantity.ts';
import type { Reading, Sure } from './readings.ts';
import type { Unknown } from './unknowns.ts';

/** Readings beside what the pairing foretells of them, as functions of the unknowns. */
export interface Bench {
  readonly readings: readonly Reading[];
  readonly unknowns: readonly Unknown[];
  /** What all readings share: the pairing's other inputs that have a ±. */
  readonly shared: readonly Input[];
  /** The infinity spaces at which was looked. */
  readonly spaces: readonly number[];
  /** Reading `i` as foretold with the unknowns at `xs`; Infinity or NaN where there is none. */
  foretold(i: number, xs: readonly number[]): number;
  /** What the pairing would have to say before reading `i` can be foretold. */
  missing(i: number): readonly string[];
  /** The inputs without a ± that what is foretold hangs on: taken as they stand. */
  asTheyStand(xs: readonly number[]): readonly string[];
  /** What the half-widths do to reading `i`: of its own numbers one by one, of each shared input signed. */
  doubts(i: number, xs: readonly number[]): Doubts;
}

export interface Doubts {
  readonly own: readonly number[];
  readonly shared: readonly number[];
}

/** A leaf that is moved while all else stays. */
interface Moved {
  readonly place: number;
  put(current: unknown, x: number): unknown;
  readonly to: number;
}

/**
 * @param counts which of the pairing's other inputs are doubted; all where it is left out
 * @throws PairingError where the pairing contradicts itself
 */
export function benchOf(
  pairing: Pairing,
  readings: readonly Reading[],
  unknowns: readonly Unknown[],
  works?: Glassworks,
  counts: (input: Input) => boolean = () => true,
): Bench {
  const { values, list } = soundInputs(pairing, works);
  const shared = list.filter((input) => input.greatest > input.least && counts(input) && !unknowns.some((u) => u.replaces(input)));
  const sheets = readings.map(({ graph, stood }): Sheet => {
    const leaves = new LeafValues(values);
    for (const { leaf, value } of stood) leaves.set(leaf, value);
    return graph.fill(leaves);
  });
  const places = readings.map(({ graph }) => unknowns.map(({ leaf }) => graph.place.get(leaf)));

  const middles = unknowns.map(({ name }) => Math.max(1, BOUNDS[name][0]));

  const scratch = sheets.map((sheet) => sheet.slice());

  /** Reading i's node with the unknowns at `xs` and one leaf more moved. */
  const worked = (i: number, xs: readonly number[], moved?: Moved): unknown => {
    const { graph, node } = readings[i] as Reading;
    const [base, sheet] = [sheets[i] as Sheet, scratch[i] as Sheet];
    for (let k = 0; k < unknowns.length; k++) {
      const place = places[i]?.[k];
      if (place !== undefined) sheet[place] = (unknowns[k] as Unknown).put(sheet[place], xs[k] as number);
    }
    if (moved) sheet[moved.place] = moved.put(sheet[moved.place], moved.to);
    graph.recompute(sheet);
    if (moved) sheet[moved.place] = base[moved.place];
    return sheet[graph.place.get(node) as number];
  };
  const read = (i: number, xs: readonly number[], own: readonly number[], moved?: Moved): number => {
    const { foretold, says } = readings[i] as Reading;
    if (says !== undefined) return xs[says] as number;
    const value = worked(i, xs, moved);
    return typeof value === 'number' ? foretold(value, own) : Number.NaN;
  };

  const nominal = readings.map(({ own }) => own.map(({ value }) => value));
  const foretold = (i: number, xs: readonly number[]): number => read(i, xs, nominal[i] as number[]);

  return {
    readings,
    unknowns,
    shared,
    spaces: readings.map(({ stood }) => stood.find(({ leaf }) => leaf === infinitySpace)?.value ?? (values.get(infinitySpace) as number)),
    foretold,
    missing(i) {
      if (readings[i]?.says !== undefined) return [];
      const gap = worked(i, middles);
      return gap instanceof Gap ? gap.missing : [];
    },
    asTheyStand(xs) {
      const exact = list.filter((input) => input.greatest === input.least && counts(input) && !unknowns.some((u) => u.replaces(input)));
      return exact.flatMap(({ path, leaf, value, put }) =>
        readings.some(({ graph, stood }, i) => {
          const place = graph.place.get(leaf);
          if (place === undefined || stood.some((other) => other.leaf === leaf)) return false;
          const there = read(i, xs, nominal[i] as number[], { place, put, to: value * 1.01 + 0.01 });
          return Math.abs(there - foretold(i, xs)) > 1e-9 * Math.abs(there);
        })
          ? [path]
          : [],
      );
    },
    doubts(i, xs) {
      const { own, stood, graph } = readings[i] as Reading;
      const numbers = nominal[i] as number[];
      const here = foretold(i, xs);
      const both = ({ value, plusMinus }: Sure, at: (x: number) => number): number =>
        effect(here, at(value - plusMinus), at(value + plusMinus));
      const ownDoubts = own.map((number, k) => both(number, (x) => read(i, xs, numbers.with(k, x))));
      const stoodDoubts = stood.map(({ leaf, ...number }) => {
        const place = graph.place.get(leaf);
        return place === undefined ? 0 : both(number, (to) => read(i, xs, numbers, { place, put: (_, x) => x, to }));
      });
      const sharedDoubts = shared.map((input) => {
        const place = graph.place.get(input.leaf);
        if (place === undefined || stood.some(({ leaf }) => leaf === input.leaf)) return 0;
        const at = (to: number): number => read(i, xs, numbers, { place, put: input.put, to });
        return effect(here, at(input.least), at(input.greatest));
      });
      return { own: [...ownDoubts, ...stoodDoubts], shared: sharedDoubts };
    },
  };
}

/** What moving over an interval does to a value: the greater of the two moves, signed as the way up has it. */
function effect(here: number, atLeast: number, atGreatest: number): number {
  const down = Number.isFinite(atLeast - here) ? here - atLeast : 0;
  const up = Number.isFinite(atGreatest - here) ? atGreatest - here : 0;
  return Math.abs(up) >= Math.abs(down) ? up : down;
}
