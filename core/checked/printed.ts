/**
 * A number as its source printed it. The tolerance comes from the digits that stand there: half a unit
 * of the last one where the source rounds, and up to one whole unit above it where it cuts digits off.
 */
export interface Printed {
  readonly value: number;
  readonly unit: number;
  readonly decimals: number;
}

/** @throws where the text is no plain decimal number */
export function printed(text: string): Printed {
  const match = text.match(/^[−-]?\d+(?:\.(\d+))?$/);
  if (!match) throw new Error(`'${text}' is not a printed number`);
  const decimals = match[1]?.length ?? 0;
  return { value: Number(text.replace('−', '-')), unit: 10 ** -decimals, decimals };
}

/** Room for the last bit of a double, so that a number that ends in 5 may be rounded either way. */
const LAST_BIT = 1e-9;

interface Rounding {
  cutOff?: boolean;
  /** What the source's own rounded inputs add on either side. */
  slack?: number;
}

/** By how much a number may lie below and above what is printed. */
export function roomOf(text: string, { cutOff = false, slack = 0 }: Rounding = {}): readonly [below: number, above: number] {
  const { value, unit } = printed(text);
  const room = LAST_BIT * unit + slack;
  if (!cutOff) return [unit / 2 + room, unit / 2 + room];
  return value < 0 ? [unit + room, room] : [room, unit + room];
}

/** Whether `value` would be printed so. */
export function agrees(value: number, text: string, rounding: Rounding = {}): boolean {
  const [below, above] = roomOf(text, rounding);
  const off = value - printed(text).value;
  return off >= -below && off <= above;
}
