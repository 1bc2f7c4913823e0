import { expect, it } from 'vitest';
import { ENDS, holdsOf, LIMIT_NAMES, LIMIT_WORDS, limitsOf, wantSchema } from '../../../core/choosing.ts';
import { WISH } from './wish.ts';

it('says of each limit what holds where it is met, with its number and unit', () => {
  expect(limitsOf(wantSchema.parse(WISH)).map(holdsOf)).toEqual([
    'the subject fits',
    'the subject fills 50 % of the frame',
    'the subject is covered to its corners',
    'the field is at least 1 mm wide',
    'the field is at most 3 mm wide',
    '5× is reached',
    '12× is not passed',
    'detail of 2 µm is recorded',
    '10 mm stay free before the objective',
    'a diffuser 12 mm deep goes in',
    'light has 30° of room',
    'the corners keep 50 % of the light',
    'the pixels are fine enough',
    'the pixels are no finer than you want',
    'the rig stays within 400 mm',
  ]);
  expect(limitsOf({ minCoveredShare: 0.9 }).map(holdsOf)).toEqual(['90 % of the frame is covered']);
});

it('has a name of its own for each limit, and a clause of its own for each that is not met', () => {
  const words = LIMIT_NAMES.map((name) => LIMIT_WORDS[name]);
  expect(new Set(words.map((w) => w.short)).size).toBe(LIMIT_NAMES.length);
  const clauses = [...words.map((w) => w.fails), ...Object.values(ENDS)];
  expect(new Set(clauses).size).toBe(LIMIT_NAMES.length + 3);
  for (const clause of clauses) expect(clause).toMatch(/^(the|your|too) [^.]+[^. ]$/);
});
