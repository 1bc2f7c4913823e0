import { describe, expect, it } from 'vitest';
import type { Check } from '../../../../core/checked/check.ts';
import { DOUBLE_GAUSS } from '../../../../core/checked/lenses/double-gauss.ts';
import { DOUBLETS } from '../../../../core/checked/lenses/doublets.ts';
import { RAY_TABLES } from '../../../../core/checked/lenses/ray-tables.ts';
import { THIN } from '../../../../core/checked/lenses/thin.ts';
import { glassNamed } from '../../../../core/glass/glasses.ts';

/** What thin lenses do in closed form, to more digits than a source prints. */
const of = (checks: readonly Check[], id: string, what?: string): number =>
  checks
    .find((check) => check.id === id)
    ?.values.find((value) => value.what === what)
    ?.of() as number;

/** Radii over the focal length of a thin lens with the stop at it, of the Petzval sum times its focal length. */
const fields = (petzval: number) => ({
  Petzval: -1 / petzval,
  sagittal: -1 / (1 + petzval),
  medial: -1 / (2 + petzval),
  tangential: -1 / (3 + petzval),
});

describe('the field of a thin lens', () => {
  it.each(['−1', '0', '0.7', '1'])('is as curved when it is bent %s', (bent) => {
    const due = fields(1 / 1.5168);
    for (const curve of ['Petzval', 'sagittal', 'tangential'] as const)
      expect(of(THIN, 'THN-001', `${curve}, bent ${bent}`), curve).toBeCloseTo(due[curve], 9);
    expect(of(THIN, 'THN-002')).toBeCloseTo(-151.68, 9);
  });
  it('that is an achromat comes from its two powers over their indices', () => {
    const [crown, flint] = ['N-BK7', 'SF5'].map((name) => {
      const at = (nm: number): number => glassNamed(name)?.indexAt(nm) as number;
      const n = at(587.5618);
      return { n, V: (n - 1) / (at(486.1327) - at(656.2725)) };
    }) as [{ n: number; V: number }, { n: number; V: number }];
    const due = fields((crown.V / crown.n - flint.V / flint.n) / (crown.V - flint.V));
    for (const curve of ['Petzval', 'sagittal', 'medial', 'tangential'] as const)
      expect(of(THIN, 'THN-005', curve), curve).toBeCloseTo(due[curve], 9);
  });
});

it("two thin lenses in contact add their powers, each by the lens maker's equation", () => {
  const power = (n: number, front: number, back: number): number => (n - 1) * (1 / front - 1 / back);
  const [crown, flint] = [power(1.5168, 121.25, -81.78), power(1.64769, -82.19, -281.88)];
  expect(of(DOUBLETS, 'ACH-003b', 'f1')).toBeCloseTo(1 / crown, 9);
  expect(of(DOUBLETS, 'ACH-003b', 'f2')).toBeCloseTo(1 / flint, 9);
  expect(of(DOUBLETS, 'ACH-003b', 'f')).toBeCloseTo(1 / (crown + flint), 9);
});

it('an axial and a principal ray, followed from surface to surface by hand', () => {
  // Into 1.5 behind R = 50, 10 mm on into 1.6 behind R = -50, 2 mm on out of a plane: y, and n u behind each.
  const through = (y1: number, u: number): { y2: number; nu2: number; y3: number } => {
    const nu1 = u - (y1 * 0.5) / 50;
    const y2 = y1 + (10 * nu1) / 1.5;
    const nu2 = nu1 + (y2 * 0.1) / 50;
    return { y2, nu2, y3: y2 + (2 * nu2) / 1.6 };
  };
  const [axial, principal] = [through(10, 10 / 300), through(0, -20 / 300)];
  expect(of(RAY_TABLES, 'RAY-001', 'y2')).toBeCloseTo(axial.y2, 9);
  expect(of(RAY_TABLES, 'RAY-001', 'n u behind surface 2')).toBeCloseTo(axial.nu2, 9);
  expect(of(RAY_TABLES, 'RAY-001', 'y3')).toBeCloseTo(axial.y3, 9);
  expect(of(RAY_TABLES, 'RAY-001', "l'")).toBeCloseTo(-axial.y3 / axial.nu2, 9);
  expect(of(RAY_TABLES, 'RAY-002', 'y3')).toBeCloseTo(principal.y3, 9);
  expect(of(RAY_TABLES, 'RAY-002', 'n u behind surface 3')).toBeCloseTo(principal.nu2, 9);
  expect(of(RAY_TABLES, 'RAY-002', 'image height')).toBeCloseTo(principal.y3 - (axial.y3 / axial.nu2) * principal.nu2, 9);
});

it('surfaces are counted from 1, and what they add up to comes last', () => {
  const surfaces = Array.from({ length: 11 }, (_, k) => `surface ${k + 1}`);
  const named = (id: string): unknown[] => [
    ...new Set(DOUBLE_GAUSS.find((check) => check.id === id)?.values.map(({ what }) => what?.split(',')[0])),
  ];
  expect(named('RAY-103')).toEqual(surfaces);
  expect(named('RAY-105')).toEqual(surfaces);
  expect(named('RAY-107')).toEqual([...surfaces, 'sum']);
  const sum = (column: string): number => surfaces.reduce((all, surface) => all + of(DOUBLE_GAUSS, 'RAY-107', `${surface}, ${column}`), 0);
  for (const column of ['axial', 'lateral']) expect(of(DOUBLE_GAUSS, 'RAY-107', `sum, ${column}`)).toBeCloseTo(sum(column), 9);
});
