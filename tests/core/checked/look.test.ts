import { expect, it } from 'vitest';
import { isOfTable, workingThere } from '../../../core/checked/look.ts';
import { toldOn } from '../../../core/checked/rig.ts';
import { SUBJECTS } from '../../../core/checked/subjects.ts';
import { glassworks } from '../../../core/glassworks.ts';
import { numberIn, report } from '../../../core/index.ts';
import { evaluateTable } from '../../../core/table.ts';

it('what is checked is the figure that its rig has in a whole report or on a whole table, and has a working there', () => {
  const works = glassworks();
  const values = SUBJECTS.flatMap(({ checks }) => checks.flatMap((check) => check.values));
  const figures = new Map(values.flatMap(({ figure, rig }) => (figure && rig ? [[figure, { figure, rig }] as const] : [])));
  expect(figures.size).toBeGreaterThan(30);
  for (const { figure, rig } of figures.values()) {
    const there = rig();
    const { figures: all, vignetting } = report(there.pairing, works);
    const whole = isOfTable(figure)
      ? evaluateTable(there.pairing, there.settings, works).answers[figure]
      : { ...all, ...vignetting }[figure as keyof typeof all];
    expect(toldOn(there, figure, works), figure).toBe(numberIn(whole));
    expect(workingThere(figure, there).numbers, figure).toMatch(/\d/);
  }
});
