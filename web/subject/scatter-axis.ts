import { short } from '../../core/index.ts';

interface Tick {
  readonly at: number;
  readonly text: string;
}

export interface Axis {
  readonly ticks: readonly Tick[];
  readonly stepped: 'evenly' | 'by ratio';
  at(value: number): number;
}

/** From so many times on an axis is stepped by ratio. */
const WIDE = 12;
const PADDING = 0.06;

/** An axis over values, from one end in px to the other. */
export function axisOver(values: readonly number[], from: number, to: number): Axis {
  const [least, greatest] = [Math.min(...values), Math.max(...values)];
  const ratio = least > 0 && greatest / least >= WIDE;
  const along = ratio ? Math.log10 : (x: number): number => x;
  const spread = along(greatest) - along(least) || Math.abs(along(greatest)) * 0.2 || 1;
  const [low, high] = [along(least) - PADDING * spread, along(greatest) + PADDING * spread];
  const at = (value: number): number => from + ((along(value) - low) / (high - low)) * (to - from);
  const inside = (value: number): boolean => along(value) >= low && along(value) <= high;
  const ticks = (ratio ? byRatio(least, greatest) : evenly(low, high)).filter(inside);
  return { at, ticks: ticks.map((value) => ({ at: at(value), text: short(value, 3) })), stepped: ratio ? 'by ratio' : 'evenly' };
}

function evenly(low: number, high: number): number[] {
  const rough = (high - low) / 7;
  const ten = 10 ** Math.floor(Math.log10(rough));
  const step = ten * ([1, 2, 5, 10].find((n) => n * ten >= rough) ?? 10);
  const first = Math.ceil(low / step);
  return Array.from({ length: Math.floor(high / step) - first + 1 }, (_, i) => Number(((first + i) * step).toPrecision(12)));
}

function byRatio(least: number, greatest: number): number[] {
  const first = Math.floor(Math.log10(least));
  const decades = Array.from({ length: Math.ceil(Math.log10(greatest)) - first + 1 }, (_, i) => 10 ** (first + i));
  return decades.flatMap((ten) => [1, 2, 5].map((n) => Number((n * ten).toPrecision(6))));
}
