import { expect, it } from 'vitest';
import { amount, numberIn, PairingError } from '../../../../core/index.ts';
import { evaluateTable, planOf } from '../../../../core/table.ts';
import { random } from '../../../support/random.ts';
import { fullPairing } from '../../support/full-pairing.ts';

/** A wrong tube, and the sensor put there on purpose, are one place: rings far from the pupil cut another aperture there. */

const PLAN = planOf('infinity');

it('tells of a wrong tube what it tells of a sensor that stands there', () => {
  const draw = random(83_001);
  let [checked, moved] = [0, 0];
  for (let i = 0; i < 120; i++) {
    const pairing = fullPairing(draw);
    const tubeErrorMm = draw.between(-60, 60);
    const there = { ...pairing, sensorOffsetMm: amount(pairing.sensorOffsetMm ?? 0) + tubeErrorMm };
    try {
      const wrong = evaluateTable(pairing, { tubeErrorMm }, undefined, PLAN).answers;
      const meant = evaluateTable(there, { tubeErrorMm: 0 }, undefined, PLAN).answers;
      for (const id of ['tubeStrehl', 'tubeWavesRms', 'tubeMagnification'] as const) {
        const [a, b] = [numberIn(wrong[id]), numberIn(meant[id])];
        expect(a === undefined, id).toBe(b === undefined);
        if (a === undefined || b === undefined) continue;
        expect(Math.abs(a - b), `${id}: ${a} and ${b}`).toBeLessThanOrEqual(1e-9 * Math.max(1, Math.abs(b)));
        checked++;
        if (id === 'tubeStrehl' && b < 0.999) moved++;
      }
    } catch (error) {
      // So far off some rigs have no picture, and are refused.
      if (!(error instanceof PairingError)) throw error;
    }
  }
  expect(checked).toBeGreaterThan(180);
  expect(moved).toBeGreaterThan(12);
}, 60_000);

it('finds the end of sharpness with the aperture that is there, and never farther than the relay is followed', () => {
  const ring = { label: 'ring', diameterMm: 7, fromShoulderMm: 100 };
  const rig = (stops: object[]) => ({
    objective: { magnification: 20, na: 0.5, referenceFocalLengthMm: 200, exitPupilFromShoulderMm: -20 },
    relay: { kind: 'tube-lens' as const, focalLengthMm: 200, clearApertureMm: 60, frontPrincipalPlaneFromRimMm: 0 },
    sensor: { widthMm: 23.5, heightMm: 15.6, pixelPitchUm: 3.9 },
    infinitySpaceMm: 110,
    stops: stops as never,
  });
  const { sharpShorterMm } = evaluateTable(rig([ring]), {}, undefined, PLAN).answers;
  const end = numberIn(sharpShorterMm) ?? 0;
  const at = (sensorOffsetMm: number) =>
    numberIn(evaluateTable({ ...rig([ring]), sensorOffsetMm }, { tubeErrorMm: 0 }, undefined, PLAN).answers.tubeStrehl) ?? 0;
  expect(at(-0.99 * end)).toBeGreaterThan(0.8);
  expect(at(-1.01 * end)).toBeLessThan(0.8);
  // A relay one focal length behind the pupil: nothing of the size changes, and a weak beam stays sharp as far as it is followed.
  const weak = { ...rig([]), objective: { ...rig([]).objective, na: 0.05 }, infinitySpaceMm: 180 };
  const { sharpLongerMm, tubeToleranceMm } = evaluateTable(weak, {}, undefined, PLAN).answers;
  expect(numberIn(sharpLongerMm)).toBe(200);
  expect(numberIn(tubeToleranceMm)).toBeLessThanOrEqual(200);
});
