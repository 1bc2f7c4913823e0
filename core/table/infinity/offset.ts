import { offConjugate } from '../../aberration/off-conjugate.ts';
import { type Conjugates, farthestOffset } from '../../aberration/off-infinity.ts';
import type { Refocused } from '../../aberration/refocused.ts';
import { figure, Gap, type Node, type Step, step } from '../../figure.ts';
import { rig } from '../../pairing/aperture.ts';
import { objectiveFocalLengthMm, principalPlaneDistance, relayFocalLengthMm } from '../../pairing/first-order.ts';
import { immersion } from '../../pairing/leaves.ts';
import { wavelengthMm } from '../../pairing/resolution.ts';
import { imageScale } from '../../paraxial/conjugates.ts';
import { seenStops } from '../../pupil/stops.ts';

/**
 * What a sensor off the relay's focus does, one chain of figures for each reason why it stands there: a tube that is
 * wrong, a relay that was focused on something not far enough, an extension on purpose.
 */

export const SINE_CONDITION = "phase n δz (1 − cos θ) of an objective that obeys Abbe's sine condition, less the sensor's own focus";

export const conjugates = step({
  id: 'conjugates',
  needs: [immersion, rig, objectiveFocalLengthMm, relayFocalLengthMm, principalPlaneDistance, wavelengthMm],
  of: (n, here, objectiveFocalLength, relayFocalLength, principalPlane, wavelength): Conjugates => ({
    n,
    naAt(sensorOffsetMm) {
      const { radius, limiting } = seenStops({ ...here, sensorOffsetMm });
      return (radius[limiting] as number) / objectiveFocalLength;
    },
    objectiveFocalLength,
    relayFocalLength,
    principalPlane,
    wavelength,
  }),
});

const anyNumber = { bounds: [Number.NEGATIVE_INFINITY, Number.POSITIVE_INFINITY] } as const;

/** What differs between two chains: how their ids, symbols and words begin. */
interface Chain {
  readonly id: string;
  readonly mark: string;
  /** 'with the tube as wrong as that' */
  readonly when: string;
}

/** Height on the sensor per unit of slope with the sensor `offset` beyond the focus; none where no picture forms. */
const scaleAt = ({ id, mark, when }: Chain, offset: Node<number>): Step<number> =>
  step({
    id: `${id}Scale`,
    symbol: `F_${mark}`,
    unit: 'mm',
    words: `height on the sensor per unit of slope, ${when}`,
    needs: [conjugates, relayFocalLengthMm, offset, principalPlaneDistance],
    of: (rig, f, s, z) =>
      s < farthestOffset(rig, -1) || s > farthestOffset(rig, 1)
        ? Gap.none(
            `so far from its focus the relay is no tube lens: it is followed ${Math.round(farthestOffset(rig, -1))} mm in and ${Math.round(farthestOffset(rig, 1))} mm out`,
          )
        : imageScale(f, s, z),
    as: (_, f, s, z) => `${f} + ${s} − ${z} × ${s} / ${f}`,
  });

/** Optical length by which the object is nearer than the objective's focal plane, signed. */
export const shiftAt = ({ id, mark, when }: Chain, offset: Node<number>, scale: Node<number>): Step<number> =>
  step({
    id: `${id}Optical`,
    symbol: `B_${mark}`,
    unit: 'mm',
    words: `optical length by which the subject is nearer than the objective's focal plane, ${when}`,
    needs: [immersion, objectiveFocalLengthMm, offset, relayFocalLengthMm, scale],
    of: (n, fo, s, f, F) => (n * n * fo * fo * s) / (f * F),
    as: (n, fo, s, f, F) => `${n}² × ${fo}² × ${s} / (${f} × ${F})`,
  });

/** The figures of one chain. `before` is the scale, and the optical shift, that the change is counted from. */
export function chain<const Id extends string>(
  as: Chain & { id: Id },
  offset: Node<number>,
  before: { scale: Node<number>; shift?: Node<number> },
) {
  const { id, mark, when } = as;
  const scale = scaleAt(as, offset);
  const shift = shiftAt(as, offset, scale);

  const left = step({
    id: `${id}Left`,
    needs: [conjugates, scale, offset],
    of: ({ n, naAt, objectiveFocalLength }, F, s): Refocused | Gap => {
      const na = naAt(s);
      return F / objectiveFocalLength > na
        ? offConjugate(n, na, F / objectiveFocalLength)
        : Gap.none('the picture is smaller than any lens of that aperture could draw it');
    },
  });
  const part = (name: string, symbol: string, words: string, of: (left: Refocused) => number): Step<number> =>
    step({ id: `${id}${name}`, symbol: `${symbol}_${mark}`, words, needs: [left], of });
  const rms = part('UnitRms', 'u', 'rms of the wavefront per mm of optical shift, at best focus', (w) => w.rms);
  const height = part('UnitHeight', 'v', 'height of the wavefront per mm of optical shift, at best focus', (w) => w.peakToValley);
  const ratio = step({
    id: `${id}Ratio`,
    symbol: `E_${mark}`,
    words: 'square of the mean of exp(2πi W) over the pupil, at best focus',
    needs: [left, shift, wavelengthMm],
    of: (w, B, l) => w.strehl(B / l),
  });

  const magnification = figure({
    id: `${id}Magnification` as const,
    unit: '1',
    symbol: `m_${mark}`,
    words: `magnification on the sensor ${when}`,
    source: 'two lenses, the sensor s beyond the focus of the second: m (1 − (z_H − f_R) s / f_R²)',
    needs: [scale, objectiveFocalLengthMm],
    of: (F, fo) => F / fo,
    as: (F, fo) => `${F} / ${fo}`,
  });
  const magnificationChange = figure({
    ...anyNumber,
    id: `${id}MagnificationChange` as const,
    unit: '1',
    symbol: `Δm_${mark}`,
    words: `share by which the magnification is larger ${when}; less than 0: smaller`,
    source: 'ratio of the heights on the sensor',
    needs: [scale, before.scale],
    of: (F, F0) => (F - F0) / F0,
    as: (F, F0) => `(${F} − ${F0}) / ${F0}`,
  });
  const subjectShift = figure({
    ...anyNumber,
    id: `${id}SubjectShiftMm` as const,
    unit: 'mm',
    symbol: `δ_${mark}`,
    words: `how much farther from the objective the subject is in focus ${when}; less than 0: nearer`,
    source: 'conjugates of two lenses: δz = −n (s/m²) / (1 − (z_H − f_R) s / f_R²)',
    needs: [shift, before.shift ?? shift, immersion],
    of: (B, B0, n) => ((before.shift ? B0 : 0) - B) / n,
    as: (B, B0, n) => `(${before.shift ? B0 : 0} − ${B}) / ${n}`,
  });
  const wavesRms = figure({
    id: `${id}WavesRms` as const,
    unit: 'λ',
    symbol: `W_${mark}`,
    words: `spherical aberration ${when}: rms of the wavefront, refocused with the stage`,
    source: SINE_CONDITION,
    needs: [shift, rms, wavelengthMm],
    of: (B, u, l) => (Math.max(B, -B) * u) / l,
    as: (B, u, l) => `max(${B}, −(${B})) × ${u} / ${l}`,
  });
  const waves = figure({
    id: `${id}Waves` as const,
    unit: 'λ',
    symbol: `P_${mark}`,
    words: `spherical aberration ${when}: the wavefront from its highest to its lowest, refocused with the stage`,
    source: SINE_CONDITION,
    needs: [shift, height, wavelengthMm],
    of: (B, v, l) => (Math.max(B, -B) * v) / l,
    as: (B, v, l) => `max(${B}, −(${B})) × ${v} / ${l}`,
  });
  const strehl = figure({
    id: `${id}Strehl` as const,
    unit: '1',
    symbol: `Q_${mark}`,
    words: `Strehl ratio in the middle of the picture ${when}: 1 for a perfect one`,
    source: `${SINE_CONDITION}; |mean of exp(2πi W)|² over the pupil, at the focus of the least rms`,
    needs: [ratio],
    of: (Q) => Q,
    as: (Q) => Q,
    bounds: [0, 1],
  });
  return { scale, shift, magnification, magnificationChange, subjectShift, wavesRms, waves, strehl };
}
