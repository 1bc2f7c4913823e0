import fc from 'fast-check';
import { plainIndex } from '../../../core/glass/medium.ts';
import type { Lens } from '../../../core/trace/lens.ts';
import { between } from './arbitrary-train.ts';

interface Shape {
  readonly curvature: number;
  readonly thickness: number;
  readonly index: number;
}

const surface: fc.Arbitrary<Shape> = fc.record({
  curvature: fc.oneof({ weight: 5, arbitrary: between(-0.025, 0.025) }, { weight: 1, arbitrary: fc.constant(0) }),
  thickness: between(0.5, 9),
  index: fc.oneof({ weight: 4, arbitrary: between(1.4, 1.9) }, { weight: 1, arbitrary: fc.constant(1) }),
});

/** A shallow surface is as good as none, and spoils the digits of a radius. */
const radiusOf = (curvature: number): number => (Math.abs(curvature) < 1e-5 ? Number.POSITIVE_INFINITY : 1 / curvature);

/** Two to seven surfaces in any order, bent any way, of any media, planes and gaps of air among them; as high as asked for. */
export const lensesUpTo = (semiApertureMm: number): fc.Arbitrary<Lens> =>
  fc.array(surface, { minLength: 2, maxLength: 7 }).map((shapes) => ({
    radiiMm: shapes.map(({ curvature }) => radiusOf(curvature)),
    thicknessesMm: shapes.slice(1).map(({ thickness }) => thickness),
    media: shapes.slice(1).map(({ index }) => plainIndex(index)),
    semiAperturesMm: shapes.map(() => semiApertureMm),
  }));

/** Of plain indices: any wavelength will do. */
export const ANY_NM = 550;
