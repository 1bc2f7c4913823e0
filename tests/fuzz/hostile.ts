import type { Random } from '../support/random.ts';

/** Values that no client that means well would send, and bodies spoilt by them. */

const NUMBERS = [
  1.7976931348623157e308,
  -1.7976931348623157e308,
  1e300,
  5e-324,
  -5e-324,
  2.2250738585072014e-308,
  1e-300,
  -0,
  0,
  -1,
  1,
  2,
  3.5,
  1e6,
  1e9,
  1e21,
  2 ** 53,
  2 ** 53 + 2,
  -(2 ** 31),
  2 ** 32,
  0.1 + 0.2,
  1 + Number.EPSILON,
  1e-7,
];
const TEXTS = [
  '',
  ' ',
  '0',
  '1e400',
  'NaN',
  'null',
  '__proto__',
  'constructor',
  'prototype',
  'toString',
  'hasOwnProperty',
  '../../etc/passwd',
  '/relay/__proto__',
  '/objective/magnification',
  '/stops/0/diameterMm',
  '~',
  '/~2',
  '/relay/focalLengthMm/value',
  '\u0000',
  'a\u0000b',
  '\uD800',
  '\uDFFF\uD800',
  'e\u0301'.repeat(60),
  '\u202Ereversed',
  '\u05D0\u05D1',
  '\uFEFF',
  '\u2028',
  '👩‍👩‍👧',
  '<img src=x onerror=alert(1)>',
  '=1+1',
  'plane',
  'air',
  'M42 x 1',
  '58 x 0.75',
  'x'.repeat(121),
  'y'.repeat(10_000),
  '[]',
  '{}',
];
const KEYS = [
  '__proto__',
  'constructor',
  'prototype',
  'toString',
  'valueOf',
  'hasOwnProperty',
  '',
  ' ',
  '\u0000',
  'a/b',
  'a~b',
  '0',
  '-1',
  'length',
  'value',
  'from',
  'kind',
  'name',
  '\uD800',
  'x'.repeat(5000),
];

const nested = (levels: number, r: Random): unknown => {
  let value: unknown = 1;
  const list = r.chance(0.5);
  for (let i = 0; i < levels; i++) value = list ? [value] : { a: value };
  return value;
};

export function hostileValue(r: Random): unknown {
  const kind = r.integer(0, 9);
  if (kind <= 3) return r.oneOf(NUMBERS);
  if (kind <= 5) return r.oneOf(TEXTS);
  if (kind === 6) return r.oneOf([null, true, false, [], {}, [[]], [null], [1, 2], {}]);
  if (kind === 7) return { value: r.oneOf(NUMBERS), plusMinus: r.oneOf(NUMBERS), origin: r.oneOf(['measured', 'assumed', 'marked', 'x']) };
  if (kind === 8) return nested(r.oneOf([2, 20, 40, 300]), r);
  return Array.from({ length: r.oneOf([3, 17, 600]) }, () => r.oneOf(NUMBERS));
}

interface Place {
  holder: Record<string, unknown> | unknown[];
  key: string;
}

const placesIn = (value: unknown): Place[] =>
  typeof value === 'object' && value !== null
    ? Object.keys(value).flatMap((key) => [
        { holder: value as Record<string, unknown>, key },
        ...placesIn((value as Record<string, unknown>)[key]),
      ])
    : [];

/** A name put in as JSON would, `__proto__` as any other. */
const put = (holder: object, key: string, value: unknown): void => {
  Object.defineProperty(holder, key, { value, enumerable: true, configurable: true, writable: true });
};

/**
 * The same body with one to three things wrong somewhere in it.
 */
export function spoilt(body: unknown, r: Random): unknown {
  const whole = structuredClone({ body }) as { body: unknown };
  for (let n = r.oneOf([1, 1, 1, 2, 3]); n > 0; n--) {
    const { holder, key } = r.oneOf(placesIn(whole));
    const at = (holder as Record<string, unknown>)[key];
    const act = r.integer(0, 8);
    if (act <= 3) put(holder, key, hostileValue(r));
    else if (act === 4 && holder !== (whole as unknown)) {
      if (Array.isArray(holder)) holder.splice(Number(key), 1);
      else delete holder[key];
    } else if (act === 5 && typeof at === 'object' && at !== null && !Array.isArray(at))
      put(at, r.oneOf(KEYS), r.chance(0.5) ? hostileValue(r) : { polluted: true, constructor: { prototype: { polluted: true } } });
    else if (act === 6 && typeof at === 'number') put(holder, key, at * r.oneOf([-1, 1e-12, 1e12, 10, 0.1, 1 + 1e-12]));
    else if (act === 7 && Array.isArray(at)) at.push(...Array.from({ length: r.oneOf([1, 3, 520]) }, () => structuredClone(at[0] ?? 1)));
    else put(holder, key, r.oneOf([[at], { value: at }, JSON.stringify(at) ?? '', { from: at }]));
  }
  return whole.body;
}
