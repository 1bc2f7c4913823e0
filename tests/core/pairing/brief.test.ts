import { expect, it } from 'vitest';
import { briefOf, evaluate, type Pairing, PairingError, reportOf } from '../../../core/index.ts';
import { randomPairing } from '../../support/pairings.ts';
import { random } from '../../support/random.ts';
import { fullPairing } from '../support/full-pairing.ts';

/** The answer in one line, its numbers worked out here by plain arithmetic. */
const base: Pairing = {
  objective: { magnification: 10, na: 0.25, referenceFocalLengthMm: 200, fieldNumberMm: 22, exitPupilFromShoulderMm: 0 },
  relay: { kind: 'supplementary', focalLengthMm: 200, clearApertureMm: 54, frontPrincipalPlaneFromRimMm: 0 },
  sensor: { widthMm: 36, heightMm: 24, pixelPitchUm: 4.35 },
  infinitySpaceMm: 60,
};
function brief(pairing: Pairing): string {
  const evaluation = evaluate(pairing);
  return briefOf(evaluation, reportOf(evaluation).coverage);
}
const say = (objective: object, relay: object = {}, more: object = {}): string =>
  brief({ ...base, objective: { ...base.objective, ...objective }, relay: { ...base.relay, ...relay }, ...more });

const diagonal = Math.hypot(36, 24);
const two = (x: number) => String(Number(x.toPrecision(2)));
const three = (x: number) => String(Number(x.toPrecision(3)));
const crop = (d: number) => `${three((36 * d) / diagonal)} × ${three((24 * d) / diagonal)} of 36 × 24 mm`;
const doubtful = (value: number, plusMinus: number) => ({ value, plusMinus, origin: 'assumed' });

it('covers: with the margin of the nearest circle', () => {
  expect(say({ fieldNumberMm: 47 })).toBe(`10×: covers, ${two((47 - diagonal) / 2)} mm to spare`);
  expect(say({ fieldNumberMm: 47 }, { imageCircleMm: 44 })).toBe(`10×: covers, ${two((44 - diagonal) / 2)} mm to spare`);
});
it('crops: what is kept of the sensor', () => {
  expect(say({})).toBe(`10×: keep ${crop(22)}`);
  expect(say({ fieldNumberMm: 60 }, { imageCircleMm: 30 })).toBe(`10×: keep ${crop(30)}`);
  expect(say({ fieldNumberMm: 60 }, { clearApertureMm: 14 }, { infinitySpaceMm: 90 })).toMatch(/^10×: keep [\d.]+ × [\d.]+ of 36 × 24 mm$/);
});
it('covers, but not a subject that is larger than the picture', () => {
  expect(say({ fieldNumberMm: 47 }, {}, { subject: { widthMm: 5, heightMm: 3 } })).toBe('10×: covers, subject larger than the picture');
});
it('misses: by how much', () => {
  expect(say({ fieldNumberMm: 12 })).toBe(`10×: misses, the field ends ${three((diagonal - 12) / 2)} mm short`);
  expect(say({ fieldNumberMm: 60 }, { imageCircleMm: 12 })).toBe(`10×: misses, sharpness ends ${three((diagonal - 12) / 2)} mm short`);
  expect(say({ fieldNumberMm: 60 }, { clearApertureMm: 11 }, { infinitySpaceMm: 400 })).toBe('10×: misses, corners get no light');
});
it('is open: on what it hangs, or what is not known', () => {
  expect(say({ fieldNumberMm: 60, exitPupilFromShoulderMm: doubtful(0, 30) }, { clearApertureMm: 20 }, { infinitySpaceMm: 90 })).toBe(
    '10×: undecided, hangs on the exit pupil',
  );
  expect(say({ fieldNumberMm: doubtful(44, 2) })).toBe('10×: undecided, hangs on the field number');
  expect(say({ fieldNumberMm: 60 }, { imageCircleMm: doubtful(44, 2) })).toBe('10×: undecided, hangs on the rated circle');
  const { fieldNumberMm: _, ...unrated } = base.objective;
  expect(brief({ ...base, objective: unrated })).toBe('10×: undecided, the field is not known');
});

it('stays short and finite over whatever people pair', () => {
  const draw = random(90_411);
  const seen = new Map<string, number>();
  for (let i = 0; i < 120; i++) {
    const pairing = i % 2 ? randomPairing(draw) : fullPairing(draw);
    let evaluation: ReturnType<typeof evaluate>;
    try {
      evaluation = evaluate(pairing);
    } catch (error) {
      if (error instanceof PairingError) continue;
      throw error;
    }
    const { coverage } = reportOf(evaluation);
    const said = briefOf(evaluation, coverage);
    expect(said).not.toMatch(/NaN|undefined|Infinity|null|a guess/);
    expect(said.length, said).toBeLessThanOrEqual(46);
    const kind = `${coverage.verdict} ${coverage.bites}`;
    seen.set(kind, (seen.get(kind) ?? 0) + 1);
  }
  for (const kind of ['crops corrected', 'crops lit', 'misses lit', 'undecided corrected', 'undecided lit', 'covers undefined'])
    expect(seen.get(kind) ?? 0, kind).toBeGreaterThan(0);
});
