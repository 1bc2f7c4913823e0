import fc from 'fast-check';
import { afterAll, beforeAll, describe, expect, it, vi } from 'vitest';
import { evaluate, type Pairing, pairingSchema } from '../../core/index.ts';
import { movablesOf } from '../../web/plates/movables.ts';
import { sceneOf } from '../../web/plates/path-geometry.ts';
import { extent, scaleFor, spaceAt } from '../../web/plates/path-scale.ts';
import { answered, draft, take } from '../../web/state/draft.ts';
import { fieldPoint } from '../../web/state/field-point.ts';
import { OPENING } from './support.ts';

/** What can be moved on the light path, without a browser. */

// Where another test has begun the sweep of other relays, it waits for a screen.
beforeAll(() => {
  vi.stubGlobal('requestAnimationFrame', () => 0);
  vi.stubGlobal('cancelAnimationFrame', () => undefined);
});
afterAll(() => vi.unstubAllGlobals());

const RUNS = Number(process.env.RUNS ?? 25);

const LENS: Pairing = pairingSchema.parse({
  ...OPENING,
  relay: { kind: 'camera-lens', focalLengthMm: 200, fNumber: 4, femaleThread: '67 x 0.75' },
  stops: [
    { label: 'an iris', diameterMm: 18, fromShoulderMm: 25 },
    { diameterMm: 40, fromSensorMm: 60 },
  ],
});

const movablesFor = (pairing: Pairing) => {
  take(pairing);
  fieldPoint.value = 1;
  const evaluation = answered.peek();
  return movablesOf(evaluation, sceneOf(evaluation));
};

describe('what can be moved', () => {
  it('has a handle for the relay, its focal length and opening, the pupil, each ring, the aperture and the field point', () => {
    expect(movablesFor(OPENING).flatMap((m) => (m.at ? [m.name] : []))).toEqual(['pupil', 'relay', 'rim', 'focal', 'field']);
    expect(movablesFor(LENS).flatMap((m) => (m.at ? [m.name] : []))).toEqual([
      'pupil',
      'ring-0',
      'opening-0',
      'ring-1',
      'opening-1',
      'relay',
      'rim',
      'iris',
      'focal',
      'field',
    ]);
  });

  it('puts each handle where its value is', () => {
    for (const pairing of [OPENING, LENS])
      for (const movable of movablesFor(pairing)) {
        if (!movable.at) continue;
        const place = movable.along === 'axis' ? movable.at.z : movable.at.y;
        expect(movable.valueAt(place), movable.name).toBeCloseTo(movable.value, 9);
        expect(movable.value, movable.name).toBeGreaterThanOrEqual(movable.least);
        expect(movable.value, movable.name).toBeLessThanOrEqual(movable.greatest);
      }
  });

  it('sets its own input and nothing else, and keeps the ± and the origin of it', () => {
    for (const pairing of [OPENING, LENS])
      for (const { name } of movablesFor(pairing)) {
        const movable = movablesFor(pairing).find((m) => m.name === name);
        if (!movable || name === 'field') continue;
        const to = movable.value + (movable.value + 1 <= movable.greatest ? 1 : -1);
        movable.set(to);
        const after = movablesOf(answered.peek(), sceneOf(answered.peek())).find((m) => m.name === name);
        expect(after?.value, name).toBeCloseTo(to, 2);
        const key = movable.path.split('/')[1] as keyof Pairing;
        for (const other of Object.keys(pairing) as (keyof Pairing)[])
          if (other !== key) expect((draft.peek() as Pairing)[other], name).toEqual(pairing[other]);
      }
    movablesFor(OPENING)
      .find((m) => m.name === 'rim')
      ?.set(40);
    expect((draft.peek() as Pairing).relay.clearApertureMm).toEqual({ value: 40, plusMinus: 2, origin: 'assumed' });
    expect((draft.peek() as Pairing).relay.powerDioptre).toBe(5);
  });

  it('leaves a guess that is moved a guess, and a power a power', () => {
    movablesFor(OPENING)
      .find((m) => m.name === 'pupil')
      ?.set(-12);
    const { exitPupilFromShoulderMm } = (draft.peek() as Pairing).objective;
    expect(exitPupilFromShoulderMm).toMatchObject({ value: -12, origin: 'assumed' });
    movablesFor(OPENING)
      .find((m) => m.name === 'focal')
      ?.set(231);
    const { powerDioptre, focalLengthMm } = (draft.peek() as Pairing).relay;
    expect(1000 / (powerDioptre as number)).toBeCloseTo(231, 1);
    expect(focalLengthMm).toBeUndefined();
  });

  it('stops at what cannot be: no draft without an answer', () => {
    const relay = movablesFor(LENS).find((m) => m.name === 'relay');
    expect(relay?.least).toBe(25);
    relay?.set(10);
    expect((draft.peek() as Pairing).infinitySpaceMm).toBe(LENS.infinitySpaceMm);
    take(OPENING);
  });
});

describe('the relay under the hand', () => {
  it('stands where the hand is, however the whole drawing shrinks', () => {
    fc.assert(
      fc.property(
        fc.double({ min: 5, max: 200, noNaN: true }),
        fc.double({ min: 5, max: 300, noNaN: true }),
        fc.constantFrom(390, 700, 1280, 1900),
        (from, to, width) => {
          const scene = sceneOf(evaluate({ ...OPENING, infinitySpaceMm: from }));
          const there = sceneOf(evaluate({ ...OPENING, infinitySpaceMm: to }));
          const x = scaleFor(there, width).x(there.rim);
          expect(spaceAt(x, scene, width)).toBeCloseTo(to, 6);
          const [first, last] = extent(there, width);
          expect(first).toBeLessThanOrEqual(there.subject);
          expect(last).toBeGreaterThan(there.sensor);
        },
      ),
      { numRuns: RUNS, seed: 31 },
    );
  });
});
