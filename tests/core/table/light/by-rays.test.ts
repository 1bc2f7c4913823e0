import { describe, expect, it } from 'vitest';
import { numberIn, type Pairing, pairingSchema } from '../../../../core/index.ts';
import { evaluateTable, planOf, type Settings } from '../../../../core/table.ts';
import { type Random, random } from '../../../support/random.ts';

/** Rays against solids, one by one: the second route to the room for light. */

const PLAN = planOf('light');
const DEG = 180 / Math.PI;
const FIELD = 1.2;
const NA = 0.4;

interface Bench {
  free: number;
  depth: number;
  nose: number;
  end: number;
  taper: number;
  rim: number;
  space: number;
  parfocal: number;
}

const bench = (r: Random): Bench => {
  const nose = r.between(14, 34);
  const free = r.between(3, 30);
  return {
    free,
    depth: r.between(0, 1.5),
    nose,
    end: r.between(4, nose),
    taper: r.between(0.5, 14),
    rim: r.between(20, 120),
    space: r.between(10, 90),
    parfocal: free + r.between(20, 50),
  };
};

/** A field of 1.2 mm across the corners at 10x. */
const pairingOf = (b: Bench): Pairing =>
  pairingSchema.parse({
    objective: {
      magnification: 10,
      na: NA,
      referenceFocalLengthMm: 200,
      exitPupilFromShoulderMm: 0,
      workingDistanceMm: b.free,
      noseDiameterMm: b.nose,
      parfocalDistanceMm: b.parfocal,
    },
    relay: { kind: 'tube-lens', focalLengthMm: 200, clearApertureMm: b.rim, frontPrincipalPlaneFromRimMm: 0 },
    sensor: { widthMm: 9.6, heightMm: 7.2, pixelPitchUm: 4 },
    infinitySpaceMm: b.space,
    subject: { depthMm: b.depth },
  });

const figures = (b: Bench, more: Settings = {}) => {
  const { answers } = evaluateTable(pairingOf(b), { noseFrontDiameterMm: b.end, noseTaperLengthMm: b.taper, ...more }, undefined, PLAN);
  return Object.fromEntries(Object.entries(answers).map(([id, answer]) => [id, numberIn(answer)])) as Record<
    keyof typeof answers,
    number | undefined
  >;
};

/** Half-width of what stands over the subject, so high above the plane in focus: nothing, the nose, the relay as a thin disc. */
function halfAt(b: Bench, h: number): number {
  if (h < b.free) return 0;
  const up = h - b.free;
  return up < b.taper ? b.end / 2 + ((b.nose - b.end) / 2) * (up / b.taper) : b.nose / 2;
}

/** Whether light from the direction (ux, uy, uz), uz upward, reaches a point `x` off the axis. Marched in small steps of height. */
function reaches(b: Bench, x: number, [ux, uy, uz]: readonly [number, number, number], heights: readonly number[]): boolean {
  for (const h of heights) if (Math.hypot(x + (ux * h) / uz, (uy * h) / uz) < halfAt(b, h)) return false;
  const relay = b.parfocal + b.space;
  return Math.hypot(x + (ux * relay) / uz, (uy * relay) / uz) >= b.rim / 2;
}

/** The nose's profile is straight between its corners: what passes those passes it all, and a little more is looked at between. */
const heightsOf = (b: Bench): number[] => [
  b.free,
  ...[1, 2, 3, 4, 5, 6, 7].map((k) => b.free + (b.taper * k) / 8),
  b.free + b.taper,
  b.parfocal - 1e-9,
];

const steepest = (b: Bench, x: number): number => {
  const heights = heightsOf(b);
  let [low, high] = [0, Math.PI / 2];
  for (let i = 0; i < 60; i++) {
    const e = (low + high) / 2;
    // The lamp stands to the left of the axis, the point to the right of it.
    if (reaches(b, x, [-Math.cos(e), 0, Math.sin(e)], heights)) low = e;
    else high = e;
  }
  return low * DEG;
};

describe('the room for light', () => {
  it('ends where rays past every edge of nose and relay end, in the middle of the field and at its far corner', () => {
    const r = random(64_001);
    const by = { end: 0, whole: 0, relay: 0 };
    for (let i = 0; i < 60; i++) {
      const b = bench(r);
      const { lightMiddleDeg, lightFarCornerDeg } = figures(b);
      expect(lightMiddleDeg).toBeCloseTo(steepest(b, 0), 8);
      expect(lightFarCornerDeg).toBeCloseTo(steepest(b, FIELD / 2), 8);
      const slopes = { end: b.free / b.end, whole: (b.free + b.taper) / b.nose, relay: (b.parfocal + b.space) / b.rim };
      const least = Math.min(...Object.values(slopes));
      by[(Object.keys(slopes) as (keyof typeof slopes)[]).find((k) => slopes[k] === least) as keyof typeof slopes]++;
    }
    for (const count of Object.values(by)) expect(count).toBeGreaterThan(4);
  });

  it('is that share of the half-space when directions are counted evenly', () => {
    const r = random(64_002);
    const COUNT = 20_000;
    for (let i = 0; i < 4; i++) {
      const b = bench(r);
      const heights = heightsOf(b);
      let free = 0;
      for (let k = 0; k < COUNT; k++) {
        // Even in height and turned by the golden angle: even over the half-sphere.
        const uz = (k + 0.5) / COUNT;
        const turn = k * Math.PI * (3 - Math.sqrt(5));
        const across = Math.sqrt(1 - uz * uz);
        if (reaches(b, 0, [across * Math.cos(turn), across * Math.sin(turn), uz], heights)) free++;
      }
      expect(Math.abs(free / COUNT - (figures(b).lightShare ?? 0))).toBeLessThan(2 / COUNT);
    }
  });
});

describe('a diffuser', () => {
  it('has to spare what a search finds: how much it may grow inward, or the nose come down, before they touch', () => {
    const r = random(64_003);
    const found = { fits: 0, not: 0, inside: 0, under: 0 };
    for (let i = 0; i < 200; i++) {
      const b = bench(r);
      const thick = r.between(0, 2);
      const [foot, top, height] = [r.between(8, 50), r.between(8, 50), r.between(1, 40)];
      const { diffuserSpareMm: spare = Number.NaN, diffuserShare = Number.NaN } = figures(b, {
        diffuserDiameterMm: foot,
        diffuserTopDiameterMm: top,
        diffuserHeightMm: height,
        diffuserThicknessMm: thick,
      });
      const wall = (h: number): number => foot / 2 - thick + ((top - foot) / 2) * (h / height);
      const places = Array.from({ length: 801 }, (_, k) => (height * k) / 800);
      // The beam of the picture, from the field up to the nose.
      const beam = Math.min(...places.filter((h) => h <= b.free).map((h) => wall(h) - FIELD / 2 - h * Math.tan(Math.asin(NA))));
      const beside = Math.min(
        ...[...places, b.free + b.taper].filter((h) => h >= b.free && h <= height).map((h) => wall(h) - halfAt(b, h)),
      );
      const side = height <= b.free ? wall(height) - b.end / 2 : beside;
      const due = Math.min(beam, Math.max(b.free - height, side));
      expect(Math.abs(spare - due)).toBeLessThan(0.15);
      // The search only looks at places: it can find more room than there is, never less.
      expect(spare).toBeLessThanOrEqual(due + 1e-9);
      found[spare >= 0 ? 'fits' : 'not']++;
      if (spare >= 0) found[height > b.free ? 'inside' : 'under']++;
      const up = Math.min(Math.atan(height / wall(height)) * DEG, steepest(b, 0));
      expect(diffuserShare).toBeCloseTo(Math.sin(up / DEG), 8);
    }
    for (const count of Object.values(found)) expect(count).toBeGreaterThan(8);
  });
});
