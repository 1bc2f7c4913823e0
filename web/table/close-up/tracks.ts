import { type Answer, numberIn, short } from '../../../core/index.ts';
import type { TableEvaluation, TableFigureId } from '../../../core/table.ts';

/** Where the subject may stand, one way after the other: distances before the glass, mm. */
export interface Track {
  readonly name: string;
  /** That these are the user's own tubes. */
  readonly own?: true;
  /** Undefined where it is not known. */
  readonly near: End | undefined;
  readonly far: End | undefined;
}

export interface End {
  readonly at: number;
  /** Between which it surely lies. */
  readonly low: number;
  readonly high: number;
  readonly assumed: boolean;
  /** How large the subject is shown there; '' where that is not known. */
  readonly size: string;
}

const endOf = (distance: Answer, size: Answer | undefined): End | undefined => {
  if (distance.state !== 'known') return undefined;
  const times = size && numberIn(size);
  return {
    at: distance.value,
    low: distance.low ?? distance.value,
    high: distance.high ?? distance.value,
    assumed: distance.origin === 'assumed',
    size: times === undefined ? '' : `${short(times, times < 0.1 ? 1 : 2)}×`,
  };
};

/** The ways to come close that are known, with the close-up lens first. */
export function tracksOf({ answers }: Pick<TableEvaluation, 'answers'>): Track[] {
  const end = (distance: TableFigureId<'closeUp'>, size: TableFigureId<'closeUp'>) => endOf(answers[distance], answers[size]);
  return [
    {
      name: 'with the close-up lens',
      near: end('closeUpNearestMm', 'closeUpNearMagnification'),
      far: end('closeUpFarthestMm', 'closeUpFarMagnification'),
    },
    {
      name: 'with tubes, as large',
      near: end('tubesNearDistanceMm', 'closeUpNearMagnification'),
      far: end('tubesFarDistanceMm', 'closeUpFarMagnification'),
    },
    {
      name: 'with the tubes that you have',
      own: true as const,
      near: end('ownTubesNearDistanceMm', 'ownTubesNearMagnification'),
      far: end('ownTubesFarDistanceMm', 'ownTubesFarMagnification'),
    },
  ].filter(({ near, far }) => near || far);
}

/** Tubes that are short leave the far end very far off: the drawing reaches so many times as far as all else. */
const AT_MOST = 1.6;

/** How far the drawing reaches, mm: all that is known, with a little more; short tubes may run out of it. */
export function reachOf(tracks: readonly Track[]): number {
  const ends = (some: readonly Track[]): number => Math.max(0, ...some.flatMap(({ near, far }) => [near?.at ?? 0, far?.at ?? 0]));
  const others = ends(tracks.filter(({ own }) => !own));
  const all = ends(tracks);
  return 1.06 * (others > 0 ? Math.min(all, AT_MOST * others) : all);
}

const STEPS = [1, 2, 5, 10, 20, 50, 100, 200, 500, 1000, 2000, 5000, 10_000];

/** Round distances whose figures stand at least `apart` px from each other. */
export function ticksOf(reach: number, pxPerMm: number, apart: number): number[] {
  const step = STEPS.find((s) => s * pxPerMm >= apart) ?? 10 ** Math.ceil(Math.log10(apart / pxPerMm));
  return Array.from({ length: Math.floor(reach / step) + 1 }, (_, i) => i * step);
}
