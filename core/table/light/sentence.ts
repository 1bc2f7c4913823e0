import { type Answer, interval, numberIn } from '../../pairing/answer.ts';
import type { Worked } from '../../pairing/evaluate.ts';
import { noseDiameter } from '../../pairing/leaves.ts';
import { nameOf } from '../../pairing/phrases.ts';
import { earned, listed, percent, short } from '../../words.ts';
import { numberAt } from '../at.ts';
import type { TableFigureId } from '../groups.ts';
import { diffuserDiameter, noseFront } from './settings.ts';

type Light = Worked<TableFigureId<'light'>>;

/** The room for light in words. Every number in it is a figure of the same answer, rounded. */
export const lightSentence = (light: Light): string =>
  [`${[lead(light), diffuser(light)].filter(Boolean).join('; ')}.`, nose(light.answers.noseClearanceMm)].filter(Boolean).join(' ');

const mm = (x: number): string => `${short(x)} mm`;
/** With the digits that the figure has in its own place. */
const digits = (answer: Answer, sign: 1 | -1 = 1): string => {
  const [low, value, high] = interval(answer) ?? [Number.NaN, Number.NaN, Number.NaN];
  return sign > 0 ? earned(value, low, high) : earned(-value, -high, -low);
};

function lead(light: Light): string {
  const { answers } = light;
  const [middle, corner, share] = [answers.lightMiddleDeg, answers.lightFarCornerDeg, answers.lightShare].map(numberIn);
  if (middle === undefined) return `How high light can come in is not known${missingIn(answers.lightMiddleDeg)}`;
  const far =
    corner !== undefined && digits(answers.lightFarCornerDeg) !== digits(answers.lightMiddleDeg)
      ? ` (${digits(answers.lightFarCornerDeg)}° for the corner away from the lamp)`
      : '';
  return `Light can come in to the top of the subject up to ${digits(answers.lightMiddleDeg)}° above the stage${far}${doubtIn(light)}, ${percent(share ?? 0)} of the half-space above the subject`;
}

/** Where low and high lie farther apart than this, they are said, °. */
const WIDE = 10;

function doubtIn({ answers, inputs }: Light): string {
  const [low, , high] = interval(answers.lightMiddleDeg) ?? [0, 0, 0];
  if (high - low <= WIDE) return '';
  const told = inputs.some(({ leaf }) => leaf === noseFront.leaf);
  const guessed = !told && inputs.some(({ leaf, origin }) => leaf === noseDiameter && origin === 'assumed');
  return `, anywhere from ${short(low, 2)} to ${short(high, 2)}°${guessed ? ' until you measure the nose' : ''}`;
}

const missingIn = (answer: Answer): string =>
  answer.state === 'unknown' && answer.missing.length > 0 ? `: it needs ${listed(answer.missing.map(nameOf))}` : '';

function diffuser(light: Light): string {
  const wide = numberAt(light, diffuserDiameter.leaf);
  const spare = numberIn(light.answers.diffuserSpareMm);
  const share = numberIn(light.answers.diffuserShare);
  const answer = light.answers.diffuserSpareMm;
  const [low = Number.NaN, , high = Number.NaN] = interval(answer) ?? [];
  if (wide === undefined || spare === undefined) return '';
  const it = `a diffuser of ${mm(wide)}`;
  if (high < 0) return `${it} does not fit: it is ${digits(answer, -1)} mm too narrow`;
  if (spare < 0) return `${it} is likely ${digits(answer, -1)} mm too narrow (${short(low, 2)} to +${short(high, 2)} mm to spare)`;
  const doubt = low < 0 ? ', which what is not known may use up' : '';
  return `${it} fits with ${digits(answer)} mm to spare${doubt}${share === undefined ? '' : `, and fills ${percent(share)} of that half-space`}`;
}

function nose(clearance: Answer): string {
  const left = numberIn(clearance);
  if (left === undefined) return '';
  const low = interval(clearance)?.[0] ?? left;
  if (left <= 0) return `The nose meets the subject ${digits(clearance, -1)} mm before its back is in focus.`;
  return `At the back of the subject ${digits(clearance)} mm are left before the nose${low <= 0 ? ', or nothing' : ''}.`;
}
