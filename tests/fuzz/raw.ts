import type { Random } from '../support/random.ts';
import { hostileValue } from './hostile.ts';

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
