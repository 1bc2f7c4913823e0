import { amount, type QuantityInput } from '../../core/index.ts';

/** What a typed line means, piece by piece, in words. */
const SAID: Record<string, (x: string) => string> = {
  magnification: (x) => `${x}×`,
  na: (x) => `aperture ${x}`,
  referenceFocalLengthMm: (x) => `for a tube lens of ${x} mm`,
  coverGlassMm: (x) => (x === '0' ? 'no cover glass' : `cover glass ${x} mm`),
  fieldNumberMm: (x) => `field number ${x}`,
  workingDistanceMm: (x) => `working distance ${x} mm`,
  immersionIndex: (x) => `dips into an index of ${x}`,
  mountThread: (x) => `thread ${x}`,
  correction: (x) => x,
  flatField: () => 'flat field',
  powerDioptre: (x) => `${x} dioptres`,
  focalLengthMm: (x) => `focal length ${x} mm`,
  fNumber: (x) => `f/${x}`,
  maleThread: (x) => `thread ${x}`,
  femaleThread: (x) => `thread ${x}`,
  clearApertureMm: (x) => `${x} mm clear`,
  focalLengthRangeMm: (x) => `zoom ${x.replace(',', ' to ')} mm`,
  widthMm: (x) => `${x} mm wide`,
  heightMm: (x) => `${x} mm high`,
  pixelPitchUm: (x) => `pixels of ${x} µm`,
  columns: (x) => `${x} pixels in a row`,
  rows: (x) => `${x} in a column`,
  colourFilter: () => 'no colour filter',
};

const KINDS: Record<string, string> = { supplementary: 'close-up lens', 'camera-lens': 'camera lens', 'tube-lens': 'tube lens' };

/** In the order in which they are told, whatever the order of the typing; '' where nothing was read. */
export function readAs(part: object): string {
  const { kind, ...rest } = part as Record<string, QuantityInput | string>;
  const told = Object.keys(SAID).flatMap((name) => {
    const value = rest[name];
    return value === undefined ? [] : [SAID[name]?.(plain(value)) ?? ''];
  });
  return [...(typeof kind === 'string' ? [KINDS[kind] ?? kind] : []), ...told].join(', ');
}

const plain = (x: QuantityInput | string): string => String(typeof x === 'object' && 'value' in x ? amount(x) : x);
