import type { DepthConvention } from '../diffraction/depth.ts';
import { leaf } from '../figure.ts';
import type { RelayKind } from '../parts/relay.ts';
import type { PlacedStop } from '../pupil/stops.ts';
import type { GlassRelay } from './glassworks.ts';
import type { SharpFocus, SharpSpectrum } from './schema.ts';

/** The inputs that figures rest on. What stands for an absent one is decided in `inputs.ts`. */

export const magnification = leaf('magnification', 'M', '', 'magnification engraved on the objective');
export const numericalAperture = leaf('na', 'NA', '', 'numerical aperture of the objective');
export const referenceFocalLength = leaf('referenceFocalLengthMm', 'f_ref', 'mm', 'tube-lens focal length that the engraving refers to');
export const fieldNumber = leaf('fieldNumberMm', 'FN', 'mm', 'field number of the objective');
export const testedField = leaf('testedFieldMm', 'FN_t', 'mm', 'field that you tested good, at the reference focal length');
export const exitPupilFromShoulder = leaf(
  'exitPupilFromShoulderMm',
  'e_p',
  'mm',
  "the objective's exit pupil, from its shoulder toward the relay",
);

export const workingDistance = leaf('workingDistanceMm', 'a', 'mm', 'working distance engraved on the objective');
export const parfocalDistance = leaf('parfocalDistanceMm', 'a_p', 'mm', "parfocal distance: from the subject to the objective's shoulder");
export const coverGlass = leaf('coverGlassMm', 'd_m', 'mm', 'thickness of the cover glass that the objective is made for');
export const noseDiameter = leaf('noseDiameterMm', 'D_n', 'mm', "width of the objective's nose");

export const relayKind = leaf<RelayKind>('relayKind', '', '', 'kind of relay');
export const givenFocalLength = leaf('focalLengthMm', 'f', 'mm', 'focal length given for the relay');
export const power = leaf('powerDioptre', 'P', 'D', 'power of the close-up lens');
export const clearAperture = leaf('clearApertureMm', 'D_rim', 'mm', "clear diameter of the relay's front rim");
export const givenEntrancePupil = leaf('entrancePupilDiameterMm', 'D_e', 'mm', "camera lens's entrance pupil");
export const fNumber = leaf('fNumber', 'N_R', '', "camera lens's f-number as set");
export const entrancePupilDepth = leaf('entrancePupilDepthMm', 'd_e', 'mm', "camera lens's entrance pupil, behind its rim");
export const ratedCircle = leaf('imageCircleMm', 'd_rated', 'mm', "the relay's rated image circle");
export const principalPlane = leaf('frontPrincipalPlaneFromRimMm', 'h', 'mm', "the relay's front principal plane, behind its rim");
export const givenRimToSensor = leaf('rimToSensorMm', 'L_r', 'mm', "from the relay's front rim to the sensor, set to infinity");

export const backFocalLength = leaf('backFocalLengthMm', 'f_b', 'mm', "from the relay's last surface to its focus");

export const width = leaf('widthMm', 'W', 'mm', 'sensor width');
export const height = leaf('heightMm', 'H', 'mm', 'sensor height');
export const givenPitch = leaf('pixelPitchUm', 'p', 'µm', 'pixel pitch given');
export const columns = leaf('columns', 'n_x', '', 'pixels in a row');
export const rows = leaf('rows', 'n_y', '', 'pixels in a column');

export const register = leaf('registerMm', 'r', 'mm', "the camera's register, from its flange to the sensor");

export const infinitySpace = leaf('infinitySpaceMm', 'S', 'mm', "infinity space, shoulder to the relay's rim");
export const sensorOffset = leaf('sensorOffsetMm', 's', 'mm', "sensor beyond the relay's focus");
/** Rings, tubes and the mount's throat. */
export const rings = leaf<readonly PlacedStop[]>('stops', '', '', 'rings and tubes in the way');

export const wavelength = leaf('wavelengthNm', 'λ', 'nm', 'wavelength in vacuum');
export const litThreshold = leaf('litThreshold', 'y', '', 'light that still counts as lit');
export const subjectWidth = leaf('subjectWidthMm', 'w_s', 'mm', 'width of the subject');
export const subjectHeight = leaf('subjectHeightMm', 'h_s', 'mm', 'height of the subject');
export const subjectDepth = leaf('subjectDepthMm', 'd_s', 'mm', 'depth of the subject');
export const immersion = leaf('immersionIndex', 'n_i', '', 'refractive index of what the objective dips in: 1 for air');
export const subjectIndex = leaf('index', 'n', '', 'refractive index around the subject');
export const depthConvention = leaf<DepthConvention>('convention', '', '', 'convention of depth');
/** The relay's own glass, or a gap where it is not known. */
export const glassRelay = leaf<GlassRelay>('glass', '', '', "the relay's glass");
export const sharpContrast = leaf('relativeContrast', 'q_s', '', 'contrast, of what a perfect relay gives, that still counts as sharp');
export const givenDetail = leaf('frequency', 'ν_g', 'lp/mm', 'detail on the sensor in which sharpness is judged');
export const sharpFocus = leaf<SharpFocus>('focus', '', '', 'one flat focus for the picture, or a stack');
export const sharpSpectrum = leaf<SharpSpectrum>('spectrum', '', '', 'the light in which sharpness is judged');

export const givenBlur = leaf('blurUm', 'e', 'µm', 'blur allowed on the sensor');

/**
 * Not an input but an unknown of the model: 0 where the relay maps `r = f sin θ` (light falls as the
 * shared area), 1 where it maps `r = f tan θ` (cos⁴θ more). Where the glass is known,
 * it is known how far between them the relay stands.
 */
export const mapping = leaf('mapping', 'q', '', 'how the relay maps angles: 0 for sines, 1 for tangents');
