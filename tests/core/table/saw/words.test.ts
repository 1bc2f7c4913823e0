import { describe, expect, test } from 'vitest';
import type { Finding, Unsolved } from '../../../../core/table/saw/findings.ts';
import type { Sighting } from '../../../../core/table/saw/sightings.ts';
import { findingInWords, inconsistentInWords, seenInWords, unsolvedInWords } from '../../../../core/table/saw/words.ts';

const finding = (over: Partial<Finding>): Finding => ({
  path: '/relay/focalLengthMm',
  value: 203.46,
  low: 202.46,
  high: 204.46,
  plusMinus: 1,
  cut: false,
  beyond: false,
  from: [0],
  restsOn: [],
  asTheyStand: [],
  also: [],
  ...over,
});
const NAMED = '/objective/magnification';
const PUPIL = '/objective/exitPupilFromShoulderMm';

describe('a finding in words', () => {
  test('names what was found, with the digits that it earns and its ± to the same place', () => {
    // ± 1 earns a tenth; ± 0.25 hundredths; ± 25 the whole mm, at most five digits.
    expect(findingInWords(finding({}))).toBe("The relay's true focal length is 203.5 ± 1.0 mm.");
    expect(findingInWords(finding({ plusMinus: 0.25 }))).toBe("The relay's true focal length is 203.46 ± 0.25 mm.");
    expect(findingInWords(finding({ plusMinus: 25 }))).toBe("The relay's true focal length is 203 ± 25 mm.");
    // Five digits at most: a ± below the last of them is told by its own two digits.
    expect(findingInWords(finding({ value: 203.4567, plusMinus: 0.00128 }))).toBe("The relay's true focal length is 203.46 ± 0.0013 mm.");
  });

  test('an engraving that stands bare is a condition, of the relay only', () => {
    const stands = { asTheyStand: ['/sensor/widthMm', NAMED] };
    expect(findingInWords(finding(stands))).toBe(
      "The relay's true focal length is 203.5 ± 1.0 mm, the objective's engraving taken as it stands: a magnification alone does not tell the two apart.",
    );
    expect(findingInWords(finding({ asTheyStand: ['/sensor/widthMm'] }))).not.toContain('as it stands');
    expect(findingInWords(finding({ ...stands, path: PUPIL }))).not.toContain('as it stands');
    expect(findingInWords(finding({ path: NAMED, value: 10.17, plusMinus: 0.05 }))).toBe(
      "The objective's true magnification is 10.17 ± 0.05, the relay taken as it is known: a magnification alone does not tell the two apart.",
    );
  });

  test('an exit pupil is told by the side of the shoulder that it is on', () => {
    expect(findingInWords(finding({ path: PUPIL, value: -20.4, plusMinus: 3.1 }))).toBe(
      "The exit pupil sits 20.4 ± 3.1 mm from the objective's shoulder, inside the objective.",
    );
    for (const value of [20.4, 0.5]) expect(findingInWords(finding({ path: PUPIL, value, plusMinus: 3.1 }))).toContain('toward the relay.');
    expect(findingInWords(finding({ path: PUPIL, value: 0, plusMinus: 3 }))).toContain('toward the relay.');
  });

  test('openings have their own names', () => {
    expect(findingInWords(finding({ path: '/relay/clearApertureMm', value: 15.2, plusMinus: 0.21 }))).toBe(
      "The relay's clear opening is 15.2 ± 0.2 mm.",
    );
    const ring = findingInWords(finding({ path: '/stops/0/diameterMm', value: 13.71, plusMinus: 0.25 }));
    expect(ring).toMatch(/^[A-Z].* is 13\.71 ± 0\.25 mm\.$/);
    expect(ring).not.toContain("relay's clear opening");
  });

  test('the greatest share of the doubt is named where it is half or more', () => {
    const rests = (share: number): string =>
      findingInWords(
        finding({
          restsOn: [
            { path: '/sensor/widthMm', share },
            { path: NAMED, share: 0.01 },
          ],
        }),
      );
    expect(rests(0.5)).toMatch(/ 50 % of the doubt is in .*\.$/);
    expect(rests(0.504)).toMatch(/ 50 % of the doubt is in .*\.$/);
    expect(rests(0.499)).not.toContain('of the doubt');
  });

  test('what else would show the same, an end that is the guess, what lies outside it, what stood as exact: each only where it is so', () => {
    expect(
      findingInWords(
        finding({
          also: [
            { value: 51, low: 50, high: 52 },
            { value: 71, low: 70, high: 72 },
          ],
        }),
      ),
    ).toContain(' 50 to 52, or 70 to 72 would show the same.');
    expect(findingInWords(finding({ also: [{ value: 51, low: 50, high: 52 }] }))).toContain('mm. 50 to 52 would show the same.');
    expect(findingInWords(finding({ cut: true }))).toContain('mm. One end of it is not what you saw');
    expect(findingInWords(finding({ beyond: true }))).toContain('mm. That lies outside the guess');
    expect(findingInWords(finding({ clash: { value: 180, path: '/relay/focalLengthMm' } }))).toContain('mm. 180 stood here as exact');
    expect(findingInWords(finding({ clash: { value: 180, path: '/relay/glass' } }))).toContain('mm. By its glass it would be 180 mm');
  });

  test('a magnification', () => {
    // The wider half of an uneven interval: 0.05.
    expect(seenInWords({ value: 10.17, low: 10.13, high: 10.22, from: [0] })).toBe('You photograph at 10.17 ± 0.05×.');
    expect(seenInWords({ value: 10.17, low: 10.12, high: 10.21, from: [0] })).toBe('You photograph at 10.17 ± 0.05×.');
  });
});

const all: Sighting[] = [
  { kind: 'ruler', acrossMm: { value: 2.3, plusMinus: 0.1 } },
  { kind: 'micrometer', divisions: 100, divisionUm: 10, pixels: { value: 2000, plusMinus: 5 } },
  { kind: 'micrometer', divisions: { value: 230, plusMinus: 1 }, divisionUm: 10 },
  { kind: 'wall', cornerLossEv: { value: 1, plusMinus: 0.1 } },
  { kind: 'wall', cornerShare: { value: 0.5, plusMinus: 0.1 } },
  { kind: 'wall', onsetRadiusMm: { value: 8, plusMinus: 0.1 } },
  { kind: 'wall', halfRadiusMm: { value: 10, plusMinus: 0.1 } },
  { kind: 'far', imageMm: { value: 203, plusMinus: 1 }, thingMm: 10_000 },
  { kind: 'extensions', firstAcrossMm: { value: 100, plusMinus: 1 }, secondAcrossMm: { value: 50, plusMinus: 1 }, apartMm: 50 },
];

describe('what does not agree, in words', () => {
  test('each sighting by its name and in its unit, counted from one', () => {
    const told = all.map((_, sighting) => inconsistentInWords({ sighting, reads: 2.34567, expected: 2.41234, off: 3.456 }, all));
    expect(told).toEqual(
      [
        ['the ruler', ' mm'],
        ['the micrometer', ' pixels'],
        ['the micrometer', ' divisions'],
        ["the corner's loss", ' stops'],
        ["the corner's share of the light", ''],
        ['the distance from the middle where the light begins to fall', ' mm'],
        ['the distance from the middle where half of the light is left', ' mm'],
        ['the picture of the far thing', ' mm'],
        ['the ruler at the longer extension', ' mm'],
      ].map(([name, unit], i) => {
        const [reads, expected] = unit === '' ? ['2.35', '2.41'] : ['2.346', '2.412'];
        return `Sighting ${i + 1}, ${name}, reads ${reads}${unit}; by the others it would be ${expected}${unit}, 3.5 times the standard uncertainty away.`;
      }),
    );
  });

  test('without a number where the others leave no room for one', () => {
    expect(inconsistentInWords({ sighting: 0, reads: 2.3, off: 3.456 }, all)).toBe(
      'Sighting 1, the ruler, reads 2.3 mm; the others leave no room for that, 3.5 times the standard uncertainty away.',
    );
  });
});

describe('what could not be found, in words', () => {
  const told = (over: Partial<Unsolved>): string => unsolvedInWords({ path: PUPIL, from: [0], why: 'unmet', ...over }, all);

  test('what could be seen at all, with its ends or the want of them', () => {
    const spans = [{ place: 0, least: 2, greatest: 3.12345 }, { place: 6, least: 4 }, { place: 5 }];
    expect(told({ spans })).toBe(
      'Wherever the exit pupil may sit, this pairing shows nothing like it: the ruler can be 2 mm to 3.123 mm; the distance from the middle where half of the light is left can be 4 mm or more; the distance from the middle where the light begins to fall shows no fall anywhere.',
    );
    expect(told({ path: '/relay/focalLengthMm', spans: spans.slice(0, 1) })).toMatch(/^Whatever is put in for .*: the ruler can be/);
    // A span of what the pairing itself says has no sighting, and no words.
    expect(told({ spans: [{ place: -1, least: 1, greatest: 2 }] })).toMatch(/: \.$/);
  });

  test('where light tells of an opening, what would tell more is said; of a lens it would not', () => {
    const more = (path: string): boolean => told({ path, why: 'nothing learnt' }).includes('at two spacings well apart');
    for (const path of [PUPIL, '/relay/clearApertureMm', '/relay/entrancePupilDiameterMm', '/stops/0/diameterMm'])
      expect(more(path)).toBe(true);
    for (const path of ['/relay/focalLengthMm', NAMED]) expect(more(path)).toBe(false);
    expect(told({ path: NAMED, why: 'nothing learnt' })).toMatch(/nothing was learnt of it\.$/);
  });

  test('what has to be told first, and what speaks against it', () => {
    expect(told({ why: 'missing', missing: ['/relay/clearApertureMm'] })).toMatch(/^[A-Z].* cannot be found before this is told: .+\.$/);
    expect(told({ why: 'contradicts', message: 'it is too long' })).toMatch(/ was found but cannot be taken: it is too long\.$/);
  });
});
