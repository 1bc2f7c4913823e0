import { glassNamed, type Lens, type Medium, widestSemiApertures } from '../../core/glassworks.ts';
import { R3 } from './glass-support.ts';

const glass = (name: string): Medium => glassNamed(name) as Medium;

export const achromat: Lens = {
  radiiMm: R3.radiiMm,
  thicknessesMm: R3.thicknessesMm,
  media: R3.glasses.map(glass),
  semiAperturesMm: widestSemiApertures(R3.radiiMm, R3.thicknessesMm),
};
