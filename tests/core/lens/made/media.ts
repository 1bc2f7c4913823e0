import { LINES } from '../../../../core/glass/lines.ts';
import type { Medium } from '../../../../core/glass/medium.ts';
import type { Workpiece } from '../../../../core/lens/made/workpiece.ts';
import type { Lens } from '../../../../core/trace/lens.ts';

/** A glass known at three lines, by its index for d and its Abbe number; F and C lie evenly about d. */
export const glassOf = (n: number, abbe: number): Medium => ({
  name: `${n} ${abbe}`,
  rangeNm: [LINES.F, LINES.C],
  indexAt: (nm) => n + ((nm === LINES.F ? 1 : nm === LINES.C ? -1 : 0) * (n - 1)) / abbe / 2,
});

/** The lens as it stands, as high as `wide` everywhere. */
export const lensOf = ({ media, d }: Workpiece, wide: number): Lens => ({
  radiiMm: Array.from(d.curvature, (c) => 1 / c),
  thicknessesMm: Array.from(d.gap).slice(1),
  media,
  semiAperturesMm: Array.from(d.curvature, () => wide),
});
