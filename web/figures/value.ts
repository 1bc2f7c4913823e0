import { type Answer, earned, type FigureId, percent } from '../../core/index.ts';

/** Shares are told in per cent, ratios bare, f-numbers and magnifications as they are written. */
const SHARES: ReadonlySet<FigureId> = new Set([
  'correctedShare',
  'litShare',
  'sharpShare',
  'coveredShare',
  'cornerIllumination',
  'contrastAtNyquist',
]);

export interface Told {
  text: string;
  unit: string;
  /** 'from … to …', where low and high say more than the digits do. */
  range: string;
}

const UNITS: Record<string, string> = { '1': '', EV: 'stops', '1/mm': 'per mm' };

/** A known answer with the digits that its ± earns. */
export function toldAs(id: FigureId, answer: Extract<Answer, { state: 'known' }>): Told {
  const { value, low, high } = answer;
  const unit = UNITS[answer.unit] ?? answer.unit;
  const one = (x: number): string => {
    if (SHARES.has(id)) return percent(x).replace(' %', '');
    return earned(x, low === undefined ? undefined : Math.min(low, x), high === undefined ? undefined : Math.max(high, x));
  };
  const sure = low !== undefined && high !== undefined && high - low <= 1e-9 * Math.max(1, Math.abs(value));
  const ends = [low === undefined ? 'without limit below' : one(low), high === undefined ? 'without limit' : one(high)];
  const named = id === 'systemMagnification' ? '×' : SHARES.has(id) ? '%' : unit;
  return { text: one(value), unit: named, range: sure || ends[0] === ends[1] ? '' : `${ends[0]} to ${ends[1]}` };
}
