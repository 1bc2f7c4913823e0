import type { QuantityInput } from '../../parts/quantity.ts';
import type { Piece } from '../threads/adapter.ts';
import type { End } from '../threads/thread.ts';
import type { EndFound } from './ends.ts';
import { asListed, partsOf, type SheetPart, set, tidy } from './parts-list.ts';
import { type Box, gapped, ownedIn, type Run, runBetween } from './run.ts';
import type { Wanted } from './wanted.ts';

/** A ring as one of the pairing's stops. */
export interface SheetStop {
  readonly label: string;
  readonly diameterMm: QuantityInput;
  readonly fromShoulderMm?: number;
  readonly fromSensorMm?: number;
}

/** What stands between objective and relay, or between relay and camera. */
export type SheetRun =
  | {
      readonly state: 'joined';
      /** How many pieces. */
      readonly parts: number;
      readonly lengthMm: number;
      /** What a focusing tube reaches. */
      readonly leastMm: number;
      readonly mostMm: number;
      readonly wantedMm?: number;
      /** The least and the greatest that may be wanted. */
      readonly wantedLowMm?: number;
      readonly wantedHighMm?: number;
      /** How much longer it is than wanted; negative where it is too short. */
      readonly differsMm?: number;
      readonly toBuy: number;
      /** The narrowest of its openings, as a stop. */
      readonly narrowest?: SheetStop;
    }
  /** Nothing joins the ends; so many pieces go on all the same. */
  | { readonly state: 'none'; readonly why: string; readonly wouldDo: string; readonly kept: number }
  | { readonly state: 'unknown'; readonly why: string; readonly path: string }
  | { readonly state: 'nothing'; readonly why: string };

export type Built = { readonly run: SheetRun; readonly parts: readonly SheetPart[]; readonly owned: readonly Piece[] };

const HALF_WALL = 1;
type Place = (from: number, to: number, length: number) => Pick<SheetStop, 'fromShoulderMm' | 'fromSensorMm'> | undefined;

export function built(from: EndFound, to: EndFound, wanted: Wanted | undefined, box: Box, place: Place): Built {
  for (const end of [from, to])
    if ('unknown' in end) return { run: { state: 'unknown', why: end.unknown, path: end.path }, parts: [], owned: [] };
  const [a, b] = [(from as { end: End }).end, (to as { end: End }).end];
  const run = runBetween(a, b, wanted, box);
  if ('miss' in run) {
    const { before, after, wouldDo } = gapped(a, b, run, wanted, box);
    return {
      run: { state: 'none', why: run.miss, wouldDo, kept: before.length + after.length },
      parts: [...before.map(asListed), { what: `missing: ${wouldDo}`, role: 'missing', standing: 'missing' }, ...after.map(asListed)],
      owned: ownedIn([...before, ...after]),
    };
  }
  const narrowest = narrowestOf(run, place);
  return {
    run: {
      state: 'joined',
      parts: run.links.length,
      lengthMm: tidy(run.lengthMm),
      leastMm: tidy(run.least),
      mostMm: tidy(run.most),
      ...(wanted
        ? {
            wantedMm: tidy(wanted.value),
            differsMm: tidy(run.lengthMm - wanted.value),
            wantedLowMm: tidy(wanted.low),
            wantedHighMm: tidy(wanted.high),
          }
        : {}),
      toBuy: run.toBuy,
      ...(narrowest ? { narrowest } : {}),
    },
    parts: partsOf(run),
    owned: ownedIn(run.links),
  };
}

function narrowestOf(run: Run, place: Place): SheetStop | undefined {
  const lengths = set(run);
  let at = 0;
  let found: { clear: number; stop: SheetStop } | undefined;
  run.links.forEach(({ piece }, i) => {
    const to = at + (lengths[i] as number);
    const stands = place(at, to, run.lengthMm);
    if (stands && (!found || piece.clearMm < found.clear)) {
      const value = tidy(piece.clearMm);
      const diameterMm = piece.clearKnown ? value : { value, plusMinus: HALF_WALL, origin: 'assumed' as const };
      found = { clear: piece.clearMm, stop: { label: piece.name, diameterMm, ...stands } };
    }
    at = to;
  });
  return found?.stop;
}
