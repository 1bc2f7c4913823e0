import { contradictions, pairingSchema } from '../../core/index.ts';
import opening from '../../data/opening.json' with { type: 'json' };
import { manyParts } from '../support/many-parts.ts';
import { randomPairing } from '../support/pairings.ts';
import { random } from '../support/random.ts';
import type { Ask } from './told.ts';

/** Bodies to send: no two alike, so that nothing is gained by remembering an answer. */

const { pairing } = opening;

/** The opening example with its rim, spacing and wavelength moved: some cut the corners, some do not. */
function openings(count: number, seed: number): object[] {
  const r = random(seed);
  return Array.from({ length: count }, () => ({
    ...pairing,
    infinitySpaceMm: r.between(40, 100),
    wavelengthNm: r.between(480, 640),
    relay: { ...pairing.relay, clearApertureMm: { ...pairing.relay.clearApertureMm, value: r.between(30, 54) } },
  }));
}

const asked = (kind: string, path: string, bodies: readonly object[]): Ask[] =>
  bodies.map((body) => ({ kind, path, body: JSON.stringify(body) }));

export const reports = (count: number, seed = 1): Ask[] => asked('report', '/api/pairings/report', openings(count, seed));
/** The very bodies of `reports`, sent to the bare route. */
export const bare = (count: number, seed = 1): Ask[] => asked('bare', '/api/bare', openings(count, seed));

/** Pairings of every kind, with rings and camera lenses and sensors off the focus, none of which contradicts itself. */
export function manifold(count: number, seed = 2): Ask[] {
  const r = random(seed);
  const bodies: object[] = [];
  while (bodies.length < count) {
    const read = pairingSchema.safeParse(randomPairing(r));
    if (read.success && contradictions(read.data).length === 0) bodies.push(read.data);
  }
  return asked('report', '/api/pairings/report', bodies);
}

/** Bodies that are refused, each in a field of its own. */
export const refused = (count: number, seed = 3): Ask[] =>
  asked(
    'refused',
    '/api/pairings/report',
    openings(count, seed).map((one, i) => ({ ...one, infinitySpaceMm: -1 - i })),
  ).map((ask) => ({ ...ask, status: 422 }));

export const sweeps = (count: number, seed = 4): Ask[] =>
  asked(
    'sweep',
    '/api/pairings/sweep',
    openings(count, seed).map((one, i) => ({ pairing: one, vary: '/infinitySpaceMm', from: 20 + (i % 7), to: 120, steps: 20 })),
  );

/** What every search here asks for. */
export const SEARCHED = {
  want: {
    subject: { widthMm: 1, heightMm: 1.5, depthMm: 0.4 },
    finestDetailUm: 2,
    minWorkingDistanceMm: 8,
    minCornerIllumination: 0.4,
    maxLengthMm: 400,
  },
  sensor: { widthMm: 23.5, heightMm: 15.6, pixelPitchUm: 3.9 },
};
export const SPACES = [20, 50, 80, 110, 140];

/** A search over parts without glass that considers objectives × relays × five spaces. */
export function search(objectives: number, relays: number, seed = 7_001): Ask {
  const parts = manyParts(Math.max(objectives, relays), seed);
  const from = {
    objectives: parts.objectives.slice(0, objectives).map(({ part }) => part),
    relays: parts.relays.slice(0, relays).map(({ part }) => part),
  };
  return { kind: 'search', path: '/api/choices', body: JSON.stringify({ ...SEARCHED, from, infinitySpacesMm: SPACES }) };
}

/** A search in which `glassed` more relays have glass, each of its own curvature, and sharpness is asked for. */
export function searchWithGlass(objectives: number, relays: number, glassed: number): Ask {
  const plain = JSON.parse(search(objectives, relays).body);
  const glass = Array.from({ length: glassed }, (_, i) => ({
    kind: 'supplementary',
    clearApertureMm: 50,
    glass: { radiiMm: [1000 - i, -54 - i / 7, -91 - i / 3], thicknessesMm: [11, 4], glasses: ['N-BK7', 'N-SF5'] },
  }));
  return {
    kind: 'search',
    path: '/api/choices',
    body: JSON.stringify({
      ...plain,
      want: { ...SEARCHED.want, minCoveredShare: 0.9 },
      from: { ...plain.from, relays: [...plain.from.relays, ...glass] },
    }),
  };
}
