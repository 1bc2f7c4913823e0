import { describe, expect, it } from 'vitest';
import { evaluate, gap, numberIn, report, thinLens, train } from '../../../core/index.ts';
import { lensOfRelay } from '../../../core/lens/relay-lens.ts';
import { cardinal } from '../../../core/trace/cardinal.ts';
import { prescription } from '../../../core/trace/prescription.ts';
import { random } from '../../support/random.ts';
import { pairingWith, works } from '../lens/rigs.ts';
import { fullPairing } from '../support/full-pairing.ts';

describe('the rig on the bench', () => {
  it('stands where two thin lenses image the subject onto the sensor, the pupil in the back focal plane of the first', () => {
    const r = random(62_001);
    let off = 0;
    for (let i = 0; i < 60; i++) {
      const pairing = { ...fullPairing(r), sensorOffsetMm: r.between(-3, 6), stops: [] };
      const { objective, relay, sensorOffsetMm: s } = pairing;
      const { figures } = report({ ...pairing, subject: { index: 1 } });
      const of = (id: keyof typeof figures): number => numberIn(figures[id]) as number;
      const value = (q: unknown): number => (typeof q === 'number' ? q : (q as { value: number }).value);
      const [fo, f] = [of('objectiveFocalLengthMm'), of('relayFocalLengthMm')];
      const z = value(pairing.infinitySpaceMm) - value(objective.exitPupilFromShoulderMm) + value(relay.frontPrincipalPlaneFromRimMm);
      // What lies behind the subject's free space; the space x before it must make the upper right element 0.
      const rest = train(thinLens(fo), gap(fo + z), thinLens(f), gap(f + s));
      const x = -rest.b / rest.a;
      const nearer = fo - x;
      if (Math.abs(nearer) > 1e-4) off++;
      const free = value(objective.workingDistanceMm) - nearer;
      expect(of('clearWorkingDistanceMm')).toBeCloseTo(Math.max(0, free), 8);
    }
    expect(off).toBeGreaterThan(30);
  });

  it('is as long as its glass is thick, and to its focus', () => {
    const pairing = pairingWith();
    const { lens } = lensOfRelay(pairing.relay);
    if (!lens) throw new Error('no lens');
    const length = numberIn(evaluate(pairing, works).answers.totalLengthMm);
    expect(length).toBeCloseTo(85 + 15 + cardinal(prescription(lens, 587.5618)).backFocalLengthMm, 9);
  });

  it('tells of a camera lens of unknown length a wide guess, that a measurement ends, and moves no other figure by it', () => {
    const lens = { kind: 'camera-lens', focalLengthMm: 200, fNumber: 4 } as const;
    const { objective, sensor, infinitySpaceMm } = pairingWith();
    const at = (more: object) => report({ objective, sensor, infinitySpaceMm, relay: { ...lens, ...more } });
    const guessed = at({});
    const measured = at({ rimToSensorMm: { value: 210, plusMinus: 2, origin: 'measured' } });
    expect(guessed.figures.totalLengthMm).toMatchObject({ value: 85 + 220, origin: 'assumed' });
    expect(numberIn(measured.figures.totalLengthMm)).toBe(295);
    expect(measured.figures.totalLengthMm).toMatchObject({ low: 293, high: 297, origin: 'marked' });
    for (const { path, matters } of guessed.assumptions) if (path === '/relay/rimToSensorMm') expect(matters).toBe(0);
    const { totalLengthMm: _, ...rest } = guessed.figures;
    const { totalLengthMm: __, ...other } = measured.figures;
    expect(rest).toEqual(other);
  });
});
