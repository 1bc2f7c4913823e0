import { type Answer, duration, earned, type FigureId, percent, short } from '../../core/index.ts';

/** Shares are told in per cent, ratios bare, f-numbers and magnifications as they are written. */
const SHARES: ReadonlySet<string> = new Set<FigureId>([
  'correctedShare',
  'litShare',
  'sharpShare',
  'coveredShare',
  'subjectFill',
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
export function toldAs(id: string, answer: Extract<Answer, { state: 'known' }>, share = SHARES.has(id)): Told {
  const { value, low, high } = answer;
  const unit = UNITS[answer.unit] ?? answer.unit;
  const half = Math.max(value - (low ?? value), (high ?? value) - value);
  const timed = unit === 's' && duration(value) !== `${short(value)} s`;
  const end = (x: number): string => (timed ? duration(x) : share ? percent(x).replace(' %', '') : toPlace(x, half));
  const sure = low !== undefined && high !== undefined && high - low <= 1e-9 * Math.max(1, Math.abs(value));
  const ends = [low === undefined ? 'without limit below' : end(low), high === undefined ? 'without limit' : end(high)];
  const named = /[mM]agnification$/.test(id) ? '×' : share ? '%' : unit;
  if (timed) return { text: duration(value), unit: '', range: sure || ends[0] === ends[1] ? '' : `${ends[0]} to ${ends[1]}` };
  // Without a ± only a length is worth a tenth beyond its third digit.
  const most = half > 0 || unit === 'mm' || Number.isInteger(value) ? 4 : 3;
  const text = share ? percent(value).replace(' %', '') : earned(value, low, high, most);
  return { text, unit: named, range: sure || ends[0] === ends[1] ? '' : `${ends[0]} to ${ends[1]}` };
}

/** Down to the second digit of the ±, as `earned` writes the value itself; never more than four digits. */
function toPlace(x: number, half: number): string {
  const last = 10 ** (Math.floor(Math.log10(half)) - 1);
  return short(Math.round(x / last) * last, 4);
}
