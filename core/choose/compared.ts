import type { Answer } from '../pairing/answer.ts';
import type { FigureId } from '../pairing/registry.ts';
import { earned, percent } from '../words.ts';

/** The figures that pairings abreast are compared by, in the order in which they are read. */
export const COMPARED = [
  'systemMagnification',
  'objectFieldWidthMm',
  'coveredShare',
  'cornerIllumination',
  'resolvedDetailUm',
  'recordedDetailMegapixels',
  'samplingRatio',
  'workingFNumber',
  'depthOfFieldUm',
  'framesForSubject',
  'clearWorkingDistanceMm',
  'lightConeDeg',
  'totalLengthMm',
] as const satisfies readonly FigureId[];
export type ComparedId = (typeof COMPARED)[number];

/** What one is called that is better or worse than all others in a figure, and in what two are level. The depth of a frame is told by the frames. */
interface Praise {
  readonly best: string;
  readonly worst: string;
  readonly level: string;
}

export const PRAISE: Readonly<Partial<Record<ComparedId, Praise>>> = {
  objectFieldWidthMm: { best: 'widest field', worst: 'narrowest field', level: 'field' },
  coveredShare: { best: 'most of its picture covered', worst: 'least of its picture covered', level: 'picture covered' },
  cornerIllumination: { best: 'brightest corners', worst: 'darkest corners', level: 'corner light' },
  resolvedDetailUm: { best: 'finest detail', worst: 'coarsest detail', level: 'detail' },
  recordedDetailMegapixels: { best: 'most detail recorded', worst: 'least detail recorded', level: 'recorded detail' },
  workingFNumber: { best: 'most light on the sensor', worst: 'least light on the sensor', level: 'f-number' },
  framesForSubject: { best: 'fewest frames', worst: 'most frames', level: 'frames' },
  clearWorkingDistanceMm: { best: 'most free space to the subject', worst: 'least free space to the subject', level: 'free space' },
  lightConeDeg: { best: 'most room for light', worst: 'least room for light', level: 'room for light' },
  totalLengthMm: { best: 'shortest', worst: 'longest', level: 'length' },
};

/** Those of which one is praised: one way is better, and no other of them says the same. */
export const PRAISED = COMPARED.filter((id) => PRAISE[id] !== undefined);

type Known = Extract<Answer, { state: 'known' }>;

/** A figure's value in a sentence, with the digits that it earns. */
export function inSentence(id: ComparedId, { value, low, high, unit }: Known): string {
  if (id === 'coveredShare' || id === 'cornerIllumination') return value >= 0.9995 ? 'all' : value < 0.0005 ? 'none' : percent(value);
  const digits = earned(value, low, high, 3);
  return id === 'workingFNumber' ? `f/${digits}` : unit === '°' ? `${digits}°` : unit === '1' ? digits : `${digits} ${unit}`;
}
