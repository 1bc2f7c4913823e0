import { expect, it } from 'vitest';
import type { Check, Value } from '../../../../core/checked/check.ts';
import { DOUBLETS } from '../../../../core/checked/lenses/doublets.ts';
import { THREADS } from '../../../../core/checked/rows/threads.ts';

const numberOf = (checks: readonly Check[], id: string, what?: string): Value =>
  checks.find((check) => check.id === id)?.values.find((value) => value.what === what) as Value;

it.each(['301', '302', '303', '304', '305', '306', '307', '308'])(
  'the tube behind doublet %s and the register are its back focus, and radii move both',
  (n) => {
    const [tube, focus] = [numberOf(THREADS, `TUBE-${n}`), numberOf(DOUBLETS, `RAY-${n}`, 'f_b')];
    expect(tube.of()).toBeCloseTo(focus.of(), 9);
    expect(tube.slack?.of()).toBeCloseTo(focus.slack?.of() as number, 9);
    expect(tube.rig?.().pairing.sensor.registerMm).toBe(17.526);
  },
);

it('threads by their names: inches of 25.4 mm, 36 and 32 turns to one of them, minor diameters by the depth of their profile', () => {
  for (const name of ['RMS', 'W 0.8" x 1/36"', '20.32 x 0.706']) {
    expect(numberOf(THREADS, 'STD-003', `${name}: major diameter`).of(), name).toBeCloseTo(0.8 * 25.4, 9);
    expect(numberOf(THREADS, 'STD-003', `${name}: pitch`).of(), name).toBeCloseTo(25.4 / 36, 3);
  }
  expect(numberOf(THREADS, 'THR-001', '1-32 UN 2A: pitch').of()).toBeCloseTo(25.4 / 32, 9);
  expect(numberOf(THREADS, 'THR-002', 'M48 x 2').of()).toBeCloseTo(48 - 2 * 1.0825318, 6);
  expect(numberOf(THREADS, 'THR-003').of()).toBeCloseTo(25.4 * (0.8 - 1.280654 / 36), 5);
});
