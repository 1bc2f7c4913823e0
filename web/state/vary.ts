import { diagonalOf, type Evaluation, MOST_STEPS, numberIn, type Pairing, PairingError, type Verdict, varied } from '../../core/index.ts';

/** The pairing with one relay focal length in the place of its own; undefined where none can be. */
export interface Tried {
  focalLengthMm: number;
  verdict: Verdict;
  coveredShare: number | undefined;
  cornerIllumination: number | undefined;
  magnification: number | undefined;
}

/** Neighbouring focal lengths with one verdict, from and to in mm. */
export interface Window {
  verdict: Verdict;
  from: number;
  to: number;
}

export interface Varied {
  tried: Tried[];
  windows: Window[];
  now: number;
  /** Tried in larger steps, while a handle is moved. */
  rough: boolean;
}

interface Fineness {
  values: number;
  /** A border between two verdicts is known to this part of it. */
  border: number;
}

/** To be read: borders good to the digits that are told. */
const FINE: Fineness = { values: Math.min(61, MOST_STEPS), border: 1e-4 };
/** To be followed while something is moved. */
const ROUGH: Fineness = { values: 19, border: 3e-3 };

/** The sweep over the relay's focal length, all else held. */
export function vary(evaluation: Evaluation, rough = false): Varied {
  const work = varying(evaluation, rough);
  for (;;) {
    const step = work.next();
    if (step.done) return step.value;
  }
}

/** The same, with a pause after each pairing that is tried, for those who have other things to do between. */
export function* varying({ pairing, answers }: Evaluation, rough: boolean): Generator<void, Varied> {
  const { values, border } = rough ? ROUGH : FINE;
  const now = numberIn(answers.relayFocalLengthMm) ?? 0;
  const covering = numberIn(answers.shortestCoveringFocalLengthMm);
  const far = covering !== undefined && Number.isFinite(covering) ? Math.min(covering, 4 * now) : now;
  const [shortest, longest] = pairing.relay.focalLengthRangeMm ?? [
    Math.max(5, Math.min(now, far) / 2),
    Math.min(5000, 1.6 * Math.max(now, far)),
  ];
  const tryOne = trying(pairing, FIGURES);
  const tried: Tried[] = [];
  for (let i = 0; i < values; i++) {
    tried.push(...tryOne(shortest + ((longest - shortest) * i) / (values - 1)));
    yield;
  }
  return { tried, windows: yield* windowsOf(trying(pairing, []), tried, border), now, rough };
}

const FIGURES = ['coveredShare', 'cornerIllumination', 'systemMagnification'] as const;

/** What a focal length does: one answer, or none where there is no such pairing. */
type Trying = (focalLengthMm: number) => Tried[];

/** A relay given in dioptres is varied in dioptres: its power stays as loose as it is engraved. */
function trying(pairing: Pairing, ids: readonly (typeof FIGURES)[number][]): Trying {
  const byPower = pairing.relay.powerDioptre !== undefined && pairing.relay.focalLengthMm === undefined;
  const at = varied({ pairing, vary: byPower ? '/relay/powerDioptre' : '/relay/focalLengthMm', figures: [...ids] });
  return (focalLengthMm) => {
    try {
      const { figures, coverage } = at(byPower ? 1000 / focalLengthMm : focalLengthMm);
      const [coveredShare, cornerIllumination, magnification] = FIGURES.map((id) => {
        const answer = figures[id];
        return answer && numberIn(answer);
      });
      return [{ focalLengthMm, verdict: coverage.verdict, coveredShare, cornerIllumination, magnification }];
    } catch (error) {
      // A tube may stand where such a relay would be: then there is no such pairing.
      if (error instanceof PairingError) return [];
      throw error;
    }
  };
}

/** Runs of one verdict, each border looked for between the two values that differ. */
function* windowsOf(tryOne: Trying, tried: readonly Tried[], border: number): Generator<void, Window[]> {
  const windows: Window[] = [];
  for (const [i, here] of tried.entries()) {
    const last = windows.at(-1);
    const before = tried[i - 1];
    if (last && before && last.verdict === here.verdict) last.to = here.focalLengthMm;
    else if (last && before) {
      const at = yield* borderBetween(tryOne, before, here, border);
      last.to = at;
      windows.push({ verdict: here.verdict, from: at, to: here.focalLengthMm });
    } else windows.push({ verdict: here.verdict, from: here.focalLengthMm, to: here.focalLengthMm });
  }
  return windows;
}

/** Halved until it is known well enough. */
function* borderBetween(tryOne: Trying, a: Tried, b: Tried, border: number): Generator<void, number> {
  let low = a.focalLengthMm;
  let high = b.focalLengthMm;
  while (high - low > border * high) {
    const middle = (low + high) / 2;
    if (tryOne(middle)[0]?.verdict === a.verdict) low = middle;
    else high = middle;
    yield;
  }
  return high;
}

/** The corner's distance from the middle of the picture, mm. */
export const cornerOf = ({ sensor }: Pairing): number => diagonalOf(sensor) / 2;
