/** What an input is called in a sentence, by the last step of its path, and how it is found out. */
interface Phrase {
  readonly name: string;
  /** What resolves it, after 'until you …'. */
  readonly resolve: string;
  /** About how long that takes at the kitchen table; two where it is not said. */
  readonly minutes?: 5 | 10;
}

const PHRASES: Record<string, Phrase> = {
  magnification: { name: "the objective's true magnification", resolve: 'photograph a ruler', minutes: 5 },
  na: { name: "the objective's aperture", resolve: 'check the engraving', minutes: 5 },
  referenceFocalLengthMm: { name: "the engraving's tube-lens focal length", resolve: 'look up what the engraving refers to' },
  fieldNumberMm: { name: "the objective's field number", resolve: "look up the objective's field number" },
  testedFieldMm: { name: 'the field that you tested', resolve: 'test the field again', minutes: 10 },
  exitPupilFromShoulderMm: { name: 'where the exit pupil sits', resolve: 'locate the exit pupil', minutes: 5 },
  focalLengthMm: { name: "the relay's true focal length", resolve: 'photograph a ruler', minutes: 5 },
  powerDioptre: { name: "the close-up lens's true power", resolve: 'measure its dioptres', minutes: 5 },
  workingDistanceMm: { name: 'the working distance', resolve: 'measure the working distance' },
  parfocalDistanceMm: { name: 'the parfocal distance', resolve: 'measure the parfocal distance' },
  coverGlassMm: { name: 'the cover glass that the objective is made for', resolve: "check the objective's engraving" },
  noseDiameterMm: { name: "the width of the objective's nose", resolve: 'measure the nose' },
  clearApertureMm: { name: "the relay's clear opening", resolve: "measure the relay's clear opening" },
  entrancePupilDiameterMm: { name: "the camera lens's aperture", resolve: 'measure the aperture' },
  fNumber: { name: "the camera lens's f-number", resolve: 'check the f-number' },
  entrancePupilDepthMm: { name: "how deep the camera lens's aperture sits", resolve: 'measure how deep the aperture sits', minutes: 5 },
  imageCircleMm: { name: "the relay's rated circle", resolve: "look up the relay's image circle", minutes: 5 },
  frontPrincipalPlaneFromRimMm: { name: "the relay's principal plane", resolve: "locate the relay's principal plane", minutes: 10 },
  rimToSensorMm: { name: "the camera lens's length, rim to sensor", resolve: 'measure the lens from rim to sensor' },
  infinitySpaceMm: { name: 'the infinity space', resolve: 'measure the infinity space' },
  sensorOffsetMm: { name: "the sensor's distance from the focus", resolve: 'set infinity', minutes: 5 },
  widthMm: { name: "the sensor's width", resolve: "look up the sensor's size" },
  heightMm: { name: "the sensor's height", resolve: "look up the sensor's size" },
  pixelPitchUm: { name: 'the pixel pitch', resolve: 'look up the pixel pitch' },
  diameterMm: { name: "a ring's opening", resolve: 'measure the ring' },
  fromShoulderMm: { name: "a ring's place", resolve: "measure the ring's place" },
  fromSensorMm: { name: "a tube's place", resolve: "measure the tube's place" },
  throatDiameterMm: { name: "the mount's throat", resolve: 'measure the throat' },
  registerMm: { name: "the mount's register", resolve: 'look up the register' },
  glass: { name: "the relay's glass", resolve: "find the relay's glass" },
};

const SUBJECT: Phrase = { name: "the subject's size", resolve: "say the subject's size" };

const phrase = (path: string): Phrase =>
  path.startsWith('/subject/')
    ? { ...SUBJECT, ...(path.endsWith('/depthMm') ? { name: "the subject's depth" } : {}) }
    : (PHRASES[path.slice(path.lastIndexOf('/') + 1)] ?? { name: path, resolve: `settle ${path}` });

export const nameOf = (path: string): string => phrase(path).name;
export const resolving = (path: string): string => phrase(path).resolve;

const COUNTED = { 2: 'two', 5: 'five', 10: 'ten' } as const;
/** About how long it takes to find out, in words. */
export const minutesFor = (path: string): string => `${COUNTED[phrase(path).minutes ?? 2]} minutes`;
