import type { BOUNDS } from '../../core/index.ts';

/** One input of the page. `bound` names the limits that core keeps for it. */
export interface Field {
  /** The last steps of its path, below the part. */
  key: string;
  label: string;
  kind: 'quantity' | 'number' | 'whole' | 'text' | 'choice' | 'truth';
  unit?: string;
  bound?: keyof typeof BOUNDS;
  choices?: readonly (readonly [value: string, text: string])[];
  /** Limits of its own, where core keeps none under a name. */
  ends?: readonly [least: number, greatest: number];
  /** That a view of its own brought it. */
  brought?: true;
}

const quantity = (key: keyof typeof BOUNDS, label: string, unit = 'mm'): Field => ({ key, label, unit, kind: 'quantity', bound: key });
const number = (key: string, bound: keyof typeof BOUNDS, label: string, unit: string): Field => ({
  key,
  label,
  unit,
  kind: 'number',
  bound,
});
const text = (key: string, label: string): Field => ({ key, label, kind: 'text' });
const truth = (key: string, label: string): Field => ({ key, label, kind: 'truth' });
const choice = (key: string, label: string, choices: Field['choices']): Field => ({
  key,
  label,
  kind: 'choice',
  ...(choices ? { choices } : {}),
});

export const OBJECTIVE: readonly Field[] = [
  text('name', 'Name'),
  quantity('magnification', 'Magnification engraved', '×'),
  quantity('na', 'Numerical aperture', ''),
  quantity('referenceFocalLengthMm', 'Tube lens the engraving is for'),
  quantity('fieldNumberMm', 'Field number'),
  quantity('testedFieldMm', 'Field you tested good'),
  quantity('workingDistanceMm', 'Working distance'),
  quantity('parfocalDistanceMm', 'Parfocal distance'),
  quantity('exitPupilFromShoulderMm', 'Exit pupil, from the shoulder toward the relay'),
  quantity('coverGlassMm', 'Cover glass'),
  quantity('immersionIndex', 'Index of what it dips in', ''),
  quantity('noseDiameterMm', 'Width of the nose'),
  text('mountThread', 'Mounting thread'),
  choice('correction', 'Correction', [
    ['achromat', 'achromat'],
    ['semi-apochromat', 'semi-apochromat'],
    ['apochromat', 'apochromat'],
  ]),
  truth('flatField', 'Flat field (plan)'),
  truth('tubeLensCorrectsColour', 'Its own tube lens corrects colour'),
];

export const RELAY: readonly Field[] = [
  text('name', 'Name'),
  choice('kind', 'Kind', [
    ['supplementary', 'close-up lens'],
    ['camera-lens', 'camera lens at infinity'],
    ['tube-lens', 'tube lens'],
  ]),
  quantity('focalLengthMm', 'Focal length, as set'),
  quantity('powerDioptre', 'Power', 'D'),
  quantity('clearApertureMm', 'Clear opening of the front rim'),
  quantity('fNumber', 'f-number, as set', ''),
  quantity('entrancePupilDiameterMm', 'Entrance pupil, across'),
  quantity('entrancePupilDepthMm', 'Entrance pupil, behind the rim'),
  quantity('frontPrincipalPlaneFromRimMm', 'Front principal plane, behind the rim'),
  quantity('imageCircleMm', 'Rated image circle'),
  quantity('backFocalLengthMm', 'Back focal length'),
  quantity('rimToSensorMm', 'Front rim to the sensor, set to infinity'),
  number('focalLengthRangeMm/0', 'focalLengthMm', 'Zoom, shortest', 'mm'),
  number('focalLengthRangeMm/1', 'focalLengthMm', 'Zoom, longest', 'mm'),
  text('maleThread', 'Male thread'),
  text('femaleThread', 'Female thread'),
  truth('reversed', 'Turned round'),
];

export const SENSOR: readonly Field[] = [
  text('name', 'Name'),
  quantity('widthMm', 'Width'),
  quantity('heightMm', 'Height'),
  quantity('pixelPitchUm', 'Pixel pitch', 'µm'),
  { key: 'columns', label: 'Pixels in a row', kind: 'whole' },
  { key: 'rows', label: 'Pixels in a column', kind: 'whole' },
  truth('colourFilter', 'Colour filter on the pixels'),
  quantity('registerMm', 'Register, mount to sensor'),
  quantity('throatDiameterMm', "The mount's throat, across"),
];

export const SPACING: readonly Field[] = [
  quantity('infinitySpaceMm', 'Infinity space, shoulder to relay'),
  quantity('sensorOffsetMm', "Sensor beyond the relay's focus"),
];

export const LIGHT: readonly Field[] = [
  number('litThreshold', 'litThreshold', 'Light that counts as lit, as a share', ''),
  number('wavelengthNm', 'wavelengthNm', 'Wavelength', 'nm'),
];

export const SUBJECT: readonly Field[] = [
  number('subject/widthMm', 'subjectWidthMm', 'Width', 'mm'),
  number('subject/heightMm', 'subjectHeightMm', 'Height', 'mm'),
  number('subject/depthMm', 'subjectDepthMm', 'Depth', 'mm'),
  number('subject/index', 'index', 'Refractive index around it', ''),
];

export const DEPTH: readonly Field[] = [
  choice('depth/convention', 'Convention of depth', [
    ['wave-and-pixel', 'wave term and pixel'],
    ['half-wave-term', 'half the wave term'],
    ['double-wave-term', 'twice the wave term'],
    ['high-aperture', 'exact wave term, high aperture'],
  ]),
  number('depth/blurUm', 'blurUm', 'Blur allowed on the sensor', 'µm'),
];

export const STOP: readonly Field[] = [
  text('label', 'What it is'),
  quantity('diameterMm', 'Opening'),
  quantity('fromShoulderMm', 'From the shoulder'),
  quantity('fromSensorMm', 'From the sensor'),
];

export const SHARP: readonly Field[] = [
  number('sharp/frequency', 'frequencyLpPerMm', 'Detail judged, on the sensor', 'lp/mm'),
  number('sharp/relativeContrast', 'relativeContrast', 'Contrast that counts as sharp, as a share', ''),
  choice('sharp/focus', 'Focus', [
    ['one frame', 'in one frame'],
    ['stack', 'in a stack'],
  ]),
  choice('sharp/spectrum', 'Light', [
    ['photopic', 'white, as the eye weighs it'],
    ['one wavelength', 'one wavelength'],
  ]),
];
