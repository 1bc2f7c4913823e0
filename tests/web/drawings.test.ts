import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { evaluate, report, scaleOf, seenStops, stopsOf } from '../../core/index.ts';
import { sceneOf } from '../../web/plates/path-geometry.ts';
import type { Ray } from '../../web/plates/path-rays.ts';
import { scaleFor } from '../../web/plates/path-scale.ts';
import { inRows } from '../../web/plates/rows.ts';
import { sensorScene } from '../../web/plates/sensor-geometry.ts';
import { silhouette, stipple } from '../../web/plates/silhouette.ts';
import { tone, UNITS } from '../../web/plates/tone.ts';
import { numberTyped, withAt } from '../../web/state/json.ts';
import { follow, linkTo } from '../../web/state/link.ts';
import { vary } from '../../web/state/vary.ts';
import { OPENING } from './support.ts';

/** The drawings' geometry and the page's own reading and writing, without a browser. */

const RUNS = Number(process.env.RUNS ?? 150);

const pairings = fc
  .record({
    na: fc.double({ min: 0.05, max: 0.4, noNaN: true }),
    f: fc.double({ min: 60, max: 400, noNaN: true }),
    rim: fc.double({ min: 10, max: 60, noNaN: true }),
    space: fc.double({ min: 10, max: 250, noNaN: true }),
    pupil: fc.double({ min: -60, max: 10, noNaN: true }),
    ring: fc.double({ min: 4, max: 40, noNaN: true }),
    tube: fc.double({ min: 15, max: 50, noNaN: true }),
    offset: fc.double({ min: -2, max: 2, noNaN: true }),
  })
  .map(({ na, f, rim, space, pupil, ring, tube, offset }) => ({
    objective: { magnification: 10, na, referenceFocalLengthMm: 200, exitPupilFromShoulderMm: pupil },
    relay: { kind: 'supplementary' as const, focalLengthMm: f, clearApertureMm: rim },
    sensor: { widthMm: 36, heightMm: 24, pixelPitchUm: 4 },
    infinitySpaceMm: space,
    sensorOffsetMm: offset,
    stops: [
      { diameterMm: ring, fromShoulderMm: space / 3 },
      { diameterMm: tube, fromSensorMm: 30 },
    ],
  }));

describe('the light path', () => {
  it('cuts exactly the rays that the discs in the pupil miss, and lands the others at their height', () => {
    let cut = 0;
    let ribbons = 0;
    let through = 0;
    fc.assert(
      fc.property(pairings, (pairing) => {
        const evaluation = evaluate(pairing);
        const scene = sceneOf(evaluation);
        const stops = stopsOf(evaluation.sheet);
        if (!stops) throw new Error('every opening is given');
        const seen = seenStops(stops.rig);
        for (const [fan, height] of [
          [scene.middle, 0],
          [scene.field, scene.cornerHeight],
        ] as const) {
          const t = height / scaleOf(stops.rig);
          // The ribbon's edges are where the outermost of all discs end, along the line of their centres.
          const low = Math.max(...seen.radius.map((r, i) => (seen.walk[i] as number) * t - r));
          const high = Math.min(...seen.radius.map((r, i) => (seen.walk[i] as number) * t + r));
          const { through: ribbon, lost } = height === 0 ? scene.beams.middle : scene.beams.field;
          if (Math.abs(high - low) > 1e-4) {
            ribbons++;
            expect(ribbon.length).toBe(high > low ? 3 : 0);
            if (high > low) {
              expect((ribbon[0] as Ray).p).toBeCloseTo(low, 6);
              expect((ribbon[2] as Ray).p).toBeCloseTo(high, 6);
            }
            expect(ribbon.every((ray) => ray.endsAt === undefined || Math.abs(high - low) < 1e-3)).toBe(true);
            expect(lost.every(([outer]) => outer.endsAt !== undefined)).toBe(true);
          }
          for (const ray of fan) {
            const room = seen.radius.map((r, i) => r - Math.abs(ray.p - (seen.walk[i] as number) * t));
            const least = Math.min(...room);
            if (Math.abs(least) < 1e-6) continue;
            expect(ray.endsAt === undefined).toBe(least > 0);
            if (ray.endsAt === undefined) {
              through++;
              const [z, y] = ray.points.at(-1) as readonly [number, number];
              expect(z).toBeCloseTo(scene.sensor, 9);
              expect(y).toBeCloseTo(height, 6);
            } else {
              cut++;
              const stop = scene.stops[ray.endsAt];
              expect(Math.abs((ray.seen.at(-1) ?? ray.points.at(-1))?.[1] as number)).toBeGreaterThan(stop?.half as number);
            }
          }
        }
      }),
      { numRuns: RUNS, seed: 20 },
    );
    expect(ribbons).toBeGreaterThan(RUNS);
    expect(cut).toBeGreaterThan(RUNS);
    expect(through).toBeGreaterThan(RUNS);
  });

  it('keeps everything inside the drawing at any width', () => {
    fc.assert(
      fc.property(pairings, fc.integer({ min: 300, max: 1800 }), (pairing, width) => {
        const scene = sceneOf(evaluate(pairing));
        const { x, h } = scaleFor(scene, width);
        for (const z of [scene.subject, scene.nose, 0, scene.pupil, scene.plane, scene.sensor]) {
          expect(x(z)).toBeGreaterThanOrEqual(0);
          expect(x(z)).toBeLessThanOrEqual(width);
        }
        expect(x(scene.sensor) - x(scene.plane)).toBeCloseTo(((scene.sensor - scene.plane) * (x(1) - x(0))) as number, 6);
        expect(h(scene.cornerHeight)).toBeGreaterThan(0);
      }),
      { numRuns: 60, seed: 21 },
    );
  });
});

describe('labels, tone and circles', () => {
  it('keeps labels of one row apart and inside', () => {
    fc.assert(
      fc.property(
        fc.array(fc.record({ at: fc.integer({ min: 0, max: 800 }), width: fc.integer({ min: 10, max: 200 }) }), { maxLength: 12 }),
        (labels) => {
          const placed = inRows(labels, 0, 800);
          labels.forEach((a, i) => {
            expect((placed[i] as { middle: number }).middle - a.width / 2).toBeGreaterThanOrEqual(-1e-9);
            labels.forEach((b, j) => {
              if (i >= j || placed[i]?.row !== placed[j]?.row) return;
              expect(Math.abs((placed[i]?.middle ?? 0) - (placed[j]?.middle ?? 0))).toBeGreaterThanOrEqual((a.width + b.width) / 2);
            });
          });
        },
      ),
      { numRuns: 100, seed: 22 },
    );
  });

  it('lays no line where the light is whole, and heavier lines where it is less', () => {
    expect(tone(100, 60, () => 1)).toBe('');
    // Its first line begins on the upper edge: that far above the line's middle, 2 px above the picture's.
    const swell = (light: number): number => {
      const [, x, y] = /^M(-?\d+) (-?\d+)/.exec(tone(100, 60, () => light)) ?? [];
      expect(Number(x)).toBe(-50 * UNITS);
      return -Number(y) / UNITS - 2;
    };
    expect(swell(0.8)).toBeGreaterThan(0.2);
    expect(swell(0.2)).toBeGreaterThan(2 * swell(0.8));
    expect(swell(0)).toBeLessThan(2);
  });

  it('draws tone as the light falls: nothing inside the radius to which it is whole, and closed lines', () => {
    const edge = 22;
    const d = tone(100, 60, (radius) => (radius < edge ? 1 : 0.4));
    const lines = d.split('Z').filter(Boolean);
    expect(lines.length).toBeGreaterThan(10);
    for (const line of lines) {
      let [x, y] = (/^M(-?\d+) (-?\d+)/.exec(line) ?? []).slice(1).map(Number) as [number, number];
      const [x0, y0] = [x, y];
      for (const [, dx, dy, down] of line.matchAll(/l(-?\d+) (-?\d+)|v(\d+)/g)) {
        if (down) y += Number(down);
        else [x, y] = [x + Number(dx), y + Number(dy)];
        expect(Math.hypot(x, y) / UNITS).toBeGreaterThan(edge - 8);
      }
      // Back under where it began: the closing stroke is upright.
      expect(x).toBe(x0);
      expect(y).toBeGreaterThan(y0);
    }
  });

  it('gives the subject an outline that fills its box, and stipples only what is seen of it', () => {
    for (const [w, h] of [
      [320, 180],
      [90, 160],
    ] as const) {
      const numbers = [...silhouette(w, h).matchAll(/-?\d+\.\d/g)].map((m) => Number(m[0]));
      const [xs, ys] = [numbers.filter((_, i) => i % 2 === 0), numbers.filter((_, i) => i % 2 === 1)];
      expect([Math.min(...xs), Math.max(...xs), Math.min(...ys), Math.max(...ys)]).toEqual([-w / 2, w / 2, -h / 2, h / 2]);
    }
    const dots = [...stipple(900, 500, { width: 400, height: 260 }).matchAll(/M(-?[\d.]+) (-?[\d.]+)h0/g)];
    expect(dots.length).toBeGreaterThan(120);
    expect(dots.every(([, x, y]) => Math.abs(Number(x)) <= 200 && Math.abs(Number(y)) <= 130)).toBe(true);
    expect(dots.filter(([, , y]) => Number(y) > 0).length).toBeGreaterThan(4 * dots.filter(([, , y]) => Number(y) < 0).length);
  });

  it('draws the circles at half the diameter that the figures tell, and marks the one that bites', () => {
    const evaluation = evaluate(OPENING);
    const told = report(OPENING);
    const scene = sensorScene(evaluation, told);
    const corrected = scene.circles.find((c) => c.circle === 'corrected');
    expect(corrected?.radius).toBeCloseTo(11, 9);
    expect(scene.circles.filter((c) => c.bites).map((c) => c.circle)).toEqual([told.coverage.bites]);
    expect(scene.circles.map((c) => c.circle)).not.toContain('sharp');
    expect(scene.subject?.width).toBeCloseTo(16, 9);
    expect(scene.subject?.height).toBeCloseTo(9, 9);
  });
});

describe('the sweep over focal lengths', () => {
  it('borders its windows where the verdict changes', () => {
    const evaluation = evaluate({
      objective: { magnification: 10, na: 0.25, referenceFocalLengthMm: 200, fieldNumberMm: 22, exitPupilFromShoulderMm: 0 },
      relay: { kind: 'supplementary', focalLengthMm: 200, clearApertureMm: 54 },
      sensor: { widthMm: 36, heightMm: 24, pixelPitchUm: 4.35 },
      infinitySpaceMm: 60,
    });
    const { windows, tried } = vary(evaluation);
    expect(tried.length).toBe(61);
    expect(windows.map((w) => w.verdict)).toEqual(['misses', 'crops', 'covers']);
    // The field covers from diagonal x 200 / 22, and half of the width from half of that.
    expect(windows[2]?.from).toBeCloseTo((Math.hypot(36, 24) * 200) / 22, 1);
    expect(windows[1]?.from).toBeCloseTo((Math.hypot(36, 24) * 100) / 22, 1);
  });
});

describe('what is typed and linked', () => {
  it('reads numbers as people type them and nothing else', () => {
    expect(['0.25', ' 1,5 ', '−20', '1e308', '5e-324', ''].map(numberTyped)).toEqual([0.25, 1.5, -20, 1e308, 5e-324, undefined]);
    for (const text of ['NaN', 'Infinity', '1e999', '0x10', '1.2.3', 'ten', '--1']) expect(numberTyped(text)).toBe(text);
  });

  it('sets and removes values without touching the rest', () => {
    const before = { a: { b: 1 }, list: [{ x: 1 }, { x: 2 }] };
    expect(withAt(before, '/c/d', 4)).toEqual({ ...before, c: { d: 4 } });
    expect(withAt(before, '/a/b', undefined)).toEqual({ list: before.list });
    expect(withAt(before, '/list/1/x', 9)).toEqual({ a: { b: 1 }, list: [{ x: 1 }, { x: 9 }] });
    expect(before).toEqual({ a: { b: 1 }, list: [{ x: 1 }, { x: 2 }] });
  });

  it('carries a pairing through its link', () => {
    const named = { ...OPENING, objective: { ...OPENING.objective, name: 'ωμ ∞ “10×”' } };
    expect(follow(linkTo(named)).pairing).toEqual(named);
  });

  it('says of each broken link what is wrong', () => {
    const of = (value: unknown): string => `#1.${Buffer.from(JSON.stringify(value)).toString('base64url')}`;
    expect(follow('#2.abcd').fault).toContain('another version');
    expect(follow('#hello').fault).toContain('does not hold a pairing');
    expect(follow('#1.%%%').fault).toContain('cut short or damaged');
    expect(follow(linkTo(OPENING).slice(0, -9)).fault).toContain('cut short or damaged');
    expect(follow(`#1.${'A'.repeat(50_000)}`).fault).toContain('too long');
    expect(follow(of({ ...OPENING, extra: 1 })).fault).toContain('means nothing here');
    expect(follow(of({ ...OPENING, infinitySpaceMm: -1 })).fault).toContain('too small');
    expect(follow(of(JSON.parse('{"__proto__": {"x": 1}}'))).fault).toBeTruthy();
    let deep: unknown = 1;
    for (let i = 0; i < 3000; i++) deep = [deep];
    expect(follow(of(deep)).fault).toBeTruthy();
  });
});

describe('the light path of a relay whose opening is not known', () => {
  it("still shows rings and the mount's throat where they stand", () => {
    const { clearApertureMm: _, maleThread: __, ...relay } = OPENING.relay;
    const scene = sceneOf(
      evaluate({
        ...OPENING,
        relay,
        sensor: { ...OPENING.sensor, registerMm: 18, throatDiameterMm: 46 },
        stops: [{ label: 'a ring', diameterMm: 20, fromShoulderMm: 30 }],
      }),
    );
    expect(scene.openingsKnown).toBe(false);
    expect(scene.stops.map((s) => s.label)).toEqual(["the objective's own pupil", 'a ring', "the mount's throat"]);
    // The throat stands its register before the sensor: 60 mm of space and 200 mm of focal length, less 18.
    expect(scene.stops[2]).toMatchObject({ z: 242, half: 23 });
  });
});
