import type { Variable } from '../../../core/choose/quantities.ts';
import { windowOf } from '../../../core/choose/windows.ts';
import { type Limit, limitsOf, type Want, wantSchema } from '../../../core/choosing.ts';
import { contradictions, numberIn, type Pairing, report, withValue } from '../../../core/index.ts';
import { inputsOf } from '../../../core/pairing/inputs.ts';
import { figureById, planFor } from '../../../core/pairing/registry.ts';
import type { Random } from '../../support/random.ts';
import { WISH } from './wish.ts';

/** A wish that sets every limit, for the figures and senses of each. */
const EVERY = [...limitsOf(wantSchema.parse({ ...WISH, subject: { ...WISH.subject, widthMm: 1 } })), ...limitsOf({ minCoveredShare: 0.9 })];

/** Where each quantity is looked for in these tests; wider than where most windows end. */
export const RANGES: Readonly<Record<Variable, readonly [number, number]>> = {
  '/relay/focalLengthMm': [40, 700],
  '/infinitySpaceMm': [0, 400],
  '/relay/clearApertureMm': [2, 150],
};

/** A figure over the quantity, undefined where there is no such rig: its value alone, and of the whole pairing's report. */
export function figureOver(pairing: Pairing, vary: Variable, { figure }: Limit) {
  const { graph } = planFor([figure]);
  const place = graph.place.get(figureById(figure)) as number;
  const there = (x: number): Pairing | undefined => {
    const changed = withValue(pairing, vary, x);
    return contradictions(changed).length > 0 ? undefined : changed;
  };
  return {
    alone: (x: number): number | undefined => {
      const changed = there(x);
      const value = changed && graph.fill(inputsOf(changed).values)[place];
      return typeof value === 'number' ? value : undefined;
    },
    reported: (x: number): number | undefined => {
      const changed = there(x);
      return changed && numberIn(report(changed).figures[figure]);
    },
  };
}

/** Limits that a rig somewhere in the range just about meets, so that windows end inside it; full coverage now and then. */
export function limitsFor(r: Random, pairing: Pairing, vary: Variable, count: number): Limit[] {
  const [from, to] = RANGES[vary];
  return Array.from({ length: count }, () => r.oneOf(EVERY))
    .filter((limit, i, all) => all.findIndex(({ name }) => name === limit.name) === i)
    .map((limit) => {
      if (limit.name === 'frameCovered' && r.chance(0.4)) return { ...limit, limit: 1 };
      const there = figureOver(pairing, vary, limit).alone(r.between(from, to)) ?? 0;
      return Number.isFinite(there) && there > 0 ? { ...limit, limit: there * r.between(0.9, 1.1) } : limit;
    });
}

export const RIG: Pairing = {
  objective: {
    magnification: 10,
    na: 0.25,
    referenceFocalLengthMm: 200,
    fieldNumberMm: 22,
    workingDistanceMm: 10,
    parfocalDistanceMm: 60,
    noseDiameterMm: 24,
    exitPupilFromShoulderMm: { value: -20, plusMinus: 0 },
  },
  relay: { kind: 'tube-lens', focalLengthMm: 200, clearApertureMm: 50, frontPrincipalPlaneFromRimMm: 4 },
  sensor: { widthMm: 27.5, heightMm: 18.24, pixelPitchUm: 4 },
  infinitySpaceMm: 60,
  subject: { widthMm: 1, heightMm: 1.5 },
};
export const ofWant = (want: Want, pairing = RIG, vary: Variable = '/relay/focalLengthMm', range: { from?: number; to?: number } = {}) =>
  windowOf({ pairing, vary, limits: limitsOf(wantSchema.parse(want)), ...range });
