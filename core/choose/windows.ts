import { PairingError, type Problem, shown } from '../errors.ts';
import type { Glassworks } from '../pairing/glassworks.ts';
import { inputsOf } from '../pairing/inputs.ts';
import type { Pairing } from '../pairing/schema.ts';
import { readerOf, whyNot } from './at-values.ts';
import { conflictOf, endsOf } from './ends.ts';
import { heldOf } from './held.ts';
import { limitWindows, type Reader } from './limit-windows.ts';
import { another, QUANTITIES, type Variable } from './quantities.ts';
import { metWithin, places } from './scan.ts';
import { common, type Span } from './spans.ts';
import type { Value } from './values.ts';
import type { WindowAnswer, WindowQuestion } from './window-answer.ts';
import { windowSays } from './window-words.ts';

/**
 * The intervals of one quantity over which limits are met, all else held, and what they have in common. Values
 * only: what the ± do to them is no part of it. The pairing has passed `pairingSchema`.
 *
 * @param works what works with glass: wanted where the relay has some
 * @throws PairingError where the range is none, by /from and /to
 */
export function windowOf(question: WindowQuestion, works?: Glassworks): WindowAnswer {
  let last: WindowAnswer | undefined;
  for (const answer of windowing(question, works)) last = answer;
  return last as WindowAnswer;
}

/** The same with a pause after each place that is tried, for those who have other things to do between: the answer comes last. */
export function* windowing(question: WindowQuestion, works?: Glassworks): Generator<WindowAnswer | undefined, void> {
  const { pairing, vary, limits: asked } = question;
  const [from, to] = rangeOf(question);
  const at = (x: number): Pairing => another(pairing, vary, x, works);
  const builds = (x: number): number => (whyNot(at(x), works) === undefined ? 1 : -1);
  const stands = metWithin(
    builds,
    places([from, to], QUANTITIES[vary].steps).map((x) => ({ at: x, margin: builds(x) })),
  );
  yield;
  const read: Reader = (ids) => {
    const figures = readerOf(ids, works);
    return (x): readonly Value[] => figures(at(x));
  };
  const limits = yield* limitWindows(pairing, vary, asked, stands, read);
  const counted = limits.filter(({ how }) => how !== 'not known');
  const window =
    counted.length === 0 && limits.length > 0 ? [] : counted.reduce<Span[]>((left, { intervals }) => common(left, intervals), stands);
  const ends = endsOf({ from, to, window, limits: counted, stands }, read, (x) => whyNot(at(x), works));
  const conflict = window.length === 0 ? conflictOf(counted) : undefined;
  const now = presentOf(pairing, vary, works);
  const answer: Omit<WindowAnswer, 'says'> = {
    vary,
    from,
    to,
    ...(now === undefined ? {} : { now }),
    limits,
    window,
    ends,
    ...(conflict ? { conflict } : {}),
    stands,
    held: heldOf(pairing, vary, works),
  };
  yield { ...answer, says: windowSays(answer, read, stands.length > 0 ? undefined : whyNot(at(from), works)) };
}

function rangeOf({ vary, from, to }: WindowQuestion): Span {
  const { bounds, usual } = QUANTITIES[vary];
  const low = from ?? (to !== undefined && to <= usual[0] ? bounds[0] : usual[0]);
  const high = to ?? (from !== undefined && from >= usual[1] ? bounds[1] : usual[1]);
  const problems = [...outside('/from', low, bounds), ...outside('/to', high, bounds)];
  if (problems.length === 0 && !(low < high))
    problems.push({
      path: from === undefined ? '/to' : '/from',
      code: 'contradiction',
      message: `leaves nothing between ${low} and ${high}`,
      given: shown(from ?? to),
      expected: from === undefined ? `more than ${low}` : `less than ${high}`,
    });
  if (problems.length > 0) throw new PairingError(problems);
  return [low, high];
}

function outside(path: string, x: number, [least, greatest]: readonly [number, number]): Problem[] {
  if (x >= least && x <= greatest) return [];
  const small = x < least;
  const expected = small ? `at least ${least}` : `at most ${greatest}`;
  return [{ path, code: small ? 'tooSmall' : 'tooBig', message: `must be ${expected} here`, given: shown(x), expected }];
}

/** The quantity in the pairing itself: as given, as its glass or its class has it. */
export function presentOf(pairing: Pairing, vary: Variable, works?: Glassworks): number | undefined {
  if (whyNot(pairing, works) !== undefined) return undefined;
  if (vary === '/relay/focalLengthMm') return readerOf(['relayFocalLengthMm'], works)(pairing)[0] as number;
  return inputsOf(pairing).list.find(({ path }) => path === vary)?.value;
}
