import { figure, Gap, openFigure, openStep, step } from '../figure.ts';
import { hypot2 } from '../numeric.ts';
import { imageScale } from '../paraxial/conjugates.ts';
import { MM_PER_M } from '../units.ts';
import {
  exitPupilFromShoulder,
  givenFocalLength,
  height,
  infinitySpace,
  magnification,
  numericalAperture,
  power,
  principalPlane,
  referenceFocalLength,
  sensorOffset,
  subjectHeight,
  subjectWidth,
  width,
} from './leaves.ts';

export const objectiveFocalLengthMm = figure({
  id: 'objectiveFocalLengthMm',
  unit: 'mm',
  symbol: 'f_o',
  words: "the objective's own focal length, from its engraving",
  source: 'definition of the marking of infinity-corrected objectives (ISO 8578)',
  needs: [referenceFocalLength, magnification],
  of: (reference, M) => reference / M,
  as: (reference, M) => `${reference} / ${M}`,
});

export const relayFocalLengthMm = openFigure({
  id: 'relayFocalLengthMm',
  unit: 'mm',
  symbol: 'f_R',
  words: "the relay's focal length",
  source: 'definition of the dioptre',
  needs: [givenFocalLength, power],
  of: (f, P) => (typeof f === 'number' ? f : typeof P === 'number' ? MM_PER_M / P : Gap.unknown('/relay/focalLengthMm')),
  as: (f, P) => f || `1000 / ${P}`,
});

/** From the objective's exit pupil to the relay's front principal plane, mm. */
export const principalPlaneDistance = step({
  id: 'principalPlaneDistance',
  symbol: 'z_H',
  unit: 'mm',
  words: "from the objective's exit pupil to the relay's front principal plane",
  needs: [infinitySpace, exitPupilFromShoulder, principalPlane],
  of: (S, e, h) => S - e + h,
  as: (S, e, h) => `${S} − ${e} + ${h}`,
});

/** Height on the sensor per unit of slope, mm: the relay's focal length when it is set to infinity. */
export const scale = step({
  id: 'scale',
  symbol: 'F',
  unit: 'mm',
  words: 'height on the sensor per unit of slope: the focal length itself with the relay set to infinity',
  needs: [relayFocalLengthMm, sensorOffset, principalPlaneDistance],
  of: imageScale,
  as: (f, s, z) => `${f} + ${s} − ${z} × ${s} / ${f}`,
});

export const systemMagnification = figure({
  id: 'systemMagnification',
  unit: '1',
  symbol: 'm',
  words: 'magnification on the sensor',
  source: 'two lenses with collimated light between them: ratio of their focal lengths',
  needs: [scale, objectiveFocalLengthMm],
  of: (F, fo) => F / fo,
  as: (F, fo) => `${F} / ${fo}`,
});

export const pupilDiameterMm = figure({
  id: 'pupilDiameterMm',
  unit: 'mm',
  symbol: 'D_p',
  words: "diameter of the objective's exit pupil",
  source: "Abbe's sine condition",
  needs: [numericalAperture, objectiveFocalLengthMm],
  of: (NA, fo) => 2 * NA * fo,
  as: (NA, fo) => `2 × ${NA} × ${fo}`,
});

export const sensorDiagonal = step({
  id: 'sensorDiagonal',
  symbol: 'd',
  unit: 'mm',
  words: "the sensor's diagonal",
  needs: [width, height],
  of: hypot2,
  as: (W, H) => `√(${W}² + ${H}²)`,
});

export const objectFieldWidthMm = figure({
  id: 'objectFieldWidthMm',
  unit: 'mm',
  symbol: 'w',
  words: "width of the subject that fills the sensor's width",
  source: 'definition of magnification',
  needs: [width, systemMagnification],
  of: (W, m) => W / m,
  as: (W, m) => `${W} / ${m}`,
});

export const objectFieldHeightMm = figure({
  id: 'objectFieldHeightMm',
  unit: 'mm',
  symbol: 'h_o',
  words: "height of the subject that fills the sensor's height",
  source: 'definition of magnification',
  needs: [height, systemMagnification],
  of: (H, m) => H / m,
  as: (H, m) => `${H} / ${m}`,
});

export const objectFieldDiagonalMm = figure({
  id: 'objectFieldDiagonalMm',
  unit: 'mm',
  symbol: 'd_o',
  words: 'diagonal of the field at the subject',
  source: 'definition of magnification',
  needs: [sensorDiagonal, systemMagnification],
  of: (d, m) => d / m,
  as: (d, m) => `${d} / ${m}`,
});

/** The subject's side where it is told, else its other side. */
const side = (id: string, symbol: string, first: typeof subjectWidth, second: typeof subjectWidth) =>
  openStep({
    id,
    symbol,
    unit: 'mm',
    words: 'side of the subject; where one is not told, the other',
    needs: [first, second],
    of: (own, other) => (typeof own === 'number' ? own : typeof other === 'number' ? other : Gap.unknown('/subject/widthMm')),
    as: (own, other) => own || other,
  });
const subjectSideA = side('subjectSideA', 'a_s', subjectWidth, subjectHeight);
const subjectSideB = side('subjectSideB', 'b_s', subjectHeight, subjectWidth);

export const subjectFill = figure({
  id: 'subjectFill',
  unit: '1',
  symbol: 'q_f',
  words:
    "share of the frame's side that the subject takes where it is tightest, its longer side along the frame's: above 1 it does not fit",
  source: 'definition of magnification',
  needs: [systemMagnification, subjectSideA, subjectSideB, width, height],
  of: (m, a, b, W, H) => m * Math.max(Math.max(a, b) / Math.max(W, H), Math.min(a, b) / Math.min(W, H)),
  as: (m, a, b, W, H) => `${m} × max(max(${a}, ${b}) / max(${W}, ${H}), min(${a}, ${b}) / min(${W}, ${H}))`,
});
