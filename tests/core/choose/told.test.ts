import { describe, expect, it } from 'vitest';
import { verifyOnArrival } from '../../../core/choose/buying.ts';
import { coverGlassCaution } from '../../../core/choose/cover-glass.ts';
import { rankable, unknownCircles } from '../../../core/choose/covering.ts';
import { cautionsFor } from '../../../core/choose/told.ts';
import { type Answer, evaluate, type Objective, type Pairing } from '../../../core/index.ts';
import { asking, TEN, TWENTY, tube } from './small.ts';

const pairing = (objective: Objective, more: Partial<Pairing> = {}): Pairing => ({
  objective,
  relay: tube(200),
  sensor: { widthMm: 24, heightMm: 16, pixelPitchUm: 4 },
  infinitySpaceMm: 60,
  ...more,
});
const cautions = (objective: Objective, coverGlassMm?: number, more?: Partial<Pairing>): string[] =>
  cautionsFor(asking([], [], { want: coverGlassMm === undefined ? {} : { coverGlassMm } }), evaluate(pairing(objective, more)));
const slide: Objective = { ...TWENTY, coverGlassMm: 0.17 };

describe('what is told besides of a pairing', () => {
  it('is the general word on cover glass where none is told, and what it does where one is', () => {
    expect(cautions(slide)).toEqual([expect.stringMatching(/^Engraved for a cover glass of 0\.17 mm/)]);
    expect(cautions(slide, 0.17)).toEqual([]);
    expect(cautions(slide, 0)).toEqual([]);
    // Ten times the slip is ten times the error.
    expect(cautions(slide, 1.87)).toEqual([
      expect.stringMatching(/^Made for a cover glass of 0\.17 mm and used with 1\.87 mm: [\d.]+ waves/),
    ]);
    expect(cautions(TEN, 0)).toEqual([]);
  });

  it('is a working distance that is not known', () => {
    const { workingDistanceMm: _, ...bare } = TEN;
    expect(cautions(bare)).toEqual(['Its working distance is not known.']);
  });

  it('is all else that a pairing cautions of', () => {
    expect(cautions({ ...slide, flatField: false }, 0.17)).toEqual([expect.stringContaining('field is curved')]);
  });

  it('is in waves of the light that is used', () => {
    const waves = (more?: Partial<Pairing>): number => Number(cautions(slide, 1.87, more)[0]?.match(/: ([\d.]+) waves/)?.[1]);
    expect(waves({ wavelengthNm: 440 }) / waves({ wavelengthNm: 550 })).toBeCloseTo(550 / 440, 1);
    expect(waves()).toBe(waves({ wavelengthNm: 550 }));
  });
});

describe('the caution of a cover glass', () => {
  const dry: Objective = { magnification: 40, na: 0.65, referenceFocalLengthMm: 200 };
  it('is none where nobody says what the objective is made for', () => {
    expect(coverGlassCaution(dry, 1, 550)).toBeUndefined();
    expect(coverGlassCaution({ ...dry, coverGlassMm: 0.17 }, undefined, 550)).toBeUndefined();
  });
  it('says what it is made for and what it is used with', () => {
    expect(coverGlassCaution({ ...dry, coverGlassMm: 0.17 }, 0, 550)).toMatch(/^Made for a cover glass of 0\.17 mm and used without one: /);
    expect(coverGlassCaution({ ...dry, coverGlassMm: 0.17 }, 1, 550)).toMatch(/^Made for a cover glass of 0\.17 mm and used with 1 mm: /);
    expect(coverGlassCaution({ ...dry, coverGlassMm: 0 }, 0.17, 550)).toMatch(/^Made for no cover glass and used with 0\.17 mm: /);
  });
});

describe('the circles that are not known', () => {
  it('are those without a number, one without limit is known', () => {
    const known: Answer = { state: 'known', value: 30, unit: 'mm', origin: 'marked' };
    const endless: Answer = { state: 'unlimited', unit: 'mm' };
    const unknown: Answer = { state: 'unknown', unit: 'mm', missing: ['/relay/clearApertureMm'] };
    const none: Answer = { state: 'none', unit: 'mm', why: 'there is none' };
    expect(unknownCircles({ correctedCircleMm: known, litCircleMm: endless, sharpCircleMm: known })).toEqual([]);
    expect(unknownCircles({ correctedCircleMm: none, litCircleMm: unknown, sharpCircleMm: known })).toEqual(['corrected', 'lit']);
    expect(unknownCircles({ litCircleMm: known })).toEqual(['corrected', 'sharp']);
    // The sharp one need not be known to rank.
    const answers = { goodFieldMm: known, correctedCircleMm: known, litCircleMm: known, sharpCircleMm: unknown };
    expect(rankable(answers, 'goodFieldMm')).toBe(known);
    expect(rankable({ ...answers, litCircleMm: unknown }, 'goodFieldMm')).toEqual({
      state: 'unknown',
      unit: 'mm',
      missing: ['/relay/clearApertureMm'],
    });
  });
});

it('says what to look at when a part arrives, for each kind of part its own', () => {
  const lists = [
    TEN,
    tube(200),
    { kind: 'camera-lens', focalLengthMm: 200 } as const,
    { kind: 'supplementary', powerDioptre: 5 } as const,
  ].map(verifyOnArrival);
  expect(lists.map((list) => list.some((text) => text.includes('engraving')))).toEqual([true, false, false, false]);
  expect(lists.map((list) => list.some((text) => text.includes('true power')))).toEqual([false, false, false, true]);
  expect(lists.map((list) => list.some((text) => text.includes('reaches infinity')))).toEqual([false, false, true, false]);
  expect(lists.map((list) => list.some((text) => text.includes('Which side faces')))).toEqual([false, true, false, false]);
});
