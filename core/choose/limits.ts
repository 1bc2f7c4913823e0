import { hypot2 } from '../numeric.ts';
import type { FigureId } from '../pairing/registry.ts';
import type { Want } from './want.ts';

/** What a wish asks of one figure: to be at least so much, or at most. */
export interface Limit {
  readonly name: LimitName;
  readonly figure: FigureId;
  readonly sense: 'least' | 'most';
  readonly limit: number;
}

interface Rule {
  readonly figure: FigureId;
  readonly sense: Limit['sense'];
  /** The limit that a wish sets, in the figure's unit; undefined where it sets none. */
  readonly of: (want: Want) => number | undefined;
}

const least = (figure: FigureId, of: Rule['of']): Rule => ({ figure, sense: 'least', of });
const most = (figure: FigureId, of: Rule['of']): Rule => ({ figure, sense: 'most', of });

/**
 * Each wish as limits on figures. A subject must fit into the frame, and lie inside every known circle unless
 * the frame itself is asked for: a capsule in the middle needs no sharp corners.
 */
const RULES = {
  subjectFits: most('subjectFill', ({ subject }) => (subject ? 1 : undefined)),
  subjectFills: least('subjectFill', ({ subject }) => subject?.shareOfFrame),
  subjectCovered: least('goodFieldMm', ({ subject, minCoveredShare }) =>
    subject && minCoveredShare === undefined ? hypot2(subject.widthMm, subject.heightMm ?? subject.widthMm) : undefined,
  ),
  frameCovered: least('coveredShare', ({ minCoveredShare }) => minCoveredShare),
  fieldNoNarrower: least('objectFieldWidthMm', ({ fieldWidthMm }) => fieldWidthMm?.[0]),
  fieldNoWider: most('objectFieldWidthMm', ({ fieldWidthMm }) => fieldWidthMm?.[1]),
  magnificationAtLeast: least('systemMagnification', ({ magnification }) => magnification?.[0]),
  magnificationAtMost: most('systemMagnification', ({ magnification }) => magnification?.[1]),
  finestDetail: most('resolvedDetailUm', ({ finestDetailUm }) => finestDetailUm),
  workingDistance: least('clearWorkingDistanceMm', ({ minWorkingDistanceMm }) => minWorkingDistanceMm),
  diffuser: least('clearWorkingDistanceMm', ({ lightingClearance }) => lightingClearance?.depthMm),
  lightCone: least('lightConeDeg', ({ lightingClearance }) => lightingClearance?.minConeDeg),
  cornerLight: least('cornerIllumination', ({ minCornerIllumination }) => minCornerIllumination),
  samplingAtLeast: least('samplingRatio', ({ samplingRatio }) => samplingRatio?.[0]),
  samplingAtMost: most('samplingRatio', ({ samplingRatio }) => samplingRatio?.[1]),
  length: most('totalLengthMm', ({ maxLengthMm }) => maxLengthMm),
} as const satisfies Record<string, Rule>;

/** The names of the limits on figures; a budget is a limit too, of no figure. */
export type LimitName = keyof typeof RULES;
export const LIMIT_NAMES = Object.keys(RULES) as LimitName[];

/** The limits that a wish sets, in the order in which they are told. */
export const limitsOf = (want: Want): Limit[] =>
  LIMIT_NAMES.flatMap((name) => {
    const { figure, sense, of } = RULES[name];
    const limit = of(want);
    return limit === undefined ? [] : [{ name, figure, sense, limit }];
  });

/**
 * By how much of the limit a value meets it: 0 right at it, negative where it falls short, Infinity for a value
 * without limit. A limit of 0 is met by the value itself.
 */
export function marginOf({ sense, limit }: Pick<Limit, 'sense' | 'limit'>, value: number): number {
  const over = sense === 'least' ? value - limit : limit - value;
  const margin = limit === 0 ? over : over / limit;
  return Math.abs(margin) < ROUNDING ? 0 : margin;
}

/** A value so near to its limit is at it: what is between them is rounding. */
const ROUNDING = 1e-12;

export const meets = (limit: Pick<Limit, 'sense' | 'limit'>, value: number): boolean => marginOf(limit, value) >= 0;
