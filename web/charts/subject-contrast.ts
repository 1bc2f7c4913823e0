import {
  cutMtf,
  detailOf,
  diffractionMtf,
  type Evaluation,
  numberIn,
  percent,
  pixelMtf,
  relativeIllumination,
  scaleOf,
  short,
  stopsOf,
  systemMtf,
} from '../../core/index.ts';

/** Contrast of a pattern at the subject, each 0 to 1: what diffraction leaves, and what the pixels then leave of it. */
export interface ContrastPoint {
  objectLpPerMm: number;
  middle: number;
  sagittal: number;
  tangential: number;
  /** Of the worse direction; undefined where the pixels are not known, negative where they reverse it. */
  recorded: number | undefined;
}

export interface SubjectContrast {
  radiusMm: number;
  /** What stops leave of the light there, 0 to 1. */
  light: number;
  points: ContrastPoint[];
  /** The pattern that is spoken of. */
  spoken: ContrastPoint;
  /** What the pixels leave of the spoken pattern in the middle. */
  middleRecorded: number | undefined;
  /** The finest that passes in the middle, and the finest that the pixels hold; lp/mm at the subject. */
  finest: number;
  pixelsFinest: number | undefined;
}

const STEPS = 48;

/**
 * Contrast against detail at the subject, `radiusMm` from the middle of the picture, with a relay free of
 * faults; undefined where the openings are not known.
 */
export function subjectContrast({ answers, sheet }: Evaluation, radiusMm: number): SubjectContrast | undefined {
  const stops = stopsOf(sheet);
  const cutoff = numberIn(answers.cutoffImageLpPerMm);
  const m = numberIn(answers.systemMagnification);
  if (!stops || !cutoff || !m) return undefined;
  const { seen } = stops;
  const slope = radiusMm / scaleOf(stops.rig);
  const nyquist = numberIn(answers.nyquistLpPerMm);
  const pitch = nyquist && 1 / (2 * nyquist);
  const at = (frequency: number): ContrastPoint => {
    const middle = diffractionMtf(frequency / cutoff);
    const { sagittal, tangential } = cutMtf(seen, slope, frequency / cutoff) ?? { sagittal: 0, tangential: 0 };
    return {
      objectLpPerMm: m * frequency,
      middle,
      sagittal,
      tangential,
      recorded: pitch && Math.min(sagittal, tangential) * pixelMtf(frequency * pitch),
    };
  };
  const detail = detailOf(sheet) ?? cutoff / 2;
  return {
    radiusMm,
    light: relativeIllumination(seen, slope),
    points: Array.from({ length: STEPS + 1 }, (_, i) => at((cutoff * i) / STEPS)),
    spoken: at(detail),
    middleRecorded: pitch && systemMtf(detail, cutoff, pitch),
    finest: m * cutoff,
    pixelsFinest: nyquist && m * nyquist,
  };
}

/** Less light than this is lost where stops cut the beam. */
const WHOLE = 1 - 1e-6;

export const isCut = ({ light }: SubjectContrast): boolean => light < WHOLE;

/** How far apart the lines of a pattern are, µm. */
export const apart = (lpPerMm: number): string => short(1000 / lpPerMm, 2);

/** Less contrast than this is not worth a number. */
const HARDLY = 0.005;

/** What becomes of lines that are finer than two pixels: the picture shows their beat with the pixels. */
const beyond = (recorded: number): string =>
  Math.abs(recorded) < HARDLY
    ? 'blur them to an even tone'
    : `show coarser, false lines in their place${recorded < 0 ? ', light and dark reversed' : ''}`;

/** `34 % of their contrast, 22 % once the pixels have taken theirs`. */
function kept(contrast: number, recorded: number | undefined, tooFine: boolean, where = ''): string {
  if (contrast < HARDLY) return `next to nothing of their contrast${where}`;
  if (recorded === undefined) return `${percent(contrast)} of their contrast${where}`;
  if (tooFine) return `${percent(contrast)} of their contrast${where}, but are finer than the pixels can hold, which ${beyond(recorded)}`;
  return `${percent(contrast)} of their contrast${where}, ${recorded < HARDLY ? 'next to nothing' : percent(recorded)} once the pixels have taken theirs`;
}

/** What is seen, in words. */
export function contrastSays(contrast: SubjectContrast): string {
  const { spoken, radiusMm, light, middleRecorded, finest, pixelsFinest } = contrast;
  const lines = `ines ${apart(spoken.objectLpPerMm)} µm apart at the subject keep`;
  const held = pixelsFinest !== undefined && pixelsFinest < finest ? `the pixels hold lines down to ${apart(pixelsFinest)} µm, and ` : '';
  const end = `${held}nothing finer than ${apart(finest)} µm is there.`;
  const place = `${short(radiusMm)} mm from the middle`;
  const tooFine = pixelsFinest !== undefined && spoken.objectLpPerMm > pixelsFinest;
  const inMiddle = `${kept(spoken.middle, middleRecorded, tooFine)}; ${end}`;
  if (!isCut(contrast)) return `L${lines} ${inMiddle}`;
  if (light === 0) return `No light arrives ${place}. In the middle l${lines} ${inMiddle}`;
  const worse = Math.min(spoken.sagittal, spoken.tangential);
  const there = kept(worse, spoken.recorded, tooFine, ' in the worse direction');
  return `Where the beam is cut, ${place}, l${lines} ${there}; in the middle it is ${percent(spoken.middle)}; ${end}`;
}
