import { describe, expect, test } from 'vitest';
import type { Pairing } from '../../../../core/index.ts';
import { nearestIn, type ObjectiveStack, stackByObjective } from '../../../../core/table/stack/objectives.ts';

const objective = (magnification: number, na: number, more: object = {}) => ({
  name: `${magnification}/${na}`,
  magnification,
  na,
  referenceFocalLengthMm: 200,
  ...more,
});
const rig: Pairing = {
  objective: objective(10, 0.25),
  relay: { kind: 'tube-lens', focalLengthMm: 200, clearApertureMm: 400 },
  sensor: { widthMm: 24, heightMm: 16, pixelPitchUm: 4 },
  infinitySpaceMm: 60,
  subject: { depthMm: 0.3 },
};
const rows = (objectives: readonly Pairing['objective'][], pairing = rig) => stackByObjective(pairing, {}, objectives);

describe('the stack by objective', () => {
  const all = [objective(50, 0.55), objective(5, 0.14), objective(20, 0.42), objective(10, 0.25)];
  test('the fewest frames first', () => {
    const told = rows(all);
    expect(told.map(({ name }) => name)).toEqual(['5/0.14', '10/0.25', '20/0.42', '50/0.55']);
    for (const row of told) {
      expect(row.why).toBeUndefined();
      expect(row.frames).toBe(1 + Math.ceil((300 - (row.depthUm as number)) / (row.stepUm as number)));
    }
  });
  test('of as many the weakest first, and those without any last, with what is wanting', () => {
    const shallow = rows(all, { ...rig, subject: { depthMm: 0.0001 } });
    expect(shallow.map(({ frames }) => frames)).toEqual([1, 1, 1, 1]);
    expect(shallow.map(({ magnification }) => magnification)).toEqual([5, 10, 20, 50].map((m) => expect.closeTo(m, 9)));
    const unknown = rows(all, { ...rig, subject: {} });
    expect(unknown.map(({ magnification }) => magnification)).toEqual([5, 10, 20, 50].map((m) => expect.closeTo(m, 9)));
    for (const row of unknown) {
      expect(row.why).toMatch(/^not known without .*depth/);
      expect(row.depthUm).toBeGreaterThan(0);
    }
  });
  test('one that cannot stand there is told with the reason, after all others', () => {
    const told = rows([objective(40, 1.2), objective(5, 0.14)]);
    expect(told[0]?.name).toBe('5/0.14');
    expect(told[1]).toEqual({ name: '40/1.2', why: expect.stringContaining('refractive index') });
  });
  test('one with too many frames says so, and what else is known of it', () => {
    const [row] = stackByObjective({ ...rig, subject: { depthMm: 1000 } }, { overlap: 0.95 }, [objective(50, 0.55)]);
    expect(row).toMatchObject({ why: expect.stringContaining('more than 100,000 frames'), magnification: expect.closeTo(50, 9) });
    expect(row).not.toHaveProperty('frames');
  });
});

describe('the nearest by ratio', () => {
  const row = (name: string, magnification?: number): ObjectiveStack => ({
    name,
    ...(magnification === undefined ? {} : { magnification }),
  });
  const all = [row('none'), row('4', 4), row('30', 30), row('8', 8), row('21', 21), row('10', 10)];
  test('half is as far as twice; what has no magnification is farthest', () => {
    const names = (most: number): string[] => [...nearestIn(all, 10, most)].map(({ name }) => name);
    expect(names(1)).toEqual(['10']);
    expect(names(2)).toEqual(['10', '8']);
    // 21 is 2.1 times, 4 is 2.5 times less, 30 three times more.
    expect(names(4)).toEqual(['10', '8', '21', '4']);
    expect(names(6).at(-1)).toBe('none');
  });
});
