import { interval, numberIn } from '../../pairing/answer.ts';
import { short } from '../../words.ts';
import type { TableEvaluation } from '../evaluate.ts';

/** Within this of two a gain is as good as told. */
const ABOUT = 0.15;
/** From here on nobody claims that it is twice. */
const LARGE = 3;

/**
 * What is often said of close-up lenses, reckoned for this one, so that a claim can be held against it. Only for one
 * lens alone: two have no one plane that X counts from.
 */
export function closeUpClaims({ answers, settings }: Pick<TableEvaluation, 'answers' | 'settings'>): string[] {
  const f = numberIn(answers.closeUpFocalMm);
  if (f === undefined || settings.secondPowerDioptre !== undefined) return [];
  const length = short(f, 3);
  const told = [
    `Farther than ${length} mm nothing is sharp: a greater distance in a table was measured from another plane, such as the sensor.`,
  ];
  const gain = numberIn(answers.closeUpGain);
  const [low = 0, , high = 0] = interval(answers.closeUpGain) ?? [];
  if (gain === undefined) return told;
  const X = (gain - 1) * f;
  const reckoned = `1 + ${short(X, 3)} / ${length} = ${short(gain, 3)}`;
  const twice = gain < LARGE && Math.abs(gain - 2) > ABOUT ? `; twice would take a subject that stood ${length} mm off before` : '';
  const grows = `At its nearest it shows things ${reckoned} times as large as without the close-up lens${twice}.`;
  const open = high - low > 2 * ABOUT ? ' Measure that distance from where the close-up lens sits: all hangs on it.' : '';
  return [...told, grows + open];
}
