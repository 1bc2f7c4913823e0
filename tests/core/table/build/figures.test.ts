import { expect, it } from 'vitest';
import { Gap } from '../../../../core/figure.ts';
import { FIGURES } from '../../../../core/table/build/figures.ts';
import { ofNeeds } from '../support.ts';

/** Lengths in a row on one rig: sensor 18 mm behind the flange and 1.5 mm behind the focus, relay, space and objective before it. */

type Id = (typeof FIGURES)[number]['id'];
const of = (id: Id, ...values: readonly unknown[]) => ofNeeds(FIGURES.find((one) => one.id === id) as (typeof FIGURES)[number], ...values);
const GAP = Gap.unknown('/relay/focalLengthMm');

it('the focus lies behind the seat by the back focal length, or by what the rim and the mount leave', () => {
  expect(of('focusBehindRelayMm', 'supplementary', 182, 3, GAP, 15)).toBe(179);
  expect(of('focusBehindRelayMm', 'supplementary', GAP, 3, 200, 15)).toBe(185);
  expect(of('focusBehindRelayMm', 'supplementary', GAP, 3, GAP, 15)).toBe(GAP);
  expect(of('focusBehindRelayMm', 'camera-lens', 182, 3, 200, 15)).toMatchObject({ state: 'none' });
});

it('the tube ends at the flange, of no length where the relay sits on it, and is none where it would end before', () => {
  expect(of('tubeLengthMm', 179, 1.5, 18)).toBe(162.5);
  expect(of('tubeLengthMm', 179, -1.5, 18)).toBe(159.5);
  expect(of('tubeLengthMm', 16.5, 1.5, 18)).toBe(0);
  expect(of('tubeLengthMm', 16.25, 1.5, 18)).toMatchObject({ state: 'none', why: expect.stringMatching(/register is too long/) });
  expect(of('builtTooLongMm', 160, 162.5)).toBe(-2.5);
});

it('rim, shoulder and subject follow from the flange on', () => {
  expect(of('rimFromFlangeMm', 194, 1.5, 18)).toBe(177.5);
  expect(of('shoulderFromFlangeMm', 177.5, 60)).toBe(237.5);
  expect(of('subjectFromFlangeMm', 237.5, 45, 0.25)).toBe(282.25);
  expect(of('subjectToSensorMm', 255.5, 45, 0.25)).toBe(300.25);
});

it('the barrel is what the working distance leaves of the parfocal distance, if anything', () => {
  expect(of('barrelLengthMm', 45, 10.6)).toBeCloseTo(34.4, 12);
  expect(of('barrelLengthMm', 45, 45)).toBe(0);
  expect(of('barrelLengthMm', 45, 45.1)).toMatchObject({ state: 'none' });
});
