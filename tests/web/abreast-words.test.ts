import { describe, expect, it } from 'vitest';
import {
  type Answer,
  COMPARED,
  differenceOf,
  type Evaluation,
  evaluate,
  letters,
  numberIn,
  type Pairing,
  type Row,
  rowsOf,
  systemMtf,
} from '../../core/index.ts';
import type { Worked } from '../../web/abreast/compare-task.ts';
import { comparing, emptyMemory, type Memory, type Step } from '../../web/abreast/comparing.ts';
import { contrastAbreast, lightAbreast } from '../../web/abreast/curves.ts';
import { fieldOf, fits, layout } from '../../web/abreast/field-geometry.ts';
import { lessOf } from '../../web/abreast/less.ts';
import { engraved } from '../../web/abreast/named.ts';
import { laidIn } from '../../web/state/abreast.ts';
import { parted, read, written } from '../../web/state/link.ts';
import { randomPairing } from '../support/pairings.ts';
import { random } from '../support/random.ts';
import { OPENING } from './support.ts';

/** Pairings abreast, as the link has them, as they are compared and as they are drawn. */

const shorter: Pairing = { ...OPENING, relay: { kind: 'camera-lens', focalLengthMm: 135, fNumber: 2.8 }, infinitySpaceMm: 40 };

function run(pairings: readonly Pairing[], memory: Memory = emptyMemory()) {
  const steps: Step[] = [...comparing(pairings, undefined, memory)];
  const each = steps.flatMap((step) => ('each' in step ? step.each : []));
  const differences = steps.flatMap((step) => ('differences' in step ? step.differences : []));
  return { steps, each, differences, worked: each.filter((one): one is Worked => !one.problems) };
}

describe('what stands behind the link', () => {
  it('is parted from the pairing’s own, and old links are what they were', () => {
    expect(parted('#1.abc')).toEqual(['#1.abc', '']);
    expect(parted('#1.abc.def.ghi')).toEqual(['#1.abc', '.def.ghi']);
    expect(parted('#2.abc.def')).toEqual(['#2.abc.def', '']);
    expect(parted('')).toEqual(['', '']);
  });
  it('holds pairings as values, whatever stands in their names', () => {
    const r = random(7);
    for (let k = 0; k < 20; k++) {
      const pairing = { ...randomPairing(r), relay: { kind: 'supplementary' as const, powerDioptre: 5, name: 'Zoë’s 5 D <b>∞</b>' } };
      const text = written(pairing);
      expect(text).toMatch(/^[\w-]+$/);
      expect(read(text)).toEqual(pairing);
      expect(laidIn(text).pairing).toEqual(pairing);
    }
  });
  it.each([
    ['%%%', 'it is cut short or damaged'],
    [written(OPENING).slice(0, 200), 'it is cut short or damaged'],
    ['', 'it is cut short or damaged'],
    [written(null), 'what it holds is no pairing'],
    [written([1, 2]), ''],
    [written({ ...OPENING, infinitySpaceMm: -3 }), 'infinity space, shoulder to relay: −3 is too small'],
    [written({ ...OPENING, infinitySpaceMm: '<img src=x>' }), 'infinity space'],
    [written({ ...OPENING, constructor: 1 }), ''],
    ['A'.repeat(50_000), 'it is far too long for a pairing'],
  ])('says in words what is wrong with %.20s', (text, words) => {
    const found = laidIn(text);
    expect(found.pairing).toBeUndefined();
    expect(found.fault).toBeTruthy();
    expect(found.fault?.toLowerCase()).toContain(words.toLowerCase().replace('what it holds is no pairing', ''));
  });
});

describe('comparing', () => {
  it('works out each pairing and each pair, and what stays not anew', () => {
    const memory = emptyMemory();
    const three = [OPENING, shorter, { ...OPENING, infinitySpaceMm: 90 }];
    const { steps, differences, worked } = run(three, memory);
    expect(steps.filter((step) => 'done' in step)).toHaveLength(3 + 3);
    expect(steps.at(-2)).toEqual({ done: 6, of: 6 });
    expect(differences.map((row) => row.length)).toEqual([2, 1, 0]);
    const [a, b] = three.map((pairing) => evaluate(pairing)) as [Evaluation, Evaluation];
    expect(differences[0]?.[0]).toEqual(differenceOf(a, b, COMPARED));
    expect(worked[0]?.answers.coveredShare).toEqual(a.answers.coveredShare);

    const known = [...memory.evaluations.values()];
    run(three.slice(0, 2), memory);
    expect([...memory.evaluations.values()]).toEqual([known[0], known[1]]);
    expect([...memory.evaluations.values()][0]).toBe(known[0]);
    expect(memory.pairs.size).toBe(1);
  });
  it('leaves out what contradicts itself, and says why', () => {
    const broken: Pairing = { ...OPENING, stops: [{ diameterMm: 20, fromShoulderMm: 500 }] };
    const { each, differences } = run([OPENING, broken, shorter]);
    expect(each[1]?.problems?.[0]?.path).toMatch(/^\/stops\/0/);
    expect(differences.map((row) => row.length)).toEqual([1, 0]);
  });
});

it('tells by how much one exceeds another or falls short of it', () => {
  const told = (value: number, plusMinus: number): Answer => ({
    state: 'known',
    value,
    unit: '1',
    low: value - plusMinus,
    high: value + plusMinus,
    origin: 'measured',
  });
  const answers = [0.85, 0.47, 0.8].map(
    (value) =>
      ({
        ...run([OPENING]).worked[0]?.answers,
        coveredShare: told(value, 0.1),
        systemMagnification: told(10 * value, 1),
      }) as Worked['answers'],
  );
  const by = [[told(-0.38, 0.08), told(-0.05, 0.06)], [told(0.33, 0.04)]];
  const rows = rowsOf({
    answers,
    difference: (from, of) => Object.fromEntries(COMPARED.map((id) => [id, by[from]?.[of - from - 1] ?? told(0, 0)])) as never,
  });
  const row = rows.find(({ id }) => id === 'coveredShare') as Row;
  expect(lessOf(row, 0, 1)).toBe('38 points less (30 to 46)');
  expect(lessOf(row, 1, 0)).toBe('38 points more (30 to 46)');
  expect(lessOf(row, 2, 1)).toBe('33 points less (29 to 37)');
  expect(lessOf(row, 0, 2)).toBe('level with A');
  // Of a magnification so much more, not so many times more.
  const m = rows.find(({ id }) => id === 'systemMagnification') as Row;
  expect(lessOf(m, 0, 1)).toBe('0.38 less (0.3 to 0.46)');
});

describe('the drawings', () => {
  it('show all fields at one scale, none over another', () => {
    const r = random(3);
    for (const width of [358, 900, 1200])
      for (let k = 0; k < 20; k++) {
        const fields = Array.from({ length: r.integer(2, 12) }, (_, place) => ({
          place,
          field: { width: r.between(0.3, 12), height: r.between(0.2, 9), goodMm: undefined, subject: undefined },
        }));
        const { k: scale, placed, height } = layout(fields, width);
        expect(placed).toHaveLength(fields.length);
        for (const [i, one] of placed.entries()) {
          expect(one.w / one.field.width).toBeCloseTo(scale, 9);
          expect(one.h / one.field.height).toBeCloseTo(scale, 9);
          expect(one.x + one.w).toBeLessThanOrEqual(width);
          expect(one.y + one.h).toBeLessThanOrEqual(height);
          for (const other of placed.slice(i + 1))
            expect(other.x >= one.x + one.w || other.y >= one.y + one.h || other.x + other.w <= one.x).toBe(true);
        }
      }
  });
  it('know whether the subject has room, turned as it lies best', () => {
    const [worked] = run([OPENING]).worked as [Worked];
    const one = { pairing: OPENING, answers: worked.answers };
    const field = fieldOf(one, { widthMm: 1, heightMm: 2.2 });
    expect(field?.subject).toEqual([2.2, 1]);
    expect(field && fits(field)).toBe(true);
    const larger = fieldOf(one, { widthMm: 3 });
    expect(larger && fits(larger)).toBe(false);
    expect(fieldOf(one, {})?.subject).toBeUndefined();
  });
  it('draw the light and the contrast of each, one letter at one end', () => {
    const dark: Pairing = { ...OPENING, relay: { ...OPENING.relay, clearApertureMm: 17 } };
    const { worked } = run([OPENING, OPENING, dark]);
    const light = lightAbreast(worked);
    expect(light.drawing?.lines.map(({ label }) => label?.text)).toEqual(['A and B', undefined, 'C']);
    const corner = numberIn((worked[2] as Worked).answers.cornerIllumination) as number;
    expect(light.drawing?.lines[2]?.points.at(-1)?.y).toBeCloseTo(100 * corner, 6);
    expect(light.says).toBe(`Of the light in the middle the corner keeps 100 % in A and B, ${Math.round(100 * corner)} % in C.`);
    expect(light.rows().at(-1)).toEqual(['100 %', '100 %', '100 %', `${Math.round(100 * corner)} %`]);

    const contrast = contrastAbreast(worked);
    const evaluation = evaluate(OPENING);
    const [m, cutoff, nyquist] = (['systemMagnification', 'cutoffImageLpPerMm', 'nyquistLpPerMm'] as const).map((id) =>
      numberIn(evaluation.answers[id]),
    ) as [number, number, number];
    const points = contrast.drawing?.lines[0]?.points ?? [];
    expect(points.at(-1)?.x).toBeCloseTo(m * Math.min(cutoff, nyquist), 6);
    for (const { x, y } of points) expect(y).toBeCloseTo(100 * systemMtf(x / m, cutoff, 1 / (2 * nyquist)), 6);
    expect(contrast.rows().at(-1)?.[0]).toBe(String(Number((points.at(-1)?.x ?? 0).toPrecision(3))));
  });
  it('name parts as they are engraved, and several letters shortly', () => {
    const turned: Pairing = { ...OPENING, relay: { ...OPENING.relay, reversed: true }, stops: [{ diameterMm: 20, fromShoulderMm: 10 }] };
    expect(engraved(turned).join(' · ')).toMatch(
      /^10x\/0\.25 .* · 5 D .* · turned round · 23\.5 x 15\.6 mm .* · infinity space 60 mm · 1 ring$/,
    );
    expect([[0], [0, 1], [0, 1, 2], [0, 2, 4, 5, 6], [0, 1, 3]].map(letters)).toEqual([
      'A',
      'A and B',
      'A to C',
      'A, C and E to G',
      'A, B and D',
    ]);
  });
});
