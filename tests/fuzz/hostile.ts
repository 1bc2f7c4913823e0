import type { Random } from '../support/random.ts';

/** What no client that means well would send: values, and text that is not even JSON or hardly. */

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

function hostileValue(r: Random): unknown {
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
 * @param fit a value that would stand there by rights, so that some things are only unusual
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

const WRONG_NUMBERS = [
  '1e400',
  '-1e400',
  '1E+999',
  '0x10',
  '01',
  '+1',
  '.5',
  '1.',
  'NaN',
  'Infinity',
  '-Infinity',
  'undefined',
  '-',
  '1e',
  '-0',
  '-0.0',
  '1e-400',
  '123456789012345678901234567890',
];

/** Text that is nearly the JSON of this body: as bytes, since some of it is no UTF-8. */
export function rawText(body: unknown, r: Random): Buffer {
  const text = JSON.stringify(body) ?? 'null';
  const replaceOne = (pattern: RegExp, by: (found: string) => string): string => {
    const found = [...text.matchAll(pattern)];
    if (found.length === 0) return `${text}${by('1')}`;
    const { index, 0: hit } = r.oneOf(found);
    return text.slice(0, index) + by(hit) + text.slice(index + hit.length);
  };
  switch (r.integer(0, 11)) {
    case 0:
    case 1:
      return Buffer.from(replaceOne(/-?\d+(\.\d+)?(e[+-]?\d+)?(?=[,}\]])/gi, () => r.oneOf(WRONG_NUMBERS)));
    case 2:
    case 3: {
      // The same name twice in one object, the second one as it was.
      const value = JSON.stringify(hostileValue(r)) ?? '1';
      return Buffer.from(replaceOne(/"[A-Za-z]+":/g, (name) => `${name}${value},${name}`));
    }
    case 4:
    case 5:
      return Buffer.from(
        replaceOne(/\{/g, () => `{"__proto__":{"polluted":true},"constructor":{"prototype":{"polluted":true}}${text === '{}' ? '' : ','}`),
      );
    case 6:
      return Buffer.from(text.slice(0, r.integer(0, text.length)));
    case 7:
      return Buffer.from(text + r.oneOf(['}', ',', ' x', '\u0000', '\n\n', ' '.repeat(1000), '//']));
    case 8: {
      const bytes = Buffer.from(text);
      if (bytes.length > 0) bytes[r.integer(0, bytes.length - 1)] = r.oneOf([0xff, 0xc0, 0x80, 0x00, 0xed]);
      return bytes;
    }
    case 9:
      return Buffer.from(
        replaceOne(/"[^"]*"/g, () => r.oneOf(['"\\ud800"', '"\\udc00x"', '"\\u0000"', '"\\x41"', "'x'", '"a\nb"', '"\\u202e"'])),
      );
    case 10: {
      const levels = r.oneOf([30, 33, 500, 20_000]);
      const [open, close] = r.chance(0.5) ? ['[', ']'] : ['{"a":', '}'];
      return Buffer.from(r.oneOf([open.repeat(levels) + text + close.repeat(levels), open.repeat(levels), text + open.repeat(levels)]));
    }
    default:
      return Buffer.from(
        r.oneOf([
          '',
          ' ',
          'null',
          'true',
          '0',
          '-0',
          '1e400',
          '""',
          '[]',
          '{}',
          '[{}]',
          '\uFEFF{}',
          `"${'x'.repeat(1000)}"`,
          ' '.repeat(300_000),
        ]),
      );
  }
}
