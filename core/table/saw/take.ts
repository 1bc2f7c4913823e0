import { type Problem, steps, valueAt } from '../../errors.ts';
import { contradictions } from '../../pairing/contradictions.ts';
import type { Glassworks } from '../../pairing/glassworks.ts';
import type { Pairing } from '../../pairing/schema.ts';
import { amount, BOUNDS, type Bounded, type QuantityInput } from '../../parts/quantity.ts';
import type { Finding } from './findings.ts';

const rounded = (x: number, digits: number): number => Number(x.toPrecision(digits));

/**
 * A finding as the quantity that stands in the pairing: measured, the 95 % half-width as its ±, and what is engraved
 * kept beside it.
 */
export function measuredAs(
  { path, value, plusMinus }: Pick<Finding, 'path' | 'value' | 'plusMinus'>,
  pairing: Pairing,
): Exclude<QuantityInput, number> {
  const keys = steps(path);
  const [least, greatest] = BOUNDS[keys.at(-1) as Bounded];
  const here = valueAt(pairing, keys) as QuantityInput | undefined;
  const exact = rounded(Math.min(greatest, Math.max(least, value)), 6);
  // A little less than there is room for, so that rounding does not reach beyond.
  const room = Math.min(exact - least, greatest - exact) * (1 - 1e-9);
  const marked =
    typeof here === 'object' ? (here.marked ?? (here.origin === 'marked' || here.origin === undefined ? amount(here) : undefined)) : here;
  return {
    value: exact,
    plusMinus: Math.min(rounded(plusMinus, 3), room),
    origin: 'measured',
    ...(marked === undefined ? {} : { marked }),
  };
}

/** The pairing with a finding in the place of what it replaces, or what the pairing would say against it. */
export function taking(pairing: Pairing, finding: Finding, works?: Glassworks): { pairing: Pairing; problems: readonly Problem[] } {
  const copy = structuredCopy(pairing);
  const keys = steps(finding.path);
  const parent = valueAt(copy, keys.slice(0, -1)) as Record<string, unknown>;
  parent[keys.at(-1) as string] = measuredAs(finding, pairing);
  const problems = contradictions(copy, works);
  return { pairing: problems.length > 0 ? pairing : copy, problems };
}

/** The pairing with every finding taken that it has nothing against. */
export const taken = (pairing: Pairing, findings: readonly Finding[], works?: Glassworks): Pairing =>
  findings.reduce((before, finding) => taking(before, finding, works).pairing, pairing);

/** A copy whose objects may be written; a pairing holds nothing but plain values. */
function structuredCopy<T>(value: T): T {
  if (Array.isArray(value)) return value.map(structuredCopy) as T;
  if (typeof value !== 'object' || value === null) return value;
  return Object.fromEntries(Object.entries(value).map(([key, inner]) => [key, structuredCopy(inner)])) as T;
}
