import { type Answer, numberIn } from '../../pairing/answer.ts';
import { depthOfFieldUm } from '../../pairing/depth-of-field.ts';
import type { Worked } from '../../pairing/evaluate.ts';
import { subjectDepth } from '../../pairing/leaves.ts';
import { capital, duration, earned, short } from '../../words.ts';
import { numberAt } from '../at.ts';
import type { TableFigureId } from '../groups.ts';
import { byConvention, CONVENTION_WORDS } from './conventions.ts';
import { railError } from './settings.ts';
import { focusPerRail, incrementsAStep, incrementThere, longestStep } from './steps.ts';

type Stack = Worked<TableFigureId<'stack'>>;

/** The stack in words. Every number in it is a figure of the same answer, rounded. */
export const stackSentence = (stack: Stack): string => [lead(stack), rail(stack), depth(stack)].filter(Boolean).join(' ');

const um = (x: number): string => `${short(x)} µm`;
/** With the digits that the figure has in its own place. */
const told = (answer: Answer): string => (answer.state === 'known' ? `${earned(answer.value, answer.low, answer.high)} µm` : '');

function lead(stack: Stack): string {
  const { answers } = stack;
  const [T, d] = [numberAt(stack, depthOfFieldUm), numberAt(stack, subjectDepth)];
  if (T === undefined) return 'How many frames it takes is not known: the depth of one is not.';
  const step = numberIn(answers.frameStepUm);
  if (d === undefined)
    return `Say how deep the subject is: a frame is ${um(T)} deep${step === undefined ? '' : `, and each one more adds ${told(answers.frameStepUm)}`}.`;
  const frames = numberIn(answers.framesInAll);
  if (frames === 1) return `One frame is enough: it is ${um(T)} deep, and the subject ${um(1000 * d)}.`;
  if (step === undefined) return coarse(stack, T);
  if (frames === undefined) return `${capital(whyOf(answers.framesInAll))}.`;
  const more = numberIn(answers.curvatureFrames);
  const curved = more ? `, ${more} of them for the curved field,` : '';
  const time = numberIn(answers.stackTimeS);
  return `${frames} frames${curved} ${told(answers.frameStepUm)} apart go through the ${short(d)} mm of the subject${time === undefined ? '' : ` in ${duration(time)}`}.`;
}

const whyOf = (answer: Answer): string => (answer.state === 'none' ? answer.why : '');

/** What the rail would have to do. */
function coarse(stack: Stack, T: number): string {
  const [longest, finest] = [longestStep, incrementThere].map((node) => numberAt(stack, node));
  const [q, error] = [focusPerRail, railError.leaf].map((node) => numberAt(stack, node)) as [number, number];
  const rail = `This rail is too coarse for frames that are ${um(T)} deep`;
  return longest === undefined
    ? `${rail}: it may err by ${um(error)}, and no step is sure to leave no gap unless that is less than ${um(T / (2 * q))}.`
    : `${rail}: its finest step is ${um(finest as number)}, and it may go no more than ${um(longest / q)} from one to the next.`;
}

/** Where the focus does not move as the rail does or the rail goes whole steps, and what its errors cost or may still be. */
function rail(stack: Stack): string {
  const { answers } = stack;
  // Where there is a step there is one on the rail, and what its error may be.
  if (numberIn(answers.frameStepUm) === undefined || numberIn(answers.framesInAll) === 1) return '';
  const [q, free] = [answers.focusPerRail, answers.railErrorForgivenUm].map(numberIn) as [number, number];
  const error = numberAt(stack, railError.leaf) as number;
  const [whole, finest] = [incrementsAStep, incrementThere].map((node) => numberAt(stack, node));
  const counted =
    whole === undefined
      ? told(answers.railStepUm)
      : `${whole} ${whole === 1 ? 'step' : 'steps'} of ${um(finest as number)}${whole === 1 ? '' : ` = ${told(answers.railStepUm)}`}`;
  const medium = q === 1 ? '' : `: under its flat surface the focus moves ${short(q)} times as far`;
  return [
    q === 1 && whole === undefined ? '' : `From one frame to the next the rail goes ${counted}${medium}.`,
    error > free
      ? `The rail's error of ${um(error)} costs frames: one of ${told(answers.railErrorForgivenUm)} would cost none.`
      : free > 0
        ? `The rail may err by ${told(answers.railErrorForgivenUm)} before that costs frames.`
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
  return `A frame is ${um(chosen.depthUm)} deep by ${CONVENTION_WORDS[chosen.convention]}; by others in use it is ${short(Math.min(...depths))} to ${um(Math.max(...depths))}${counts}.`;
}
