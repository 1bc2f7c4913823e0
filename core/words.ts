/** Numbers and lists as people read them. */

/** A number with at most `digits` significant digits and no idle zeros. */
export const short = (x: number, digits = 3): string => {
  const text = String(Number(x.toPrecision(digits)));
  return text.replace('-', '−');
};

/** Rounded to three digits on the safe side: up for what is needed at least, down for what is allowed at most. */
export const atLeast = (x: number): string => short(rounded(x, Math.ceil));
export const atMost = (x: number): string => short(rounded(x, Math.floor));

function rounded(x: number, how: (x: number) => number): number {
  const unit = 10 ** (Math.floor(Math.log10(x)) - 2);
  // A number that has three digits already stays, whatever its last bits say.
  return how(Number((x / unit).toPrecision(12))) * unit;
}

/** A share as a percentage: whole from 10 % up, one digit below. */
export function percent(share: number): string {
  const p = 100 * share;
  const size = Math.abs(p);
  return `${size >= 10 || p === 0 ? short(Math.round(p)) : short(p, size < 1 ? 1 : 2)} %`;
}

/** The digits that a number without ± earns: what is engraved is hardly good to more than three, a long length to the tenth of a mm. */
const plainly = (value: number): number => (Number.isInteger(value) || Math.abs(value) >= 100 ? 4 : 3);

/** The digits that a number earns: down to the second digit of its ±, at most `most` of them. */
export function earned(value: number, low: number | undefined, high: number | undefined, most = 4): string {
  if (value === 0) return '0';
  const half = Math.max(value - (low ?? value), (high ?? value) - value);
  if (!(half > 0) || !Number.isFinite(half)) return short(value, Math.min(plainly(value), most));
  const last = Math.floor(Math.log10(half)) - 1;
  const first = Math.floor(Math.log10(Math.abs(value)));
  return short(value, Math.min(most, Math.max(1, first - last + 1)));
}

/** The article that a number is read with: an 85, an 800, an 11, a 110. */
export const article = (digits: string): string => (/^(8|1[18](\D|$))/.test(digits) ? 'an' : 'a');

/** `a`, `a and b`, `a, b and c`. */
export const listed = (items: readonly string[]): string =>
  items.length < 2 ? (items[0] ?? '') : `${items.slice(0, -1).join(', ')} and ${items.at(-1)}`;

export const capital = (text: string): string => text.charAt(0).toUpperCase() + text.slice(1);

/** From here on seconds are hard to picture, s. */
const IN_MINUTES = 90;

/** Seconds up to a minute and a half, then minutes, then hours; each with what is left over. */
export function duration(s: number): string {
  const seconds = Math.round(s);
  if (s < IN_MINUTES) return `${short(s)} s`;
  if (seconds < 7200) return left(Math.floor(seconds / 60), 'min', seconds % 60, 's');
  const minutes = Math.round(s / 60);
  return left(Math.floor(minutes / 60), 'h', minutes % 60, 'min');
}

const left = (whole: number, unit: string, rest: number, smaller: string): string =>
  rest === 0 ? `${whole} ${unit}` : `${whole} ${unit} ${rest} ${smaller}`;
