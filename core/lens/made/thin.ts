import { achromatPowers } from '../../glass/achromat.ts';
import { abbeNumber, indexAtLine } from '../../glass/lines.ts';
import type { Medium } from '../../glass/medium.ts';

/**
 * A surface of a thin lens of power 1: its curvature is that of the bending it takes part in and its own
 * offset. A bending is the mean curvature of a piece of glass; a cemented piece goes along with the one before.
 */
export interface ThinSurface {
  readonly bending: number;
  readonly offset: number;
}

/**
 * The surfaces of a thin lens of power 1 for d, which two pieces of glass make an achromat.
 * @throws RangeError where the two are of one Abbe number
 */
export function thinSurfaces(glasses: readonly Medium[], cemented: boolean): readonly ThinSurface[] {
  const [first, second] = glasses as readonly [Medium, Medium?];
  const powers = second ? achromatPowers(1, abbeNumber(first, 'd'), abbeNumber(second, 'd')) : [1];
  const surfaces: ThinSurface[] = [];
  for (const [bending, glass] of glasses.entries()) {
    // Front less back.
    const curved = (powers[bending] as number) / (indexAtLine(glass, 'd') - 1);
    const before = surfaces.at(-1);
    if (before && cemented) surfaces.push({ bending: before.bending, offset: before.offset - curved });
    else surfaces.push({ bending, offset: curved / 2 }, { bending, offset: -curved / 2 });
  }
  return surfaces;
}
