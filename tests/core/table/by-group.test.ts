import { describe, expect, it } from 'vitest';
import { evaluateTable, planOf, type Settings, TABLE_GROUP_NAMES, tableAssumptions } from '../../../core/table.ts';
import { random } from '../../support/random.ts';
import { fullPairing } from '../support/full-pairing.ts';
import { fullSettings } from './full-settings.ts';

describe('the whole table', () => {
  const draw = random(82_101);
  const settings: readonly Settings[] = [fullSettings(draw), fullSettings(draw), {}];

  it('tells of each figure what its group tells alone, ± and origin too', () => {
    for (const set of settings) {
      const pairing = fullPairing(draw);
      const whole = evaluateTable(pairing, set);
      for (const group of TABLE_GROUP_NAMES)
        expect(whole.answers).toMatchObject(evaluateTable(pairing, set, undefined, planOf(group)).answers);
    }
  });

  it('rests on the guesses of its groups, each as much as it matters most', () => {
    const pairing = fullPairing(draw);
    const set: Settings = { cameraFocalLengthMm: 200, closestFocusMm: 950 };
    const most = new Map<string, number>();
    for (const group of TABLE_GROUP_NAMES)
      for (const { path, matters } of tableAssumptions(evaluateTable(pairing, set, undefined, planOf(group))))
        most.set(path, Math.max(matters, most.get(path) ?? 0));
    const told = tableAssumptions(evaluateTable(pairing, set));
    expect(told.length).toBeGreaterThan(4);
    expect(new Map(told.map(({ path, matters }) => [path, matters]))).toEqual(most);
  });
});
