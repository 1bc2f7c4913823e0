import { type Answer, numberIn } from '../../pairing/answer.ts';
import { depthOfFieldUm } from '../../pairing/depth-of-field.ts';
import type { Worked } from '../../pairing/evaluate.ts';
import { subjectDepth } from '../../pairing/leaves.ts';
import { short } from '../../words.ts';
import { numberAt } from '../at.ts';
import type { TableFigureId } from '../groups.ts';
import { byConvention, CONVENTION_WORDS } from './conventions.ts';
import { railError } from './settings.ts';

type Stack = Worked<TableFigureId<'stack'>>;

/** The stack in words. Every number in it is a figure of the same answer, rounded. */
export const stackSentence = (stack: Stack): string => [lead(stack), rail(stack), depth(stack)].filter(Boolean).join(' ');

const um = (x: number): string => `${short(x)} µm`;

function lead(stack: Stack): string {
  const { answers } = stack;
  const [T, d] = [numberAt(stack, depthOfFieldUm), numberAt(stack, subjectDepth)];
  if (T === undefined) return 'How many frames it takes is not known: the depth of one is not.';
  const step = numberIn(answers.frameStepUm);
  if (d === undefined)
    return `Say how deep the subject is: a frame is sharp through ${um(T)}${step === undefined ? '' : `, and each one more adds ${um(step)}`}.`;
  const frames = numberIn(answers.framesInAll);
  if (frames === undefined) return `There is no stack to be had: ${whyOf(answers.frameStepUm) || whyOf(answers.framesInAll)}.`;
  if (frames === 1) return `One frame is enough: it is sharp through ${um(T)}, and the subject is ${um(1000 * d)} deep.`;
  const more = numberIn(answers.curvatureFrames);
  const curved = more ? `, ${more} of them for the curved field,` : '';
  const time = numberIn(answers.stackTimeS);
  return `${frames} frames${curved} ${um(step as number)} apart go through the ${short(d)} mm of the subject${time === undefined ? '' : ` in ${duration(time)}`}.`;
}

const whyOf = (answer: Answer): string => (answer.state === 'none' ? answer.why : '');

/** Where the focus does not move as the rail does, and what the rail's errors cost or may still be. */
function rail(stack: Stack): string {
  const { answers } = stack;
  const [q, step, free, onRail] = [answers.focusPerRail, answers.frameStepUm, answers.railErrorForgivenUm, answers.railStepUm].map(
    numberIn,
  );
  if (q === undefined || step === undefined || free === undefined || onRail === undefined || numberIn(answers.framesInAll) === 1) return '';
  const error = numberAt(stack, railError.leaf) ?? 0;
  return [
    q === 1 ? '' : `The rail goes ${um(onRail)} a step: under its flat surface the focus moves ${short(q)} times as far.`,
    error > free
      ? `The rail's error of ${um(error)} costs frames: one of ${um(free)} would cost none.`
      : free > 0
        ? `The rail may err by ${um(free)} before that costs frames.`
        : '',
  ]
    .filter(Boolean)
    .join(' ');
}

/** The convention beside its number, and how far the others are from it. */
function depth(stack: Stack): string {
  const all = byConvention(stack);
  const chosen = all.find((one) => one.chosen);
  if (!chosen) return '';
  const depths = all.map(({ depthUm }) => depthUm);
  const frames = all.flatMap((one) => one.frames ?? []);
  const [fewest, most] = [Math.min(...frames), Math.max(...frames)];
  const counts = frames.length === all.length && most > fewest ? `, ${fewest} to ${most} frames` : '';
  return `A frame is sharp through ${um(chosen.depthUm)} by ${CONVENTION_WORDS[chosen.convention]}; by others in use it is ${short(Math.min(...depths))} to ${um(Math.max(...depths))}${counts}.`;
}

/** Seconds up to two minutes, then minutes, then hours; each with what is left over. */
export function duration(s: number): string {
  if (s < 120) return `${short(s)} s`;
  const seconds = Math.round(s);
  if (seconds < 7200) return left(Math.floor(seconds / 60), 'min', seconds % 60, 's');
  const minutes = Math.round(s / 60);
  return left(Math.floor(minutes / 60), 'h', minutes % 60, 'min');
}

const left = (whole: number, unit: string, rest: number, smaller: string): string =>
  rest === 0 ? `${whole} ${unit}` : `${whole} ${unit} ${rest} ${smaller}`;
