import { describe, expect, it } from 'vitest';
import { COLOUR } from '../../../../core/checked/rows/colour.ts';
import { GLASS } from '../../../../core/checked/rows/glass.ts';
import { glassNamed } from '../../../../core/glass/glasses.ts';

const of = (id: string, what?: string): number =>
  [...COLOUR, ...GLASS]
    .find((check) => check.id === id)
    ?.values.find((value) => value.what === what)
    ?.of() as number;

describe('a thin achromat', () => {
  // Powers are as V of the own glass to the difference of both, the second one negative.
  it.each([
    ['ACH-001', (64.17 - 36.37) / 64.17, -(64.17 - 36.37) / 36.37],
    ['ACH-004', (2 * 63.46) / (63.46 - 36.37), (-2 * 36.37) / (63.46 - 36.37)],
  ])('%s by the Abbe numbers of its claim', (id, first, second) => {
    expect(of(id, 'first')).toBeCloseTo(first, 9);
    expect(of(id, 'second')).toBeCloseTo(second, 9);
  });
  it('of 200 mm, by the Abbe numbers of its glasses', () => {
    const [crown, flint] = ['N-BK7', 'SF2'].map((name) => {
      const at = (nm: number): number => glassNamed(name)?.indexAt(nm) as number;
      return (at(587.5618) - 1) / (at(486.1327) - at(656.2725));
    }) as [number, number];
    expect(of('ACH-003', 'first')).toBeCloseTo((200 * (crown - flint)) / crown, 9);
    expect(of('ACH-003', 'second')).toBeCloseTo((-200 * (crown - flint)) / flint, 9);
  });
});

it('the eye sees green-yellow at 555 nm best, and hardly the ends: told every 10 nm', () => {
  const eye = COLOUR.find(({ id }) => id === 'VL-001')?.values ?? [];
  expect(eye.map(({ what }) => what)).toEqual(Array.from({ length: 41 }, (_, i) => `${38 + i}0 nm`));
  expect(of('VL-001', '550 nm')).toBeCloseTo(0.995, 3);
  expect(of('VL-001', '560 nm')).toBeCloseTo(0.995, 3);
  for (const { printed, of } of eye) expect(of(), printed).toBeCloseTo(Number(printed), 8);
});

it('glasses of the listing are told at the three lines of its colours, and K7 on the normal line', () => {
  for (const nm of [656.3, 587.6, 486.1]) expect(of('RAY-100', `F5, ${nm} nm`)).toBe(glassNamed('F5')?.indexAt(nm));
  // The normal line of P_gF.
  expect(of('GLS-001', 'g,F line')).toBeCloseTo(0.6438 - 0.001682 * 60.406, 9);
});
