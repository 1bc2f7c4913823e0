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
}

const VALUES = Math.min(61, MOST_STEPS);
const FIGURES = ['coveredShare', 'cornerIllumination', 'systemMagnification'] as const;

/** The sweep over the relay's focal length, all else held. */
export function vary({ pairing, answers }: Evaluation): Varied {
  const now = numberIn(answers.relayFocalLengthMm) ?? 0;
  const covering = numberIn(answers.shortestCoveringFocalLengthMm);
  const far = covering !== undefined && Number.isFinite(covering) ? Math.min(covering, 4 * now) : now;
  const [shortest, longest] = pairing.relay.focalLengthRangeMm ?? [
    Math.max(5, Math.min(now, far) / 2),
    Math.min(5000, 1.6 * Math.max(now, far)),
  ];
  const tryOne = trying(pairing);
  const tried = Array.from({ length: VALUES }, (_, i) => shortest + ((longest - shortest) * i) / (VALUES - 1)).flatMap(
    (f) => tryOne(f) ?? [],
  );
  return { tried, windows: windowsOf(tryOne, tried), now };
}

type Trying = (focalLengthMm: number) => Tried | undefined;

/** A relay given in dioptres is varied in dioptres: its power stays as loose as it is engraved. */
function trying(pairing: Pairing): Trying {
  const byPower = pairing.relay.powerDioptre !== undefined && pairing.relay.focalLengthMm === undefined;
  const at = varied({ pairing, vary: byPower ? '/relay/powerDioptre' : '/relay/focalLengthMm', figures: [...FIGURES] });
  return (focalLengthMm) => {
    try {
      const { figures, coverage } = at(byPower ? 1000 / focalLengthMm : focalLengthMm);
      const [coveredShare, cornerIllumination, magnification] = FIGURES.map((id) => {
        const answer = figures[id];
        return answer && numberIn(answer);
      });
      return { focalLengthMm, verdict: coverage.verdict, coveredShare, cornerIllumination, magnification };
    } catch (error) {
      // A tube may stand where such a relay would be: then there is no such pairing.
      if (error instanceof PairingError) return undefined;
      throw error;
    }
  };
}

/** Runs of one verdict, each border halved ten times between the two values that differ. */
function windowsOf(tryOne: Trying, tried: readonly Tried[]): Window[] {
  const windows: Window[] = [];
  tried.forEach((here, i) => {
    const last = windows.at(-1);
    const before = tried[i - 1];
    if (last && before && last.verdict === here.verdict) last.to = here.focalLengthMm;
    else if (last && before) {
      const border = borderBetween(tryOne, before, here);
      last.to = border;
      windows.push({ verdict: here.verdict, from: border, to: here.focalLengthMm });
    } else windows.push({ verdict: here.verdict, from: here.focalLengthMm, to: here.focalLengthMm });
  });
  return windows;
}

function borderBetween(tryOne: Trying, a: Tried, b: Tried): number {
  let low = a.focalLengthMm;
  let high = b.focalLengthMm;
  for (let i = 0; i < 10; i++) {
    const middle = (low + high) / 2;
    if (tryOne(middle)?.verdict === a.verdict) low = middle;
    else high = middle;
  }
  return high;
}

/** The corner's distance from the middle of the picture, mm. */
export const cornerOf = ({ sensor }: Pairing): number => diagonalOf(sensor) / 2;
