import fc from 'fast-check';
import type { Piece } from '../../../../core/table/threads/adapter.ts';
import { C_MOUNT, M25, M26, M42, M42_FINE, RMS } from '../../../../core/table/threads/known.ts';
import type { End, Thread } from '../../../../core/table/threads/thread.ts';

/** Few threads, near-equal ones among them, so that chains are found and false ones would be too. */
const THREADS: readonly Thread[] = [
  RMS,
  M25,
  M26,
  { label: 'M26 x 0.75', diameterMm: 26, pitchMm: 0.75, angleDeg: 60 },
  { label: 'M26 x 0.7056, 60°', diameterMm: 26, pitchMm: 25.4 / 36, angleDeg: 60 },
  C_MOUNT,
  M42,
  M42_FINE,
];

const anyThread = fc.constantFrom(...THREADS);
export const anyEnd: fc.Arbitrary<End> = fc.record({ thread: anyThread, sex: fc.constantFrom('male', 'female') });

/** Rings of whole tenths, so that equal lengths are common. */
export const anyRing: fc.Arbitrary<Piece> = fc
  .record({ a: anyEnd, b: anyEnd, tenths: fc.integer({ min: 10, max: 40 }), clear: fc.integer({ min: 10, max: 40 }), owned: fc.boolean() })
  .map(({ a, b, tenths, clear, owned }) => ({
    name: 'ring',
    ends: [a, b] as const,
    lengthMm: tenths / 10,
    lengthKnown: true,
    clearMm: clear,
    clearKnown: true,
    owned,
  }));
