import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { duration, numberIn, type Pairing, pairingSchema } from '../../../../core/index.ts';
import { depthOfFieldUm } from '../../../../core/pairing/depth-of-field.ts';
import { numberAt } from '../../../../core/table/at.ts';
import { evaluateTable, planOf, SETTINGS, type Settings, stackByObjective, stackSentence } from '../../../../core/table.ts';

const RUNS = Number(process.env.RUNS ?? 150);
const PLAN = planOf('stack');
const within = (key: string) => {
  const one = SETTINGS.find((s) => s.key === key);
  if (!one) throw new Error(key);
  return fc.double({ min: one.bounds[0], max: one.bounds[1], noNaN: true });
};

const rigs = fc
  .record({
    magnification: fc.double({ min: 1, max: 100, noNaN: true }),
    na: fc.double({ min: 0.02, max: 0.95, noNaN: true }),
    index: fc.double({ min: 1, max: 2.5, noNaN: true }),
    convention: fc.constantFrom('wave-and-pixel', 'half-wave-term', 'double-wave-term', 'high-aperture'),
    depthMm: fc.oneof(fc.double({ min: 0, max: 1000, noNaN: true }), {
      weight: 3,
      arbitrary: fc.integer({ min: 1, max: 3000 }).map((um) => um / 1000),
    }),
  })
  .map(({ magnification, na, index, convention, depthMm }) =>
    pairingSchema.parse({
      objective: { magnification, na, referenceFocalLengthMm: 200 },
      relay: { kind: 'tube-lens', focalLengthMm: 200, clearApertureMm: 400 },
      sensor: { widthMm: 23.5, heightMm: 15.6, pixelPitchUm: 3.9 },
      infinitySpaceMm: 60,
      subject: { depthMm, index: Math.max(index, na + 0.01) },
      depth: { convention },
    }),
  );

const share = fc.integer({ min: 0, max: 1000 }).map((k) => k / 1000);
/** Anything within bounds, and mostly as large as it is on a real rail. */
const often = (key: string, max: number) =>
  fc.oneof(
    within(key),
    share.map((x) => 1000 * x),
    { weight: 4, arbitrary: share.map((x) => max * x) },
  );

const set = fc.record(
  {
    overlap: within('overlap'),
    railErrorUm: often('railErrorUm', 0.5),
    fieldCurvatureUm: within('fieldCurvatureUm'),
    railIncrementUm: often('railIncrementUm', 0.5),
  },
  { requiredKeys: [] },
);

/** What is left unseen of `depth` where frames of `T` stand at these places. */
function unseen(places: readonly number[], T: number, depth: number): number {
  let [shown, missed] = [0, 0];
  for (const place of places) {
    missed = Math.max(missed, Math.min(place, depth) - shown);
    shown = Math.max(shown, place + T);
  }
  return Math.max(missed, depth - shown);
}

describe('the frames of any stack that is let in', () => {
  it('leave no gap with every frame but the two ends off by the rail’s error, and are the fewest; unwatched, with all of them off', () => {
    const told = { counted: 0, one: 0, none: 0, onGrid: 0 };
    fc.assert(
      fc.property(rigs, set, (pairing: Pairing, settings) => {
        const evaluation = evaluateTable(pairing, settings as Settings, undefined, PLAN);
        const { stackFrames, stackFramesUnwatched, frameStepUm, focusPerRail } = evaluation.answers;
        const T = numberAt(evaluation, depthOfFieldUm) as number;
        const D = 1000 * (pairing.subject?.depthMm ?? 0);
        const { overlap = 0.2, railErrorUm = 0, railIncrementUm = 0 } = settings;
        const error = railErrorUm * (numberIn(focusPerRail) as number);
        const step = numberIn(frameStepUm);
        const longest = Math.min(T * (1 - overlap), T - 2 * error);
        const increment = railIncrementUm > 1e-6 ? railIncrementUm * (numberIn(focusPerRail) as number) : 0;
        const count = numberIn(stackFrames);
        if (count === undefined) {
          told.none++;
          expect(stackFrames.state).toBe('none');
          // Not one of the ways in which a stack could be counted after all: the rail errs too much or is too coarse, or they are too many.
          const grid = increment > 0 ? increment * Math.floor((longest / increment) * (1 + 1e-9)) : longest;
          expect(T <= 2 * error || grid === 0 || D > T + 99_999 * grid - 1e-6 * D).toBe(true);
          return;
        }
        told[count === 1 ? 'one' : 'counted']++;
        expect(Number.isInteger(count)).toBe(true);
        if (count === 1) {
          expect(D).toBeLessThanOrEqual(T * (1 + 1e-12));
          return;
        }
        if (step === undefined) throw new Error('frames without a step');
        expect(step).toBeLessThanOrEqual(T * (1 - overlap) * (1 + 1e-12));
        expect(step).toBeLessThanOrEqual(T - 2 * error + 1e-12 * T);
        if (increment > 0) {
          told.onGrid++;
          const whole = Math.round(step / increment);
          expect(Math.abs(step / increment - whole)).toBeLessThanOrEqual(1e-12 * whole);
          // One increment more is too long.
          expect((whole + 1) * increment).toBeGreaterThan(longest);
        } else expect(step).toBeCloseTo(longest, 9);
        const slack = 1e-9 * Math.max(T, D);
        const off = (i: number, n: number): number => (i === 0 || i === n - 1 ? 0 : i % 2 ? error : -error);
        expect(
          unseen(
            places(count, (i) => i * step + off(i, count)),
            T,
            D,
          ),
        ).toBeLessThanOrEqual(slack);
        // One less, at steps as long as the rail's error and the overlap let them be, ends before the back.
        expect(T + (count - 2) * step).toBeLessThan(D + slack);
        const all = numberIn(stackFramesUnwatched);
        if (all === undefined) return;
        for (const sign of [1, -1]) {
          expect(
            unseen(
              places(all, (i) => i * step - error + error * (i % 2 ? sign : -sign)),
              T,
              D,
            ),
          ).toBeLessThanOrEqual(slack);
          expect(
            unseen(
              places(all, (i) => i * step - error + error * sign),
              T,
              D,
            ),
          ).toBeLessThanOrEqual(slack);
        }
        expect(all - count).toBeLessThanOrEqual(Math.ceil((2 * error) / step));
      }),
      // Seeded, so that each kind of case comes up whenever it is run.
      { numRuns: RUNS, seed: 84_001 },
    );
    for (const count of Object.values(told)) expect(count).toBeGreaterThan(0);
  });
});

const places = (count: number, at: (i: number) => number): number[] => Array.from({ length: count }, (_, i) => at(i));

const moss = (more: object = {}): Pairing =>
  pairingSchema.parse({
    objective: { name: 'ten', magnification: 10, na: 0.25, referenceFocalLengthMm: 200 },
    relay: { kind: 'tube-lens', focalLengthMm: 200, clearApertureMm: 54 },
    sensor: { widthMm: 23.5, heightMm: 15.6, pixelPitchUm: 4 },
    infinitySpaceMm: 60,
    ...more,
  });

describe('a stack in words', () => {
  const said = (pairing: Pairing, settings: Settings = {}): string => stackSentence(evaluateTable(pairing, settings, undefined, PLAN));

  it('says frames, step, depth by its convention, and what others make of it', () => {
    // 0.55/0.0625 = 8.8 µm of wave and 4/(10 × 0.25) = 1.6 µm of pixel: 10.4 µm, steps of 8.32, 48 of them.
    const words = said(moss({ subject: { depthMm: 0.4 } }), { exposureS: 0.5 });
    expect(words).toContain('48 frames 8.32 µm apart go through the 0.4 mm of the subject in 2 min.');
    expect(words).toContain('by the wave term and the blur of a pixel');
    expect(words).toContain('6 to 19.2 µm, 26 to 84 frames');
  });

  it('says one frame where that is enough, asks for the depth where it is not told, and why there is none', () => {
    expect(said(moss({ subject: { depthMm: 0.01 } }))).toContain('One frame is enough');
    expect(said(moss())).toContain('Say how deep the subject is');
    expect(said(moss({ subject: { depthMm: 0.4 } }), { railErrorUm: 6 })).toContain(
      'This rail is too coarse for frames that are 10.4 µm deep: it may err by 6 µm, and no step is sure to leave no gap unless that is less than 5.2 µm.',
    );
    expect(said(moss({ subject: { depthMm: 0.4, index: 1.5 } }))).toContain('the focus moves 1.5 times as far');
    expect(said(moss({ subject: { depthMm: 0.4 } }))).toContain('The rail may err by 1.04 µm before that costs frames');
    expect(said(moss({ subject: { depthMm: 0.4 } }), { railErrorUm: 2 })).toContain(
      "The rail's error of 2 µm costs frames: one of 1.04 µm would cost none",
    );
  });

  it('goes whole ones of the finest step of the rail, and says so', () => {
    // 8.32 µm are six of 1.25 µm, and (400 − 10.4) / 7.5 = 51.9 more frames.
    const subject = { depthMm: 0.4 };
    expect(said(moss({ subject }), { railIncrementUm: 1.25 })).toContain(
      '53 frames 7.5 µm apart go through the 0.4 mm of the subject in 1 min 47 s. From one frame to the next the rail goes 6 steps of 1.25 µm = 7.5 µm.',
    );
    expect(said(moss({ subject }), { railIncrementUm: 8 })).toContain('the rail goes 1 step of 8 µm.');
    expect(said(moss({ subject }), { railIncrementUm: 8.4 })).toContain(
      'This rail is too coarse for frames that are 10.4 µm deep: its finest step is 8.4 µm, and it may go no more than 8.32 µm from one to the next.',
    );
    expect(said(moss({ subject }), { railIncrementUm: 0 })).toBe(said(moss({ subject })));
  });

  it('counts time as people do', () => {
    expect([0.5, 59.6, 89.9, 90, 98.5, 119, 120, 125, 3600, 7199.4, 7200, 9000].map(duration)).toEqual([
      '0.5 s',
      '59.6 s',
      '89.9 s',
      '1 min 30 s',
      '1 min 39 s',
      '1 min 59 s',
      '2 min',
      '2 min 5 s',
      '60 min',
      '119 min 59 s',
      '2 h',
      '2 h 30 min',
    ]);
  });
});

describe('the same subject with other objectives', () => {
  const objective = (name: string, magnification: number, na: number) => ({ name, magnification, na, referenceFocalLengthMm: 200 });

  it('is counted as with each of them in the pairing, the fewest frames first, and those that cannot be last', () => {
    const pairing = moss({ subject: { depthMm: 0.4 } });
    const all = [objective('twenty', 20, 0.4), objective('wet', 20, 1.2), objective('four', 4, 0.1)];
    const rows = stackByObjective(pairing, { exposureS: 1, overlap: 0.3 }, all);
    expect(rows.map(({ name }) => name)).toEqual(['four', 'twenty', 'wet']);
    for (const [i, part] of [all[2], all[0]].entries()) {
      const { answers } = evaluateTable(
        { ...pairing, objective: part as Pairing['objective'] },
        { exposureS: 1, overlap: 0.3 },
        undefined,
        PLAN,
      );
      expect(rows[i]).toMatchObject({
        magnification: part?.magnification,
        stepUm: numberIn(answers.frameStepUm),
        frames: numberIn(answers.framesInAll),
        railTravelMm: numberIn(answers.railTravelMm),
        timeS: numberIn(answers.stackTimeS),
      });
    }
    expect(rows[2]?.why).toContain('refractive index');
    expect(stackByObjective(moss(), {}, all)[0]?.why).toBe("not known without the subject's depth");
    expect(stackByObjective(pairing, {}, Array(80).fill(all[0]))).toHaveLength(60);
  });
});
