import fc from 'fast-check';
import { beforeAll, describe, expect, it, vi } from 'vitest';
import { AIR, cardinal, inRow, type Lens, lengthOf, prescription, reversed, sag, widestSemiApertures } from '../../core/glassworks.ts';
import { evaluate } from '../../core/index.ts';
import { adviceNow } from '../../web/glass/advice-now.ts';
import { lensOnPath } from '../../web/glass/on-path.tsx';
import { search } from '../../web/glass/search.ts';
import { type Section, sectionOf } from '../../web/glass/section-geometry.ts';
import { sectionScale, spaceUnder } from '../../web/glass/section-scale.ts';
import { sceneOf } from '../../web/plates/path-geometry.ts';
import { answered, take } from '../../web/state/draft.ts';
import { giveUp, hold } from '../../web/state/gesture.ts';
import { fetchWorks } from '../../web/state/works.ts';
import { achromat } from './an-achromat.ts';
import { advised, BEHIND, WORKS, withGlass } from './glass-support.ts';
import { OPENING } from './support.ts';

/** The glass's drawing and the page's reading of it, without a browser. */

const RUNS = Number(process.env.RUNS ?? 60);
const NM = 587.56;
type P = readonly [z: number, y: number];
function drawn(lens: Lens, more: Partial<Parameters<typeof sectionOf>[0]> = {}): Section {
  const prescribed = prescription(lens, NM);
  return sectionOf({
    lens,
    prescription: prescribed,
    pupilDistanceMm: 60,
    pupilRadiusMm: 5.6,
    sensorMm: cardinal(prescribed).backFocalLengthMm,
    cornerHeightMm: 21.6,
    cornerSlope: 21.6 / cardinal(prescribed).effectiveFocalLengthMm,
    usualHalfMm: 20,
    ...more,
  });
}

beforeAll(() => fetchWorks());

describe('before what works with glass is fetched', () => {
  it('a link and a draft with glass wait for it, and are answered when it is there', async () => {
    // Whatever other tests have fetched.
    vi.resetModules();
    const { follow, linkTo } = await import('../../web/state/link.ts');
    const { answered, awaited, judge, problems, take } = await import('../../web/state/draft.ts');
    const { fetchWorks: fetchAnew, worksNow } = await import('../../web/state/works.ts');
    expect(worksNow()).toBeUndefined();
    const link = linkTo(withGlass());
    expect(follow(link)).toEqual({ waits: true });
    expect(judge({ ...withGlass(), infinitySpaceMm: -1 }).problems?.[0]?.path).toBe('/infinitySpaceMm');
    const before = answered.value;
    take(withGlass());
    expect([awaited.value, answered.value]).toEqual(['glass', before]);
    // Another draft in the meantime is not overtaken by the one that waited.
    take({ ...BEHIND, infinitySpaceMm: 61 });
    expect(awaited.value).toBe('nothing');
    await fetchAnew();
    expect(answered.value.pairing.infinitySpaceMm).toBe(61);
    take(withGlass());
    expect([awaited.value, problems.value]).toEqual(['nothing', []]);
    expect(answered.value.pairing).toEqual(withGlass());
    expect(follow(link).pairing).toEqual(withGlass());
    take(OPENING);
  });
});

const lenses = fc
  .record({
    bend: fc.double({ min: -0.008, max: 0.008, noNaN: true }),
    first: fc.double({ min: 4, max: 14, noNaN: true }),
    second: fc.double({ min: 2, max: 8, noNaN: true }),
    turned: fc.boolean(),
  })
  .map(({ bend, first, second, turned }): Lens => {
    const radiiMm = [1 / 1000, -1 / 54, -1 / 91].map((c) => 1 / (c + bend));
    const lens: Lens = {
      radiiMm,
      thicknessesMm: [first, second],
      media: achromat.media,
      semiAperturesMm: widestSemiApertures(radiiMm, [first, second]),
    };
    return turned ? reversed(lens) : lens;
  });

describe('the section', () => {
  it('takes its rays from surface to surface, in straight lines that obey the law of refraction', () => {
    let bent = 0;
    fc.assert(
      fc.property(lenses, fc.double({ min: 0, max: 0.12, noNaN: true }), (lens, cornerSlope) => {
        const section = drawn(lens, { cornerSlope });
        const n = prescription(lens, NM).index;
        for (const ray of [...section.middle, ...section.corner]) {
          if (ray.endsAt !== undefined) continue;
          expect(ray.points.length).toBe(lens.radiiMm.length + 2);
          lens.radiiMm.forEach((r, k) => {
            const [before, here, after] = [ray.points[k], ray.points[k + 1], ray.points[k + 2]] as unknown as [P, P, P];
            const [z, y] = here as [number, number];
            // On the sphere about its centre.
            expect(Math.hypot(z - ((section.vertices[k] as number) + r), y)).toBeCloseTo(Math.abs(r), 8);
            // Angles to the normal in the drawing's plane, by its angle and not by the tracing's vectors.
            const normal = Math.asin(y / r);
            const incoming = Math.atan2(y - before[1], z - before[0]) + normal;
            const outgoing = Math.atan2(after[1] - y, after[0] - z) + normal;
            expect((n[k] as number) * Math.sin(incoming)).toBeCloseTo((n[k + 1] as number) * Math.sin(outgoing), 8);
            bent++;
          });
        }
      }),
      { numRuns: RUNS, seed: 40 },
    );
    expect(bent).toBeGreaterThan(RUNS * 20);
  });

  it('lands the beams where they belong, and ends the rays that a rim takes at that rim', () => {
    const section = drawn(achromat);
    const landed = (ray: Section['corner'][number]): number => ray.points.at(-1)?.[1] as number;
    for (const ray of section.middle) expect(Math.abs(landed(ray))).toBeLessThan(0.05);
    for (const ray of section.corner) expect(landed(ray)).toBeCloseTo(21.6, 0);
    expect(section.sensor).toBeCloseTo(lengthOf(achromat) + cardinal(prescription(achromat, NM)).backFocalLengthMm, 9);
    const narrow = { ...achromat, semiAperturesMm: [9, 9, 9] };
    const cut = drawn(narrow).corner;
    const ended = cut.filter((ray) => ray.endsAt !== undefined);
    expect(ended.length).toBeGreaterThan(0);
    expect(ended.length).toBeLessThan(cut.length);
    for (const ray of ended) {
      expect(ray.points.length).toBe(2 + (ray.endsAt as number));
      expect(Math.abs(ray.points.at(-1)?.[1] as number)).toBeGreaterThan(9);
    }
  });

  it('draws cemented glass of one height with a thickness everywhere, and air as none', () => {
    const { pieces, vertices } = drawn(achromat);
    expect(pieces.map((p) => p.glass)).toEqual(['N-BK7', 'N-SF5']);
    expect(new Set(pieces.map((p) => p.half)).size).toBe(1);
    for (const { front, back, half } of pieces) {
      const at = (i: number): number => (vertices[i] as number) + sag(achromat.radiiMm[i] as number, half);
      expect(at(back) - at(front)).toBeGreaterThanOrEqual(-1e-9);
    }
    const pair = inRow(achromat, reversed(achromat), 30, AIR);
    const two = drawn(pair);
    expect(two.pieces.length).toBe(4);
    expect(two.pieces.map((p) => p.front)).toEqual([0, 1, 3, 4]);
    expect(two.pieces[0]?.index).toBeCloseTo(1.5168, 4);
  });

  it('keeps everything inside the drawing at any width', () => {
    fc.assert(
      fc.property(lenses, fc.integer({ min: 280, max: 1800 }), fc.double({ min: 5, max: 200, noNaN: true }), (lens, width, space) => {
        const section = drawn(lens, { pupilDistanceMm: space });
        const scale = sectionScale(section, -space + 10, width);
        for (const z of [section.pupil, 0, section.length, section.sensor]) {
          expect(scale.x(z)).toBeGreaterThanOrEqual(0);
          expect(scale.x(z)).toBeLessThanOrEqual(width);
        }
        expect(scale.h(section.cornerHeight)).toBeLessThanOrEqual(scale.half * (1 + 1e-9));
        expect(scale.h(1)).toBeCloseTo(scale.stretch * (scale.x(1) - scale.x(0)), 9);
        // Moved to another space, ten less than from the pupil, the relay stands where that space is read off.
        const there = drawn(lens, { pupilDistanceMm: 210 - space });
        const x = sectionScale(there, space - 200, width).x(0);
        expect(spaceUnder(x, section, -space + 10, width)).toBeCloseTo(200 - space, 6);
      }),
      { numRuns: RUNS, seed: 41 },
    );
  });
});

describe('a move that is given up', () => {
  it('leaves the exact answer that stood there', async () => {
    const pairing = { ...withGlass(), infinitySpaceMm: 80, relay: { ...withGlass().relay, clearApertureMm: 24 } };
    take(pairing);
    const before = answered.value.answers;
    hold('relay', 'hand');
    for (const infinitySpaceMm of [82, 95, 111]) take({ ...pairing, infinitySpaceMm });
    giveUp();
    expect(answered.value.pairing.infinitySpaceMm).toBe(80);
    expect(answered.value.answers).toEqual(before);
    take(OPENING);
  });
});

describe('the light path of a relay with glass', () => {
  it('has its sensor where the glass has its focus, and rays that get there', () => {
    for (const reversed of [false, true]) {
      const evaluation = evaluate({ ...withGlass({ reversed }), infinitySpaceMm: 85 }, WORKS);
      const lens = lensOnPath(evaluation, 0);
      if (!lens) throw new Error('there is glass');
      const scene = sceneOf(evaluation, undefined, lens);
      expect(scene.sensor).toBeCloseTo(lens.focusMm, 9);
      const last = lens.outline.vertices.at(-1) as number;
      expect(scene.sensor).toBeGreaterThan(last);
      // Drawn from the last surface to there, the edge of the middle's beam has the slope that a focal length gives it.
      for (const points of lens.course([-scene.pupilHalf, scene.pupilHalf], 0)) {
        const [z, y] = points.at(-1) as readonly [number, number];
        const slope = -y / (scene.sensor - z);
        expect(Math.abs(slope * scene.rig.relayFocalLengthMm)).toBeCloseTo(scene.pupilHalf, 1);
      }
    }
  });
});

describe('what to do, made anew while the relay is moved', () => {
  it('is what a search from there would say', () => {
    const places = { fromMm: 20, toMm: 150, count: 6 };
    const at = (infinitySpaceMm: number) => ({ ...withGlass(), infinitySpaceMm });
    search.value = { state: 'done', found: { advice: advised(at(40), places) } };
    const told = new Set<string>();
    for (const space of [40, 63, 118]) {
      take(at(space));
      expect(adviceNow.value).toEqual(advised(at(space), places));
      told.add(adviceNow.value?.sentence ?? '');
    }
    expect(told.size).toBe(3);
    search.value = undefined;
    expect(adviceNow.value).toBeUndefined();
    take(OPENING);
  });
});
