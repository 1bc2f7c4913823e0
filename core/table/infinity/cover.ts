import { type Plate, platesAberration, SLIP_INDEX } from '../../aberration/plate.ts';
import { type Refocused, scaleAtStrehl } from '../../aberration/refocused.ts';
import { figure, Gap, type Step, step } from '../../figure.ts';
import { systemNa } from '../../pairing/aperture.ts';
import { coverGlass, immersion } from '../../pairing/leaves.ts';
import { wavelengthMm } from '../../pairing/resolution.ts';
import { resin, resinIndex, slip, slipIndex, strehlLimit } from './settings.ts';

/** Cover slip and resin over the subject, against the cover glass that the objective is made for. */

const PLATES = 'plane plates by Snell’s law, d (n_p cos θ_p − n cos θ), refocused with the stage';
const STEEP = 'light as steep as this aperture does not leave the slip or the resin';

/** Aberration of plates of the thicknesses given, or none where the light does not pass them. */
const through = (plates: readonly Plate[], n: number, na: number): Refocused | Gap =>
  plates.some(({ thicknessMm, index }) => thicknessMm !== 0 && index <= na) ? Gap.none(STEEP) : platesAberration(plates, n, na);

const left = step({
  id: 'coverLeft',
  needs: [immersion, systemNa, coverGlass, slip.leaf, slipIndex.leaf, resin.leaf, resinIndex.leaf],
  of: (n, na, due, dc, nc, de, ne) =>
    through(
      [
        { thicknessMm: dc, index: nc },
        { thicknessMm: de, index: ne },
        { thicknessMm: -due, index: SLIP_INDEX },
      ],
      n,
      na,
    ),
});

const part = (id: string, symbol: string, unit: string, words: string, of: (left: Refocused) => number): Step<number> =>
  step({ id, symbol, unit, words, needs: [left], of });
const rms = part('coverRms', 'u_c', 'mm', 'rms of the wavefront that the plates leave, at best focus', (w) => w.rms);
const height = part('coverHeight', 'v_c', 'mm', 'height of the wavefront that the plates leave, at best focus', (w) => w.peakToValley);
const ratio = step({
  id: 'coverRatio',
  symbol: 'E_c',
  words: 'square of the mean of exp(2πi W) over the pupil, at best focus',
  needs: [left, wavelengthMm],
  of: (w, l) => w.strehl(1 / l),
});

export const coverWavesRms = figure({
  id: 'coverWavesRms',
  unit: 'λ',
  symbol: 'W_c',
  words: 'spherical aberration of slip and resin, less the cover glass that the objective is made for: rms of the wavefront',
  source: PLATES,
  needs: [rms, wavelengthMm],
  of: (u, l) => u / l,
  as: (u, l) => `${u} / ${l}`,
});

export const coverWaves = figure({
  id: 'coverWaves',
  unit: 'λ',
  symbol: 'P_c',
  words: 'spherical aberration of slip and resin, less the cover glass that the objective is made for: from its highest to its lowest',
  source: PLATES,
  needs: [height, wavelengthMm],
  of: (v, l) => v / l,
  as: (v, l) => `${v} / ${l}`,
});

export const coverStrehl = figure({
  id: 'coverStrehl',
  unit: '1',
  symbol: 'Q_c',
  words: 'Strehl ratio in the middle of the picture, through slip and resin as they are: 1 for a perfect one',
  source: `${PLATES}; |mean of exp(2πi W)|² over the pupil`,
  needs: [ratio],
  of: (Q) => Q,
  as: (Q) => Q,
  bounds: [0, 1],
});

/** Waves per mm of optical path at which one mm of the slip's glass takes the Strehl ratio to its limit. */
const slipScale = step({
  id: 'slipScale',
  symbol: 'k_c',
  unit: '1/mm',
  words: 'how many waves a mm must be for a mm of the slip to take the Strehl ratio to its limit',
  needs: [immersion, systemNa, slipIndex.leaf, strehlLimit.leaf],
  of: (n, na, nc, limit) => {
    const unit = through([{ thicknessMm: 1, index: nc }], n, na);
    return unit instanceof Gap ? unit : scaleAtStrehl(unit, limit);
  },
});

export const slipToleranceMm = figure({
  id: 'slipToleranceMm',
  unit: 'mm',
  symbol: 'Δd_c',
  words: 'how much thicker or thinner than due a slip of that glass may be before spherical aberration shows',
  source: PLATES,
  needs: [slipScale, wavelengthMm],
  of: (k, l) => k * l,
  as: (k, l) => `${k} × ${l}`,
});
