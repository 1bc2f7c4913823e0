/**
 * A number as its source printed it. The tolerance comes from the digits that stand there: half a unit
 * of the last one where the source rounds, and up to one whole unit above it where it cuts digits off.
 */
export interface Printed {
  readonly value: number;
  readonly unit: number;
}

export function printed(text: string): Printed {
  const match = text.match(/^[−-]?\d+(?:\.(\d+))?$/);
  if (!match) throw new Error(`'${text}' is not a printed number`);
  return { value: Number(text.replace('−', '-')), unit: 10 ** -(match[1]?.length ?? 0) };
}

/** Room for the last bit of a double, so that a number that ends in 5 may be rounded either way. */
const LAST_BIT = 1e-9;

/** Whether `value` would be printed so; `slack` is what the source's own rounded inputs add. */
export function agrees(value: number, text: string, { cutOff = false, slack = 0 } = {}): boolean {
  const { value: p, unit } = printed(text);
  const room = LAST_BIT * unit + slack;
  const excess = (value - p) * (p < 0 ? -1 : 1);
  return cutOff ? excess >= -room && excess < unit + room : Math.abs(excess) <= unit / 2 + room;
}
