import { percent, type Swing, short } from '../../core/index.ts';

/** What a headline figure is called in a sentence, and what stands behind its number. */
const CALLED: Record<Swing['figure'], readonly [name: string, unit: string]> = {
  coveredShare: ['the part of the picture that is covered', '\u00a0%'],
  cornerIllumination: ['the light in the corners', '\u00a0%'],
  systemMagnification: ['the magnification', '×'],
  systemNa: ['the aperture of the whole rig', ''],
  shortestCoveringFocalLengthMm: ['the shortest relay that covers', '\u00a0mm'],
};
const SHARES: ReadonlySet<Swing['figure']> = new Set(['coveredShare', 'cornerIllumination']);

/** More than this part of the whole swing beyond both ends is worth saying. */
const BEYOND = 0.05;

/**
 * How the answer hangs on one input, in words: 'Between 20 and 24 mm the light in the corners goes from 74 to 96 %.'
 *
 * @param unit the input's
 */
export function swingInWords({ figure, ends, least, greatest }: Swing, unit = ''): string {
  const [name, sign] = CALLED[figure];
  const digits = (x: number, n: number): string => (SHARES.has(figure) ? percent(x).replace(' %', '') : short(x, n));
  const behind = unit === '' || unit === '×' ? unit : `\u00a0${unit}`;
  const [from, to] = ends;
  const a = from.figure;
  const b = to.figure;
  // Only the relay that covers can be missing.
  if (a === undefined && b === undefined)
    return `At either end, ${short(from.input)} and ${short(to.input)}${behind}, no relay would cover.`;
  if (a === undefined || b === undefined) {
    const [none, some] = a === undefined ? [from, to] : [to, from];
    return `At ${short(none.input)}${behind} no relay would cover; at ${short(some.input)}${behind} ${name} is ${digits(some.figure as number, 3)}${sign}.`;
  }
  const n = digits(a, 3) === digits(b, 3) ? 4 : 3;
  const moves =
    digits(a, n) === digits(b, n)
      ? `${name} is ${digits(a, n)}${sign} at either end`
      : `${name} goes from ${digits(a, n)} to\u00a0${digits(b, n)}${sign}`;
  const tolerance = BEYOND * (greatest - least);
  const between: string[] = [];
  if (least < Math.min(a, b) - tolerance) between.push(`down to\u00a0${digits(least, 3)}${sign}`);
  if (greatest > Math.max(a, b) + tolerance && Number.isFinite(greatest)) between.push(`up to\u00a0${digits(greatest, 3)}${sign}`);
  const inside = between.length > 0 ? `, in between ${between.join(' and ')}` : '';
  return `Between ${short(from.input)} and ${short(to.input)}${behind} ${moves}${inside}.`;
}
