import { describe, expect, it } from 'vitest';
import type { Coverage } from '../../../core/index.ts';
import { cornerLight, lightBesides } from '../../../core/pairing/corner-light.ts';
import { type Pull, told } from './told.ts';

const RIM = '/relay/clearApertureMm';
const pulls = (...of: [path: string, up: number, down?: number][]): Pull[] =>
  of.map(([path, up, down = 0]) => ({ path, of: 'cornerIllumination', up, down }));
const say = (span: Parameters<typeof told>[0]['cornerIllumination'], of: Pull[] = [], named?: string[]) =>
  cornerLight(told(span === undefined ? {} : { cornerIllumination: span }, { pulls: of }), named);

describe("the corner's light in words", () => {
  it('is rounded, but neither to nothing nor to all of it', () => {
    expect([0.0009, 0.001, 0.5, 0.985, 0.9949, 0.9994, 0.9995, 1].map((E) => say(E))).toEqual([
      'no light',
      '0.1 % of the light',
      '50 % of the light',
      '99 % of the light',
      '99 % of the light',
      '99 % of the light',
      'all of the light',
      'all of the light',
    ]);
    expect(say(undefined)).toBe('an unknown share of the light');
  });
  it('tells what else it may be from a spread of a twentieth on', () => {
    expect(say([0.5, 0.48, 0.529])).toBe('50 % of the light');
    expect(say([0.02, 0, 0.05])).toBe('2 % of the light, anywhere from nothing to 5 %');
    expect(say([0.5, 0.5, 0.5502])).toBe('50 % of the light, anywhere from 50 to 55 %');
    expect(say([0.5])).toBe('50 % of the light');
    expect(say([0.5, 0.3])).toBe('50 % of the light, anywhere from 30 to 50 %');
  });
  it('tells it by the end that it stands at', () => {
    expect(say([0.5, 0.3, 0.9996])).toBe('50 % of the light, anywhere from 30 % to all');
    expect(say([0.5, 0.3, 0.9994])).toBe('50 % of the light, anywhere from 30 to 99 %');
    expect(say([0.5, 0.001, 0.9])).toBe('50 % of the light, anywhere from 0.1 to 90 %');
    expect(say([1, 0.5, 1])).toBe('all of the light, or as little as 50 %');
    expect(say([0.9995, 0.0009, 1])).toBe('all of the light, or as little as nothing');
    expect(say([0.0009, 0, 0.2])).toBe('no light, or as much as 20 %');
    expect(say([0.001, 0, 0.9995])).toBe('0.1 % of the light, anywhere from nothing to all');
  });
  it('names what makes seven tenths of the doubt, as squares, unless it is named already', () => {
    const wide = [0.5, 0.2, 0.8] as const;
    const until = "50 % of the light, anywhere from 20 to 80 % until you measure the relay's clear opening";
    const open = '50 % of the light, anywhere from 20 to 80 %';
    // 0.09 of 0.09 + 0.01; 0.09 of 0.09 + 0.04; 1 of 1.42 is 0.704.
    const [main, shared] = [pulls(['/b', 0.1], [RIM, 0, 0.3]), pulls([RIM, 0.3], ['/b', 0.2])];
    expect(say(wide, main, [])).toBe(until);
    expect(say(wide, main, ['/b'])).toBe(until);
    expect(say(wide, main, [RIM])).toBe(open);
    expect(say(wide, main)).toBe(open);
    expect(say(wide, shared, [])).toBe(open);
    expect(say(wide, pulls([RIM, 1], ['/b', Math.sqrt(0.42)]), [])).toBe(until);
    expect(say(wide, [], [])).toBe(open);
    // In 64ths, which binary has whole: 49 of 49 + 16 + 4 + 1 is seven tenths.
    const sixtyFourths = (main: number) => pulls([RIM, main / 64], ['/b', 4 / 64], ['/c', 2 / 64], ['/d', 1 / 64]);
    expect([say(wide, sixtyFourths(7), []), say(wide, sixtyFourths(6.99), [])]).toEqual([until, open]);
  });
  it('lays to the way that the relay maps angles what it alone may cost', () => {
    expect(say([1, 0.8, 1], pulls(['/b', 0.1], ['/relay/glass', 0, 0.2]), [])).toBe(
      'all of the light, or 80 % by the way the relay maps angles',
    );
  });
});

describe('the light where it is not what bites', () => {
  const besides = (span: Parameters<typeof told>[0]['cornerIllumination'], bites?: Coverage['bites']) =>
    lightBesides(told(span === undefined ? {} : { cornerIllumination: span }), { ...(bites ? { bites } : {}) } as Coverage);
  it('is told in a sentence of its own', () => {
    expect([besides(1), besides([1]), besides([0.9995, 0.96, 1]), besides(1, 'lit'), besides(1, 'corrected')]).toEqual([
      'Light reaches the corners fully.',
      'Light reaches the corners fully.',
      'Light reaches the corners fully.',
      '',
      'Light reaches the corners fully.',
    ]);
    expect(besides([1, 0.95, 1])).toBe('The corners get all of the light, or as little as 95 %.');
    expect(besides([0.9994, 0.97, 1])).toBe('The corners get 99 % of the light.');
    expect(besides(0.3)).toBe('The corners get 30 % of the light.');
    expect(besides(undefined)).toBe("How much light the corners get is not known: give the relay's clear opening.");
  });
});
