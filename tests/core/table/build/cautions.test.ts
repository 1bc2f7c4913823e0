import { expect, it } from 'vitest';
import { buildCautions } from '../../../../core/table/build/cautions.ts';
import type { TableEvaluation } from '../../../../core/table/evaluate.ts';

const NO_TUBE = { state: 'none', unit: 'mm', why: '' };
const tube = (value: number) => ({ state: 'known', unit: 'mm', value, origin: 'marked' });
const said = (kind: string, tubeLengthMm: object, workingDistanceMm?: number): string =>
  buildCautions({
    pairing: { relay: { kind }, objective: { workingDistanceMm } },
    answers: { tubeLengthMm },
  } as unknown as TableEvaluation).join(' ');

it('asks for a support under camera lenses, and under tubes of more than 120 mm', () => {
  expect(said('camera-lens', NO_TUBE)).toMatch(/carry the rig under the relay/);
  expect(said('camera-lens', tube(30))).toMatch(/carry the rig/);
  expect(said('supplementary', tube(120.5))).toMatch(/carry the rig/);
  expect(said('supplementary', tube(120))).not.toMatch(/carry/);
  expect(said('supplementary', NO_TUBE)).not.toMatch(/carry/);
});

it('minds the subject where the nose stands within 5 mm of it', () => {
  expect(said('tube-lens', NO_TUBE, 4.9)).toMatch(/within 5 mm of the subject/);
  expect(said('tube-lens', NO_TUBE, 5)).not.toMatch(/subject/);
  expect(said('tube-lens', NO_TUBE)).not.toMatch(/subject/);
});

it('always warns of a thread that binds', () => expect(said('tube-lens', NO_TUBE)).toMatch(/^Never force a thread that binds/));
