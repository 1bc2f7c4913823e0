import { DEFAULTS, type Pairing } from '../pairing/schema.ts';
import { sameJson } from '../same.ts';

/** A depth to count frames for where none is given, mm. */
const DEPTH_MM = 1;

export interface OneSubject {
  /** The pairings with one subject for all. */
  pairings: Pairing[];
  subject: NonNullable<Pairing['subject']> & { depthMm: number };
  /** False where the depth is ours and not a pairing's. */
  depthGiven: boolean;
}

/** Pairings can be told apart only before one and the same subject: the first that is given, with the first depth that is given. */
export function forOneSubject(pairings: readonly Pairing[]): OneSubject {
  const own =
    pairings.find(({ subject }) => subject?.widthMm !== undefined || subject?.heightMm !== undefined) ?? pairings.find((p) => p.subject);
  const depth = [own, ...pairings].find((p) => p?.subject?.depthMm !== undefined)?.subject?.depthMm;
  const subject = { ...own?.subject, depthMm: depth ?? DEPTH_MM };
  return { pairings: pairings.map((pairing) => ({ ...pairing, subject })), subject, depthGiven: depth !== undefined };
}

/** What a pairing is judged by, beside its parts and their places. */
const JUDGED_BY: readonly { words: string; of: (pairing: Pairing) => unknown }[] = [
  { words: 'the light’s wavelength', of: ({ wavelengthNm }) => wavelengthNm ?? DEFAULTS.wavelengthNm },
  { words: 'how much light counts as lit', of: ({ litThreshold }) => litThreshold ?? DEFAULTS.litThreshold },
  { words: 'what depth means', of: ({ depth }) => [depth?.convention ?? DEFAULTS.depthConvention, depth?.blurUm ?? 0] },
  {
    words: 'how sharp is sharp',
    of: ({ sharp }) => [
      sharp?.relativeContrast ?? DEFAULTS.relativeContrast,
      sharp?.frequency ?? 0,
      sharp?.focus ?? DEFAULTS.sharpFocus,
      sharp?.spectrum ?? DEFAULTS.sharpSpectrum,
    ],
  },
];

/** In what these pairings are not judged alike, in words. */
export const judgedUnlike = (pairings: readonly Pairing[]): string[] =>
  JUDGED_BY.filter(({ of }) => pairings.some((pairing) => !sameJson(of(pairing), of(pairings[0] as Pairing)))).map(({ words }) => words);
