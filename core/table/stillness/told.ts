import { type Answer, interval, numberIn } from '../../pairing/answer.ts';
import { earned, short } from '../../words.ts';
import { numberAt } from '../at.ts';
import type { TableEvaluation } from '../evaluate.ts';
import { exposure } from '../exposure.ts';
import type { Setting } from '../setting.ts';
import { flash, referenceFNumber } from './settings.ts';

const told = (answer: Answer): string =>
  answer.state === 'known' ? earned(answer.value, answer.low, answer.high) : 'an unknown number of';

const inStops = (digits: string): string => `${digits} ${digits === '1' ? 'stop' : 'stops'}`;
/** The size of a difference, with the digits that the figure's own row has. */
const stops = (answer: Answer): string => inStops(told(answer).replace('−', ''));

/** An exposure as it is dialled: `1/100 s` below a third of a second. */
const asTime = (seconds: number): string => (seconds < 0.3 ? `1/${short(1 / seconds, 2)} s` : `${short(seconds, 2)} s`);

/** Light and stillness, in words. */
export function stillnessSays(evaluation: TableEvaluation): string {
  const { answers } = evaluation;
  const set = (one: Setting): number => numberAt(evaluation, one.leaf) as number;
  const [more, corner] = [numberIn(answers.moreExposureEv), numberIn(answers.cornerMoreExposureEv)];
  const light =
    more === undefined
      ? 'How much light arrives is not known without the relay’s clear opening.'
      : `It takes ${Math.abs(more) < 0.05 ? 'as much exposure as' : `${stops(answers.moreExposureEv)} ${more > 0 ? 'more' : 'less'} exposure than`} a macro lens set to f/${short(set(referenceFNumber))} and reversed or extended to the same size${
          corner === undefined ? '' : cornerSays(corner - more)
        }.`;
  const [still, speed, flashed] = [answers.stillUm, answers.stillSpeedUmPerS, answers.flashSpeedUmPerS].map(told);
  return `${light} Nothing may move by more than ${still} µm at the subject during the exposure or the flash: ${speed} µm/s over ${asTime(
    set(exposure),
  )}, ${flashed} µm/s in a flash of ${short(set(flash))} ms.${driftSays(answers.driftPixels)}${swingSays(evaluation)}`;
}

function cornerSays(more: number): string {
  if (more === Number.POSITIVE_INFINITY) return ', and no light reaches the corner';
  return more >= 0.05 ? `, and the corner of the picture ${inStops(short(more, 2))} more than its middle` : '';
}

function driftSays(answer: Answer): string {
  const drawn = interval(answer)?.[1];
  return drawn !== undefined && drawn > 1 ? ` As it drifts now a point is drawn out over ${short(drawn, 2)} pixels.` : '';
}

function swingSays({ answers }: TableEvaluation): string {
  const [whole, flashed] = [numberIn(answers.swingPixels), numberIn(answers.flashSwingPixels)];
  if (whole === undefined || flashed === undefined) return '';
  return ` The swinging draws a point out over ${short(whole, 2)} pixels in the exposure, over ${short(flashed, 2)} in the flash.`;
}
