import { short } from '../../words.ts';
import { type End, endWords, mateOf, mates, minorDiameter, sameThread } from './thread.ts';

/** Why two ends do not screw together. */
export interface Miss {
  readonly kind: 'same sex' | 'pitch' | 'flanks' | 'drops through' | 'does not hold' | 'does not enter' | 'unlike';
  words(): string;
  /** How nearly they do: less is nearer. */
  readonly rank: number;
}

/** Play along the axis between two usual threads, mm (common practice, without source): pitches may differ by it in all before they bind. */
const PLAY = 0.07;
/** Threads whose diameters differ by more are not mistaken for each other, mm. */
const NEAR = 6;

/** Turns until two pitches bind. */
export const bindsAfter = (pitchA: number, pitchB: number): number => PLAY / Math.abs(pitchA - pitchB);

const turnsWords = (turns: number): string =>
  turns < 1 ? 'within the first turn' : turns < 3 ? 'after a turn or two' : 'after a few turns';

/** The ring that would join two ends. */
export const ringFor = (a: End, b: End): string => `a ring with ${endWords(mateOf(a))} on one side and ${endWords(mateOf(b))} on the other`;

/** Why two ends do not mate; undefined where they do. */
export function missOf(a: End, b: End): Miss | undefined {
  if (mates(a, b)) return undefined;
  if (a.sex === b.sex) {
    if (sameThread(a.thread, b.thread)) return { kind: 'same sex', words: () => `both ends are ${endWords(a)}`, rank: 0 };
    return { kind: 'unlike', words: () => `${endWords(a)} and ${endWords(b)} are both ${a.sex}`, rank: 100 };
  }
  const [male, female] = a.sex === 'male' ? [a.thread, b.thread] : [b.thread, a.thread];
  const apart = Math.abs(male.diameterMm - female.diameterMm);
  const open = minorDiameter(female);
  if (apart < 0.005) {
    if (male.pitchMm === female.pitchMm)
      return {
        kind: 'flanks',
        words: () => `${male.label} and ${female.label} have flanks of ${male.angleDeg}° and ${female.angleDeg}°`,
        rank: 1,
      };
    return {
      kind: 'pitch',
      words: () =>
        `${male.label} and ${female.label} are as wide as each other, but their pitches are ${short(male.pitchMm, 4)} and ${short(female.pitchMm, 4)} mm: they start and bind ${turnsWords(bindsAfter(male.pitchMm, female.pitchMm))}`,
      rank: 1,
    };
  }
  if (apart > NEAR) return { kind: 'unlike', words: () => `${male.label} and ${female.label} are of different sizes`, rank: 10 + apart };
  if (male.diameterMm <= open)
    return {
      kind: 'drops through',
      words: () =>
        `male ${male.label} drops through female ${female.label}: ${short(male.diameterMm, 4)} mm goes through the ${short(open, 4)} mm that the thread leaves open`,
      rank: 1 + apart,
    };
  if (male.diameterMm < female.diameterMm)
    return {
      kind: 'does not hold',
      words: () => `male ${male.label} seems to catch in female ${female.label} and does not hold: it is ${short(apart, 2)} mm too narrow`,
      rank: 1 + apart,
    };
  return {
    kind: 'does not enter',
    words: () => `male ${male.label} does not enter female ${female.label}: it is ${short(apart, 2)} mm too wide`,
    rank: 1 + apart,
  };
}
