import { describe, expect, it, vi } from 'vitest';
import { cutMtf, evaluate, numberIn, type Pairing, stopsOf } from '../../core/index.ts';
import { contrastSays, isCut, subjectContrast } from '../../web/charts/subject-contrast.ts';
import { inSlices } from '../../web/state/slices.ts';
import { vary, varying } from '../../web/state/vary.ts';
import { OPENING } from './support.ts';

/** What the curves say, without a browser. */

const DARK: Pairing = { ...OPENING, relay: { ...OPENING.relay, clearApertureMm: 24 }, infinitySpaceMm: 150 };

/** Contrast of a round pupil by adding up strips of two overlapping discs, and of a square pixel by adding up a period. */
const overlapped = (v: number): number => {
  const n = 20000;
  let sum = 0;
  for (let i = 0; i < n; i++) {
    const x = v + ((1 - v) * (i + 0.5)) / n;
    sum += Math.sqrt(1 - x * x) * ((1 - v) / n);
  }
  return (4 * sum) / Math.PI;
};
const averaged = (cycles: number): number => {
  const n = 2000;
  let sum = 0;
  for (let i = 0; i < n; i++) sum += Math.cos(2 * Math.PI * cycles * ((i + 0.5) / n - 0.5)) / n;
  return sum;
};
const numbersIn = (text: string): number[] => [...text.matchAll(/(\d+(?:\.\d+)?) (?:%|µm)/g)].map((m) => Number(m[1]));

describe('contrast at the subject', () => {
  it('says in the middle what diffraction and pixels leave, by strips and a period added up', () => {
    const coarse = { ...OPENING, sensor: { widthMm: 36, heightMm: 24, pixelPitchUm: 9 } };
    for (const pairing of [OPENING, coarse]) {
      const says = contrastSays(subjectContrast(evaluate(pairing), 0) as never);
      // By hand from the engraving: f_o 20 mm, NA 0.25, 550 nm, ten times.
      const finest = (2 * 0.25) / 550e-6;
      const pixels = (1000 * 10) / (2 * (pairing.sensor.pixelPitchUm as number));
      const spoken = Math.min(finest, pixels) / 2;
      const lens = overlapped(spoken / finest);
      const recorded = lens * averaged(spoken / (2 * pixels));
      const told = [1000 / spoken, 100 * lens, 100 * recorded, ...(pixels < finest ? [1000 / pixels] : []), 1000 / finest];
      const said = numbersIn(says);
      expect(said.length).toBe(told.length);
      said.forEach((x, i) => {
        expect(Math.abs(x - (told[i] as number)), says).toBeLessThan(0.5);
      });
    }
    expect(contrastSays(subjectContrast(evaluate(OPENING), 0) as never)).toMatch(/^Lines 2\.2 µm apart at the subject keep 39 %/);
    expect(contrastSays(subjectContrast(evaluate(coarse), 0) as never)).toContain('the pixels hold lines down to 1.8 µm');
  });

  it('speaks of the detail that sharpness is judged in where one is told', () => {
    const at = (frequency: number) => contrastSays(subjectContrast(evaluate({ ...OPENING, sharp: { frequency } }), 0) as never);
    expect(at(20)).toContain('Lines 5 µm apart');
    expect(at(40)).toContain('Lines 2.5 µm apart');
  });

  it('says of lines finer than two pixels that they are lost, turned into false ones, or reversed', () => {
    const coarse = (frequency: number, pairing = OPENING, radiusMm = 0) =>
      contrastSays(
        subjectContrast(
          evaluate({ ...pairing, sensor: { widthMm: 36, heightMm: 24, pixelPitchUm: 20 }, sharp: { frequency } }),
          radiusMm,
        ) as never,
      );
    // Pixels of 20 µm hold 25 lp/mm; what they average turns over at 50.
    expect(coarse(24.9)).toContain('once the pixels have taken theirs');
    expect(coarse(24.9)).not.toContain('finer than the pixels can hold');
    for (const [frequency, becomes] of [
      [30, 'show coarser, false lines in their place;'],
      [50, 'blur them to an even tone;'],
      [65, 'show coarser, false lines in their place, light and dark reversed;'],
    ] as const) {
      const says = coarse(frequency);
      expect(says).toContain(`, but are finer than the pixels can hold, which ${becomes} the pixels hold lines down to 4 µm`);
      expect(says).not.toMatch(/once the pixels|next to nothing/);
      expect(numbersIn(says)[1]).toBe(Math.round(100 * overlapped((10 * frequency) / ((2 * 0.25) / 550e-6))));
    }
    expect(coarse(30, DARK, 11)).toMatch(
      /in the worse direction, but are finer than the pixels can hold, which show .*; in the middle it is/,
    );
    // What the lens does not pass makes no false lines.
    expect(coarse(95)).toContain('keep next to nothing of their contrast;');
  });

  it('tells the worse direction where the beam is cut, and that no light arrives where none does', () => {
    const evaluation = evaluate(DARK);
    const { seen } = stopsOf(evaluation.sheet) as NonNullable<ReturnType<typeof stopsOf>>;
    const contrast = subjectContrast(evaluation, 11) as NonNullable<ReturnType<typeof subjectContrast>>;
    expect(isCut(contrast)).toBe(true);
    const F = 200;
    const v = contrast.spoken.objectLpPerMm / (numberIn(evaluation.answers.cutoffObjectLpPerMm) as number);
    const { sagittal, tangential } = cutMtf(seen, 11 / F, v) ?? { sagittal: -1, tangential: -1 };
    const says = contrastSays(contrast);
    expect(numbersIn(says)[1]).toBe(Math.round(100 * Math.min(sagittal, tangential)));
    // Ten times, and pixels of 3.9 µm: what they leave of the worse direction.
    for (const p of [contrast.spoken, ...contrast.points.slice(1, 20)])
      expect(p.recorded).toBeCloseTo(Math.min(p.sagittal, p.tangential) * averaged((p.objectLpPerMm / 10) * 0.0039), 5);
    expect(says).toContain('Where the beam is cut, 11 mm from the middle, lines');
    const corner = contrastSays(subjectContrast(evaluate({ ...DARK, infinitySpaceMm: 400 }), 14) as never);
    expect(corner).toMatch(/^No light arrives 14 mm from the middle\. In the middle lines 2\.2 µm apart/);
    const { clearApertureMm: _, maleThread: __, ...relay } = OPENING.relay;
    expect(subjectContrast(evaluate({ ...OPENING, relay }), 5)).toBeUndefined();
  });
});

describe('the sweep that is shown', () => {
  it('is rough and known not to stand while a handle is held, and the same as on a fresh load when it is let go', async () => {
    vi.stubGlobal('requestAnimationFrame', (then: () => void) => setTimeout(then));
    const { take, answered } = await import('../../web/state/draft.ts');
    const { held } = await import('../../web/state/held.ts');
    const { varied, variedStands } = await import('../../web/state/varied.ts');
    const shown = (until: () => boolean) => vi.waitFor(() => expect(until()).toBe(true), { timeout: 10_000, interval: 5 });
    try {
      take(OPENING);
      await shown(() => variedStands.value);
      held.value = 'the relay';
      take({ ...OPENING, infinitySpaceMm: 90 });
      expect(variedStands.value).toBe(false);
      await shown(() => varied.value?.rough === true);
      take(DARK);
      expect(variedStands.value).toBe(false);
      held.value = undefined;
      await shown(() => variedStands.value);
      expect(answered.value.pairing).toEqual(DARK);
      expect(varied.value).toEqual(vary(evaluate(DARK)));
    } finally {
      held.value = undefined;
      take(OPENING);
      await shown(() => variedStands.value);
      vi.unstubAllGlobals();
    }
  });
});

describe('the sweep that follows what is moved', () => {
  it('agrees, rough, with the full one in its verdicts and nearly in its borders', () => {
    const [fine, rough] = [vary(evaluate(DARK)), vary(evaluate(DARK), true)];
    expect([fine.rough, rough.rough]).toEqual([false, true]);
    expect(rough.tried.length).toBeLessThan(fine.tried.length / 2);
    expect([rough.tried[0], rough.tried.at(-1)]).toEqual([fine.tried[0], fine.tried.at(-1)]);
    const last = [fine.windows.at(-1), rough.windows.at(-1)];
    expect(last[1]?.verdict).toBe(last[0]?.verdict);
    expect(Math.abs((last[1]?.from ?? 0) / (last[0]?.from ?? 1) - 1)).toBeLessThan(4e-3);
  });

  it('pauses after every pairing that is tried', () => {
    const evaluation = evaluate(OPENING);
    const pauses = [...varying(evaluation, true)].length;
    expect(pauses).toBeGreaterThanOrEqual(vary(evaluation, true).tried.length);
  });

  /** A clock that a step of work moves on, and a queue in the place of the browser's. */
  function bench() {
    const queue: (() => void)[] = [];
    const sim = { time: 0, longest: 0, finished: [] as string[] };
    const ask = inSlices<string>(
      { sliceMs: 4, now: () => sim.time, afterPaint: (then) => queue.push(then), soon: (then) => queue.push(then) },
      (name) => sim.finished.push(name),
    );
    function* work(name: string, steps: number): Generator<void, string> {
      for (let i = 0; i < steps; i++) {
        sim.time++;
        yield;
      }
      return name;
    }
    const turn = (): boolean => {
      const next = queue.shift();
      const before = sim.time;
      next?.();
      sim.longest = Math.max(sim.longest, sim.time - before);
      return next !== undefined;
    };
    return { sim, turn, ask: (name: string, steps = 30) => ask(work(name, steps)) };
  }

  it('never works longer than a slice, ends what it began, and then takes the newest', () => {
    const { sim, turn, ask } = bench();
    ask('first');
    turn();
    ask('second');
    ask('third');
    while (turn());
    expect(sim.finished).toEqual(['first', 'third']);
    expect(sim.longest).toBeLessThanOrEqual(5);
    ask('fourth', 0);
    while (turn());
    expect(sim.finished).toEqual(['first', 'third', 'fourth']);
  });

  it('is not starved by one who never stops moving', () => {
    const { sim, turn, ask } = bench();
    for (let i = 0; i < 200; i++) {
      ask(`${i}`);
      turn();
    }
    expect(sim.finished.length).toBeGreaterThan(15);
    while (turn());
    expect(sim.finished.at(-1)).toBe('199');
  });
});
