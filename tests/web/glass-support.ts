import { adviceOf, glassworks, judgingOf, listedLens, type Places, type SpacingPoint, spacings } from '../../core/glassworks.ts';
import { amount, evaluate, type Pairing, pairingSchema } from '../../core/index.ts';

/** The lens of the tests: a cemented achromat of 198 mm, bent for the close-up job, weak side toward the objective. */
export const R3 = { radiiMm: [1000, -54, -91], thicknessesMm: [11, 4], glasses: ['N-BK7', 'N-SF5'] };

const sure = (value: number) => ({ value, plusMinus: 0, origin: 'measured' as const });

/** It behind an exit pupil of 11.2 mm at the shoulder, in one wavelength, in one frame. */
export const BEHIND = pairingSchema.parse({
  objective: { magnification: 10, na: 0.28, referenceFocalLengthMm: 200, fieldNumberMm: 44, exitPupilFromShoulderMm: sure(0) },
  relay: { kind: 'supplementary', powerDioptre: 5, clearApertureMm: 54, maleThread: '58 x 0.75' },
  sensor: { widthMm: 36, heightMm: 24, pixelPitchUm: 4.35 },
  infinitySpaceMm: 40,
  wavelengthNm: 587.56,
  sharp: { spectrum: 'one wavelength', focus: 'one frame' },
});

export const withGlass = (relay: object = {}): Pairing =>
  pairingSchema.parse({ ...BEHIND, relay: { kind: 'supplementary', clearApertureMm: 54, maleThread: '58 x 0.75', glass: R3, ...relay } });

export const WORKS = glassworks();

/** What core advises over the given places, without the page. */
export function advised(pairing: Pairing, places: Places = { fromMm: 20, toMm: 150, count: 27 }) {
  const { lens } = listedLens(pairing.relay);
  if (!lens) throw new Error('no lens');
  const judging = judgingOf(evaluate(pairing, WORKS), lens);
  const points: (readonly [SpacingPoint, SpacingPoint])[] = [...spacings(judging, places)];
  return adviceOf(judging, points, amount(pairing.infinitySpaceMm));
}
