import { describe, expect, it } from 'vitest';
import { type Coverage, evaluate, type Pairing } from '../../../core/index.ts';
import { remedy } from '../../../core/pairing/remedy.ts';
import type { Cut } from '../../../core/pupil/cuts.ts';
import { told } from './told.ts';

type Answers = Parameters<typeof told>[0];
const cut = (clearsAt: Cut['clearsAt']): Cut => ({ stop: 'a ring', path: '/stops/0', onsetRadiusMm: 10, shareOfCornerLoss: 1, clearsAt });
const judged = (bites?: Coverage['bites'], verdict: Coverage['verdict'] = 'crops') =>
  ({ verdict, ...(bites ? { bites } : {}) }) as Coverage;

/** The remedy on a diagonal of 50, with a relay of 200 mm behind 60 mm of infinity space. */
const say = (bites: Coverage['bites'], answers: Answers, cuts: readonly Cut[] = [], more: Parameters<typeof told>[1] = {}) =>
  remedy(told({ relayFocalLengthMm: 200, ...answers }, more), judged(bites), cuts);

describe('what would clear the light', () => {
  const space = (infinitySpaceMm: number) => say('lit', {}, [cut({ infinitySpaceMm })]);
  it('is an infinity space that can be built, rounded to the safe side', () => {
    const by = (mm: string) => `With an infinity space of ${mm} mm instead of 60 they would get all of it.`;
    expect([5, 30.06, 90.01, 400].map(space)).toEqual(['5', '30', '90.1', '400'].map(by));
    expect([4.99, 400.5].map(space)).toEqual(['No single change clears them.', 'No single change clears them.']);
  });
  it('else an opening no wider than f/1', () => {
    const opening = (diameterMm: number) => say('lit', {}, [cut({ diameterMm, infinitySpaceMm: 2 })]);
    expect(opening(23.41)).toBe('An opening of 23.5 mm there would give them all of it.');
    expect(opening(200)).toBe('An opening of 200 mm there would give them all of it.');
    expect(opening(201)).toBe('No single change clears them.');
  });
  it('else a longer relay, else nothing', () => {
    expect(say('lit', { shortestCoveringFocalLengthMm: 300 }, [cut({})])).toBe('A 300 mm relay would cover.');
    expect(say('lit', { shortestCoveringFocalLengthMm: 'none' }, [cut({})])).toBe('No single change clears them.');
    expect(say('lit', {}, [])).toBe('');
  });
  it('is not asked for where all is covered, or nothing bites', () => {
    const evaluation = told({ relayFocalLengthMm: 200 });
    expect(remedy(evaluation, judged('lit', 'covers'), [cut({})])).toBe('');
    expect(remedy(evaluation, judged(undefined, 'undecided'), [cut({})])).toBe('');
    expect(remedy(evaluation, judged(undefined, 'covers'), [cut({})])).toBe('');
    expect(remedy(evaluation, judged('lit', 'undecided'), [cut({})])).toBe('No single change clears them.');
  });
});

describe('a longer relay for the field', () => {
  type Span = Answers['shortestCoveringFocalLengthMm'];
  const by = (shortest: Span, answers: Answers = {}, more: Parameters<typeof told>[1] = {}) =>
    say('corrected', { ...(shortest === undefined ? {} : { shortestCoveringFocalLengthMm: shortest }), ...answers }, [], more);

  it('is as long as it must be, up to a metre', () => {
    expect([by(200.5), by(300), by(1000)]).toEqual([
      'A 201 mm relay would cover.',
      'A 300 mm relay would cover.',
      'A 1000 mm relay would cover.',
    ]);
    expect([by(800), by(85.01)]).toEqual(['An 800 mm relay would cover.', '']);
    expect(by(1001)).toBe('No relay up to 1000 mm would cover.');
    expect(by('none')).toBe('No longer relay alone would cover.');
    expect(by(undefined)).toBe('');
  });
  it('tells also which would surely do, where that is more than a hundredth longer', () => {
    expect(by([300, 280, 320])).toBe('A 300 mm relay would cover, one that measures 320 mm surely.');
    expect(by([300, 280, 303.5])).toBe('A 300 mm relay would cover, one that measures 304 mm surely.');
    expect(by([300, 280, 302.9])).toBe('A 300 mm relay would cover.');
    expect(by([300, 280, 1000])).toBe('A 300 mm relay would cover, one that measures 1000 mm surely.');
    expect([by([300, 280, 1001]), by([300, 280])]).toEqual(['A 300 mm relay would cover.', 'A 300 mm relay would cover.']);
  });
  it('tells that one alone where this relay may be long enough as it is', () => {
    expect(by([200.05, 190, 210])).toBe('One that measures 210 mm would surely cover.');
    expect(by([190, 180, 210])).toBe('One that measures 210 mm would surely cover.');
    expect([by([190, 180, 200.05]), by([190, 180]), by(190)]).toEqual(['', '', '']);
  });
  it('is sure only with light and rating surely beyond the corners, or not known, in focus', () => {
    const surely = ', one that measures 320 mm surely.';
    const wide = [300, 280, 320] as const;
    for (const [answers, sure] of [
      [{ litCircleMm: [60, 50, 70], sharpCircleMm: 50 }, true],
      [{ litCircleMm: [60, 49, 70] }, false],
      [{ sharpCircleMm: [60, 49, 70] }, false],
      [{ litCircleMm: Number.POSITIVE_INFINITY }, true],
    ] as const)
      expect(by(wide, answers).endsWith(surely), JSON.stringify(answers)).toBe(sure);
    expect(by(wide, {}, { pairing: { sensorOffsetMm: 0 } })).toBe('A 300 mm relay would cover.');
  });
  it('says what its rating must be where this one falls short', () => {
    expect(by(300, { sharpCircleMm: 40 })).toBe('A 300 mm relay would cover, if it is rated for 50 mm.');
    expect(by(300, { sharpCircleMm: 50 })).toBe('A 300 mm relay would cover.');
    expect(by(300, { sharpCircleMm: 40 }, { relay: { glass: { class: 'singlet' } } })).toBe(
      'A 300 mm relay would cover, if it is sharp out there.',
    );
  });
});

describe('a relay rated for more', () => {
  const rated = (answers: Answers, relay: object = {}) =>
    say('sharp', { sharpCircleMm: 40, shortestCoveringFocalLengthMm: 300, ...answers }, [], { relay });
  it('helps only where field and light are not known to fall short', () => {
    const better = 'A relay rated for 50 mm would cover.';
    const longer = 'A 300 mm relay would cover, if it is rated for 50 mm.';
    expect([rated({}), rated({ correctedCircleMm: 50, litCircleMm: 50 })]).toEqual([better, better]);
    expect([rated({ correctedCircleMm: 49 }), rated({ litCircleMm: 49 })]).toEqual([longer, longer]);
  });
  it('is not spoken of where the glass is known', () => {
    expect(rated({}, { glass: { class: 'singlet' } })).toContain('Turned round');
  });
});

describe('the relay brought nearer', () => {
  const far: Pairing = {
    objective: { magnification: 10, na: 0.25, referenceFocalLengthMm: 200, fieldNumberMm: 60, exitPupilFromShoulderMm: 0 },
    relay: { kind: 'supplementary', focalLengthMm: 60, clearApertureMm: 12, frontPrincipalPlaneFromRimMm: 0 },
    sensor: { widthMm: 36, heightMm: 24, pixelPitchUm: 4.35 },
    infinitySpaceMm: 200,
  };
  const nearer = (more: Partial<Pairing>) => remedy(evaluate({ ...far, ...more }), judged('lit'), []);
  const helps = /^With an infinity space of 20 mm instead of [\d.]+ they would get [1-9]\d* %\.$/;
  const ring = (stop: object) => nearer({ stops: [{ diameterMm: 60, ...stop }] });

  it('helps where it stands far away, and no ring is in its way', () => {
    expect(nearer({})).toMatch(helps);
    expect(nearer({ infinitySpaceMm: 60 })).toMatch(helps);
    expect(ring({ fromShoulderMm: 20 })).toMatch(helps);
    expect(ring({ fromSensorMm: 30 })).toMatch(helps);
    expect(ring({ fromShoulderMm: 21 })).not.toMatch(helps);
    expect(
      nearer({
        stops: [
          { diameterMm: 60, fromShoulderMm: 10 },
          { diameterMm: 60, fromShoulderMm: 21 },
        ],
      }),
    ).not.toMatch(helps);
  });
  it('is not worth it for a tenth of the light', () => {
    expect(nearer({ infinitySpaceMm: 20 })).not.toMatch(helps);
    expect(nearer({ infinitySpaceMm: 21 })).not.toMatch(helps);
  });
});
