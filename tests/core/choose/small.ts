import type { Asked } from '../../../core/choosing.ts';
import type { Objective, Relay } from '../../../core/index.ts';
import type { GlassRelay, Glassworks } from '../../../core/pairing/glassworks.ts';

/** Parts of round numbers: an objective of 20 mm before a relay of 200 mm magnifies 10 times. */
const objective = (magnification: number, na: number, more: Partial<Objective> = {}): Objective => ({
  magnification,
  na,
  referenceFocalLengthMm: 200,
  fieldNumberMm: 40,
  workingDistanceMm: 20,
  parfocalDistanceMm: 60,
  noseDiameterMm: 24,
  exitPupilFromShoulderMm: { value: -20, plusMinus: 0 },
  ...more,
});
export const FIVE = objective(5, 0.14);
export const TEN = objective(10, 0.25);
export const TWENTY = objective(20, 0.4);

export const tube = (focalLengthMm: number, more: Partial<Relay> = {}): Relay => ({
  kind: 'tube-lens',
  focalLengthMm,
  clearApertureMm: 50,
  frontPrincipalPlaneFromRimMm: 0,
  imageCircleMm: 60,
  ...more,
});

/** A search of these parts, each owned, that asks for nothing; 24 mm by 16 mm with pixels of 4 µm. */
export const asking = (objectives: readonly Objective[], relays: readonly Relay[], more: Partial<Asked> = {}): Asked => ({
  want: {},
  sensor: { widthMm: 24, heightMm: 16, pixelPitchUm: 4 },
  objectives: objectives.map((part) => ({ part, owned: true })),
  relays: relays.map((part) => ({ part, owned: true })),
  infinitySpacesMm: [60],
  sort: { by: 'systemMagnification', first: 'least' },
  frontier: ['resolvedDetailUm', 'objectFieldWidthMm'],
  most: 100,
  ...more,
});

/** All that a search says on its way, and what it comes to. */
export function finished<Step, T>(search: Generator<Step, T>): { answer: T; steps: Step[] } {
  const steps: Step[] = [];
  for (;;) {
    const { done, value } = search.next();
    if (done) return { answer: value as T, steps };
    steps.push(value as Step);
  }
}

/** A relay with glass of 200 mm, and glassworks that only say how sharp it is and count how often they are asked. */
export const GLASSY: Relay = {
  kind: 'tube-lens',
  focalLengthMm: 200,
  glass: { radiiMm: [100, -100], thicknessesMm: [5], glasses: [1.5] },
};
export function countingWorks(sharpRadiusMm = 30): { works: Glassworks; traced: () => number } {
  let traced = 0;
  const relay: GlassRelay = {
    focalLengthMm: 200,
    backFocalLengthMm: 195,
    thicknessMm: 5,
    frontPrincipalPlaneMm: 2,
    clearDiameterMm: 50,
    mappingFactor: () => 1,
    sharpRadiusMm: () => {
      traced++;
      return sharpRadiusMm;
    },
    focusSpreadMm: () => 0,
  };
  return { works: { relay: () => relay }, traced: () => traced };
}
