import type { Pairing } from '../../../../core/index.ts';
import { toldBy } from '../../../../core/table/saw/saw.ts';
import type { Sighting } from '../../../../core/table/saw/sightings.ts';
import { q } from './simulated.ts';

export const NINETY_FIVE_OF_EVEN = 1.959963984540054 / Math.sqrt(3);
export const bare = (rim = 16): Pairing => ({
  objective: {
    magnification: 10,
    na: 0.25,
    referenceFocalLengthMm: 200,
    exitPupilFromShoulderMm: { value: -15, plusMinus: 25, origin: 'assumed' },
  },
  relay: { kind: 'tube-lens', focalLengthMm: 200, clearApertureMm: rim, frontPrincipalPlaneFromRimMm: 0 },
  sensor: { widthMm: 23.5, heightMm: 15.6, pixelPitchUm: 3.9 },
  infinitySpaceMm: 60,
});
export const ruler = (value: number, plusMinus = 0.01): Sighting => ({ kind: 'ruler', acrossMm: q(value, plusMinus) });
export const only = (pairing: Pairing, ...sightings: Sighting[]) => {
  const [result] = toldBy(pairing, { sightings }).results;
  if (!result) throw new Error('nothing was found');
  return result;
};
