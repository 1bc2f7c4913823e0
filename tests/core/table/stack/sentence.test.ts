import { describe, expect, test } from 'vitest';
import type { Pairing } from '../../../../core/index.ts';
import { depthOfFieldUm } from '../../../../core/pairing/depth-of-field.ts';
import { numberAt } from '../../../../core/table/at.ts';
import { byConvention, evaluateTable, planOf, type Settings, stackSentence, tableCautions } from '../../../../core/table.ts';

const PLAN = planOf('stack');
/** 10× NA 0.25 at 0.55 µm, pixels of 4 µm; in water, 4/3, the focus moves 4/3 as far as the rail. */
const rig = (subject: Pairing['subject'], opening: object = { clearApertureMm: 60 }): Pairing => ({
  objective: { magnification: 10, na: 0.25, referenceFocalLengthMm: 200, exitPupilFromShoulderMm: 0 },
  relay: { kind: 'tube-lens', focalLengthMm: 200, frontPrincipalPlaneFromRimMm: 0, ...opening },
  sensor: { widthMm: 24, heightMm: 16, pixelPitchUm: 4 },
  infinitySpaceMm: 60,
  subject,
});
const stack = (subject: Pairing['subject'], settings: Settings = {}, opening?: object) =>
  evaluateTable(rig(subject, opening), { fieldCurvatureUm: 0, ...settings }, undefined, PLAN);
const says = (...args: Parameters<typeof stack>): string => stackSentence(stack(...args));
const T = numberAt(stack({}), depthOfFieldUm) as number;
const INDEX = 1.5;
const T_THERE = numberAt(stack({ index: INDEX }), depthOfFieldUm) as number;
const three = (x: number): string => String(Number(x.toPrecision(3)));
/** A subject that is `k` depths of a frame deep, mm. */
const deep = (k: number, t = T): number => (k * t) / 1000;

describe('what a stack comes to, in words', () => {
  test('without the depth of a frame it is not known, and no more is said', () => {
    expect(says({ depthMm: 1 }, {}, {})).toBe('How many frames it takes is not known: the depth of one is not.');
  });

  test('without the depth of the subject it says what a frame is and what each one more adds: four fifths', () => {
    const text = says({});
    expect(
      text.startsWith(`Say how deep the subject is: a frame is ${three(T)} µm deep, and each one more adds ${three(0.8 * T)} µm. `),
    ).toBe(true);
    expect(says({}, { railErrorUm: T }).startsWith(`Say how deep the subject is: a frame is ${three(T)} µm deep. `)).toBe(true);
  });

  test('one frame is enough for what is no deeper than it', () => {
    expect(says({ depthMm: 0.004 })).toMatch(
      new RegExp(`^One frame is enough: it is ${three(T)} µm deep, and the subject 4 µm\\. A frame is `),
    );
    expect(says({ depthMm: deep(1) })).toMatch(/^One frame is enough/);
    expect(says({ depthMm: deep(1.0001) })).toMatch(/^2 frames /);
    // And then nothing is said of a rail that nobody moves.
    expect(says({ depthMm: 0.004 }, { railIncrementUm: 0.1 })).not.toContain('the rail');
  });

  test('a rail that errs by half the depth of a frame is too coarse, in its own µm', () => {
    for (const [index, t] of [
      [1, T],
      [INDEX, T_THERE],
    ] as const)
      expect(says({ depthMm: 1, index }, { railErrorUm: 12 })).toMatch(
        new RegExp(
          `^This rail is too coarse for frames that are ${three(t)} µm deep: it may err by 12 µm, and no step is sure to leave no gap unless that is less than ${three(t / (2 * index))} µm\\. `,
        ),
      );
  });

  test('so is one whose finest step is longer than two frames may stand apart', () => {
    expect(says({ depthMm: 1, index: INDEX }, { railIncrementUm: 20 })).toMatch(
      new RegExp(
        `^This rail is too coarse for frames that are ${three(T_THERE)} µm deep: its finest step is 20 µm, and it may go no more than ${three((0.8 * T_THERE) / INDEX)} µm from one to the next\\. `,
      ),
    );
  });

  test('frames beyond counting are told as that', () => {
    expect(says({ depthMm: 1000 }, { overlap: 0.95 })).toMatch(/^More than 100,000 frames, which no rail goes in one stack\. /);
  });

  test('the frames, how far apart, how long they take, and which of them are for the curved field', () => {
    // 1 + 10 steps of 0.8 T reach 9 T; each frame takes 2 s to settle and 0.01 s of exposure.
    expect(says({ depthMm: deep(8.9) })).toMatch(
      new RegExp(`^11 frames ${three(0.8 * T)} µm apart go through the ${three(deep(8.9))} mm of the subject in 22\\.1 s\\. `),
    );
    expect(says({ depthMm: deep(8.9) }, { fieldCurvatureUm: 1.7 * T })).toMatch(/^13 frames, 2 of them for the curved field, /);
    expect(says({ depthMm: deep(8.9) }, { fieldCurvatureUm: 0.05 * T })).toMatch(/^11 frames [\d.]+ µm apart/);
  });
});

describe('what the rail does, in words', () => {
  const rail = (subject: Pairing['subject'], settings: Settings): string => says({ depthMm: deep(9), ...subject }, settings);
  test('in air with any step nothing but what it may err by', () => {
    // Neighbours share a fifth of T: each may err by a tenth.
    expect(rail({}, {})).toContain(` The rail may err by ${three(0.1 * T)} µm before that costs frames. `);
    expect(rail({}, {})).not.toContain('From one frame');
    expect(rail({}, { overlap: 0 })).not.toContain('The rail may err');
    expect(rail({}, { overlap: 0 })).not.toContain('  ');
  });
  test('an error beyond that costs frames', () => {
    expect(rail({}, { railErrorUm: 0.2 * T })).toContain(
      ` The rail's error of ${three(0.2 * T)} µm costs frames: one of ${three(0.1 * T)} µm would cost none. `,
    );
  });
  test('through a flat surface the rail goes less far than the focus', () => {
    expect(rail({ index: INDEX }, {})).toContain(
      ` From one frame to the next the rail goes ${three((0.8 * T_THERE) / INDEX)} µm: under its flat surface the focus moves 1.5 times as far. `,
    );
  });
  test('whole steps are counted; a single one is told without its sum', () => {
    expect(rail({}, { railIncrementUm: 2 })).toContain(
      ` From one frame to the next the rail goes ${Math.floor((0.8 * T) / 2)} steps of 2 µm = ${2 * Math.floor((0.8 * T) / 2)} µm. `,
    );
    expect(rail({}, { railIncrementUm: 8 })).toContain(' From one frame to the next the rail goes 1 step of 8 µm. ');
  });
});

describe('the other conventions', () => {
  /** λ n / NA², with the green that the eye sees best. */
  const wave = (0.55 * 1) / 0.25 ** 2;

  test('differ in the wave term: half of it, twice', () => {
    const all = byConvention(stack({}));
    const at = (convention: string): number => all.find((one) => one.convention === convention)?.depthUm as number;
    expect(all.filter(({ chosen }) => chosen).map(({ convention, depthUm }) => [convention, depthUm])).toEqual([['wave-and-pixel', T]]);
    expect(at('half-wave-term') - T).toBeCloseTo(-wave / 2, 1);
    expect(at('double-wave-term') - T).toBeCloseTo(wave, 1);
    expect(byConvention(stack({}, {}, {}))).toEqual([]);
    for (const one of all) expect(one).not.toHaveProperty('frames');
  });

  test('each has its own frames, by whole steps where the rail has a finest one', () => {
    for (const railIncrementUm of [0, 1.7])
      for (const index of [1, INDEX]) {
        const all = byConvention(stack({ depthMm: 0.3, index }, { railIncrementUm, railErrorUm: 0.2 }));
        for (const { depthUm, frames } of all) {
          const longest = Math.min(0.8 * depthUm, depthUm - 0.4 * index);
          const grid = index * railIncrementUm;
          const step = grid === 0 ? longest : grid * Math.floor(longest / grid);
          expect(frames).toBe(1 + Math.ceil((300 - depthUm) / step));
        }
        expect(new Set(all.map(({ frames }) => frames)).size).toBeGreaterThan(2);
      }
  });

  test('a subject of one frame by one of them may be two by another: 6 µm and a step of 4.8 for 10.4', () => {
    const frames = byConvention(stack({ depthMm: deep(1) })).map(({ convention, frames }) => [convention, frames]);
    expect(Object.fromEntries(frames)).toMatchObject({ 'wave-and-pixel': 1, 'half-wave-term': 2, 'double-wave-term': 1 });
  });

  test('where no step leaves no gap, or they are beyond counting, there are none', () => {
    const coarse = byConvention(stack({ depthMm: 1 }, { railErrorUm: 0.5 * T }));
    expect(coarse.map(({ frames }) => frames !== undefined)).toEqual(coarse.map(({ depthUm }) => depthUm > T));
    for (const one of byConvention(stack({ depthMm: 1000 }, { overlap: 0.95 }))) expect(one).not.toHaveProperty('frames');
  });

  test('are told beside the chosen one, with their frames where all have some and they differ', () => {
    const all = byConvention(stack({ depthMm: 0.3 }));
    const [depths, frames] = [all.map(({ depthUm }) => depthUm), all.map((one) => one.frames as number)];
    const spread = `by others in use it is ${three(Math.min(...depths))} to ${three(Math.max(...depths))} µm`;
    expect(says({ depthMm: 0.3 })).toMatch(
      new RegExp(
        ` A frame is ${three(T)} µm deep by the wave term and the blur of a pixel; ${spread}, ${Math.min(...frames)} to ${Math.max(...frames)} frames\\.$`,
      ),
    );
    expect(says({})).toMatch(new RegExp(`${spread}\\.$`));
    expect(says({ depthMm: 0.001 })).toMatch(new RegExp(`${spread}\\.$`));
    expect(says({ depthMm: 1 }, { railErrorUm: 0.5 * T })).toMatch(new RegExp(`${spread}\\.$`));
  });
});

describe('what to mind in a stack', () => {
  const cautions = (subject: Pairing['subject'], settings: Settings = {}): string =>
    tableCautions(evaluateTable(rig(subject), settings, undefined, PLAN), 'stack').join(' ');
  test('that the rail drives the nose toward the subject, where it goes at all', () => {
    expect(cautions({ depthMm: deep(1.5) })).toContain('The rail drives the nose');
    expect(cautions({ depthMm: deep(0.9) })).not.toContain('The rail drives the nose');
    expect(cautions({})).not.toContain('The rail drives the nose');
  });
  test('that no frame is counted for a curved field that nobody looked at', () => {
    expect(cautions({ depthMm: 1 })).toContain('no frame is counted for it');
    expect(cautions({ depthMm: 1 }, { fieldCurvatureUm: 3 })).not.toContain('no frame is counted for it');
    for (const settings of [{}, { fieldCurvatureUm: 3 }])
      expect(cautions({ depthMm: 1 }, settings)).not.toContain("Of the curved field only the relay's part");
  });
  test('that rays at the edge run ahead under a flat surface, from a fiftieth on', () => {
    const at = (na: number, index: number): string => {
      const pairing = rig({ depthMm: 1, index });
      return tableCautions(evaluateTable({ ...pairing, objective: { ...pairing.objective, na } }, {}, undefined, PLAN), 'stack').join(' ');
    };
    // √((1.5² − 0.5²) / (1 − 0.5²)) / 1.5 = √(2 / 0.75) / 1.5 = 1.0887.
    expect(at(0.5, 1.5)).toContain('move 8.9 % farther');
    expect(at(0.25, 1.5)).not.toContain('farther than those');
    expect(at(0.5, 1)).not.toContain('farther than those');
  });
  test('flashes, where they are set', () => {
    expect(cautions({ depthMm: 1 }, { flashRecycleS: 1 })).toContain('Flashes');
    expect(cautions({ depthMm: 1 })).not.toContain('Flashes');
  });
});
