import { describe, expect, it } from 'vitest';
import { Gap } from '../../../../core/figure.ts';
import type { Pairing } from '../../../../core/index.ts';
import { curvatureFrames } from '../../../../core/table/stack/counts.ts';
import { stackByObjective } from '../../../../core/table/stack/objectives.ts';
import { incrementThere, railErrorForgivenUm } from '../../../../core/table/stack/steps.ts';
import { byConvention, evaluateTable, planOf, type Settings, stackSentence, tableCautions } from '../../../../core/table.ts';

/** A stack at the borders of what is said and counted of it. */

const PLAN = planOf('stack');
const rig = (subject: Pairing['subject'] = {}, objective: object = {}): Pairing => ({
  objective: { magnification: 10, na: 0.25, referenceFocalLengthMm: 200, exitPupilFromShoulderMm: 0, ...objective },
  relay: { kind: 'tube-lens', focalLengthMm: 200, frontPrincipalPlaneFromRimMm: 0, clearApertureMm: 400 },
  sensor: { widthMm: 24, heightMm: 16, pixelPitchUm: 4 },
  infinitySpaceMm: 60,
  subject,
});
const stack = (pairing: Pairing, settings: Settings = {}) => evaluateTable(pairing, { fieldCurvatureUm: 0, ...settings }, undefined, PLAN);
/** 0.55 / 0.25² and 4 / (10 · 0.25), µm. */
const [WAVE, PIXEL] = [8.8, 1.6];
const T = WAVE + PIXEL;

describe('the edge of the aperture under a flat surface', () => {
  const SOFT = /the rays at the edge of the aperture move ([\d.]+ %) farther/;
  const soft = (subject: Pairing['subject'], objective: object): string | undefined =>
    SOFT.exec(tableCautions(evaluateTable(rig({ depthMm: 0.1, ...subject }, objective), {}), 'stack').join(' '))?.[1];
  /** Dry, into index n: √((n² − NA²) / (1 − NA²)) / n = 1 + a where NA² = (k − n²) / (k − 1), k = n² (1 + a)². */
  const naFor = (a: number, n: number): number => {
    const k = (n * (1 + a)) ** 2;
    return Math.sqrt((k - n * n) / (k - 1));
  };

  it('is noticed from 2 % on, whichever runs ahead', () => {
    expect([0.0199, 0.02005, 0.05].map((a) => soft({ index: 1.5 }, { na: naFor(a, 1.5) }))).toEqual([undefined, '2 %', '5 %']);
    // In oil, 1.518, into water: √((1.33² − 0.6²) / (1.518² − 0.6²)) / (1.33 / 1.518) = 0.9716.
    expect(soft({ index: 1.33 }, { na: 0.6, immersionIndex: 1.518 })).toBe('2.8 %');
    expect(soft({}, {})).toBeUndefined();
  });
});

describe('the frames', () => {
  it('by a convention are told where any steps leave no gap', () => {
    const frames = (subject: Pairing['subject'], settings: Settings) =>
      Object.fromEntries(byConvention(stack(rig(subject), settings)).map((one) => [one.convention, one.frames]));
    // A rail that leaves half a micrometre of each depth: (10 − 10.4) and more from frame to frame.
    const fine = frames({ depthMm: 0.1 }, { railErrorUm: (T - 0.5) / 2 });
    expect(fine['wave-and-pixel']).toBe(1 + Math.ceil((100 - T) / 0.5));
    expect(fine['half-wave-term']).toBeUndefined();
    // As deep as one frame needs no step.
    expect(frames({ depthMm: 0.0059 }, { railErrorUm: 100 })).toMatchObject({ 'wave-and-pixel': 1, 'half-wave-term': 1 });
    expect(frames({}, {})['wave-and-pixel']).toBeUndefined();
  });

  it('for a curved field are what is wanting where anything of them is', () => {
    const of = (...values: unknown[]): unknown => (curvatureFrames.of as (...all: unknown[]) => unknown)(...values);
    const all: unknown[] = [0.1, 20, 10, 8, 13];
    // 100 and 120 µm by steps of 8: 1 + 11.25 and 1 + 13.75, both upward.
    expect(of(...all)).toBe(2);
    for (const i of [0, 1, 2, 4]) expect(of(...all.with(i, Gap.unknown(`/${i}`)))).toMatchObject({ state: 'unknown', missing: [`/${i}`] });
    expect(of(0.005, 5, 10, Gap.none('no step'), 1)).toBe(0);
    expect(of(0.005, 5.1, 10, Gap.none('no step'), 1)).toMatchObject({ state: 'none', why: 'no step' });
  });

  it('of objectives count before their power', () => {
    const objective = (magnification: number, na: number) => ({
      name: String(magnification),
      magnification,
      na,
      referenceFocalLengthMm: 200,
    });
    const rows = stackByObjective(rig({ depthMm: 0.3 }), {}, [objective(5, 0.25), objective(10, 0.1), objective(4, 0.3)]);
    expect(rows.map(({ name }) => name)).toEqual(['10', '5', '4']);
  });
});

describe("the rail's steps and errors", () => {
  it('have a grid above a picometre', () => {
    const grid = (i: unknown): unknown => (incrementThere.of as (i: unknown) => unknown)(i);
    expect([grid(1e-6), grid(1.1e-6)]).toEqual([Gap.unknown('/railIncrementUm'), 1.1e-6]);
  });

  it('are forgiven what whole steps leave, one of them too', () => {
    const forgiven = (...values: number[]): unknown => (railErrorForgivenUm.of as (...all: number[]) => unknown)(...values);
    // A depth of 10, of which 8 go on: one step of 8 leaves 2 for both neighbours; two of 4 the same; none of 8.1.
    expect([forgiven(0.2, 10, 1, 8), forgiven(0.2, 10, 1, 4), forgiven(0.2, 10, 1, 5)]).toEqual([1, 1, 2.5]);
    expect(forgiven(0.2, 10, 1, 8.1)).toBeInstanceOf(Gap);
  });

  it('are told with what they cost from where they cost anything', () => {
    const says = (settings: Settings): string => stackSentence(stack(rig({ depthMm: 1 }), settings));
    const free = stack(rig({ depthMm: 1 })).answers.railErrorForgivenUm;
    const exactly = free.state === 'known' ? free.value : Number.NaN;
    // A fifth of 10.4 µm for both neighbours.
    expect(exactly).toBeCloseTo(1.04, 9);
    expect(says({ railErrorUm: exactly })).toContain('The rail may err by 1.04 µm before that costs frames.');
    expect(says({ railErrorUm: exactly * 1.01 })).toContain("The rail's error of 1.05 µm costs frames: one of 1.04 µm would cost none.");
    expect(says({ overlap: 0.05, railErrorUm: 0 })).toContain('The rail may err by 0.26 µm before that costs frames.');
    expect(says({ overlap: 0, railErrorUm: 0 })).not.toContain('may err');
  });

  it('are not told of a rail that is too coarse, nor frames by conventions of which one has none', () => {
    const coarse = stackSentence(stack(rig({ depthMm: 1 }), { railErrorUm: 12 }));
    expect(coarse).not.toMatch(/costs? frames|the rail goes/);
    // Half the wave term leaves 6 µm, which an error of 4 uses up; twice it leaves more.
    expect(stackSentence(stack(rig({ depthMm: 1 }), { railErrorUm: 4 }))).toMatch(/µm deep\.$|to [\d.]+ µm\.$/);
    expect(stackSentence(stack(rig({ depthMm: 1 }), { railErrorUm: 0 }))).toMatch(/to [\d.]+ µm, \d+ to \d+ frames\.$/);
  });
});
