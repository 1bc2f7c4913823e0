import { describe, expect, it } from 'vitest';
import { noseDiameter } from '../../../../core/pairing/leaves.ts';
import { lightSentence } from '../../../../core/table/light/sentence.ts';
import { diffuserDiameter, noseFront } from '../../../../core/table/light/settings.ts';

/** The words of answers made up for the case. */

const known = (value: number, low = value, high = value) => ({ state: 'known', value, low, high, origin: 'marked' });
const UNKNOWN = { state: 'unknown', missing: [] };
const missing = (...paths: string[]) => ({ state: 'unknown', missing: paths });

interface Case {
  middle?: object;
  corner?: object;
  share?: object;
  clearance?: object;
  spare?: object;
  fills?: object;
  wide?: number | undefined;
  inputs?: readonly object[];
}
const says = ({
  middle = known(40),
  corner = UNKNOWN,
  share = known(0.64),
  clearance = UNKNOWN,
  spare = UNKNOWN,
  fills = UNKNOWN,
  wide,
  inputs = [],
}: Case) =>
  lightSentence({
    answers: {
      lightMiddleDeg: middle,
      lightFarCornerDeg: corner,
      lightShare: share,
      noseClearanceMm: clearance,
      diffuserSpareMm: spare,
      diffuserShare: fills,
    },
    inputs,
    graph: { place: new Map([[diffuserDiameter.leaf, 0]]) },
    sheet: [wide],
  } as unknown as Parameters<typeof lightSentence>[0]);

const LEAD = 'Light can come in to the top of the subject up to 40° above the stage';

describe('how high light can come in', () => {
  it('is told with its share, and for the far corner where that reads otherwise', () => {
    expect(says({})).toBe(`${LEAD}, 64 % of the half-space above the subject.`);
    expect(says({ corner: known(38) })).toBe(`${LEAD} (38° for the corner away from the lamp), 64 % of the half-space above the subject.`);
    expect(says({ corner: known(40.001) })).toBe(`${LEAD}, 64 % of the half-space above the subject.`);
    expect(says({ share: UNKNOWN })).toContain(', 0 % of the half-space');
  });

  it('is asked for by name where it is not known', () => {
    expect(says({ middle: UNKNOWN })).toBe('How high light can come in is not known.');
    expect(says({ middle: missing('/objective/workingDistanceMm') })).toMatch(
      /^How high light can come in is not known: it needs .*working distance/,
    );
    expect(says({ middle: missing('/objective/workingDistanceMm', '/infinitySpaceMm') })).toMatch(/ and /);
    expect(says({ middle: { state: 'none', why: '' } })).toBe('How high light can come in is not known.');
  });

  it('is told with its ends where they are more than 10° apart, until the nose is measured', () => {
    const middle = (low: number, high: number, inputs: readonly object[] = []) => says({ middle: known(40, low, high), inputs });
    const guess = { leaf: noseDiameter, origin: 'assumed' };
    const other = { leaf: diffuserDiameter.leaf, origin: 'assumed' };
    expect(middle(35, 45)).not.toMatch(/anywhere/);
    expect(middle(34.8, 45.3)).toMatch(/stage, anywhere from 35 to 45°, 64 %/);
    expect(middle(30, 50)).toMatch(/anywhere from 30 to 50°, 64 %/);
    expect(middle(30, 50, [other, guess])).toMatch(/to 50° until you measure the nose, 64 %/);
    expect(middle(30, 50, [other])).toMatch(/to 50°, 64 %/);
    expect(middle(30, 50, [{ ...guess, origin: 'measured' }])).toMatch(/to 50°, 64 %/);
    expect(middle(30, 50, [{ ...guess, origin: 'measured' }, other])).toMatch(/to 50°, 64 %/);
    expect(middle(30, 50, [guess, { leaf: noseFront.leaf, origin: 'measured' }])).toMatch(/to 50°, 64 %/);
  });
});

describe('a diffuser', () => {
  const told = (spare: object, more: Case = {}) => says({ spare, wide: 30, ...more }).split('; ')[1];

  it('is told only where its width is, and whether it fits', () => {
    expect(says({ spare: known(3) })).not.toMatch(/diffuser/);
    expect(says({ wide: 30 })).not.toMatch(/diffuser/);
    expect(told(known(3, 2, 4))).toBe('a diffuser of 30 mm fits with 3 mm to spare.');
    expect(told(known(3, 2, 4), { fills: known(0.3) })).toBe(
      'a diffuser of 30 mm fits with 3 mm to spare, and fills 30 % of that half-space.',
    );
  });

  it('fits at 0 to spare, for sure only where all that is not known leaves so much', () => {
    expect(told(known(0))).toBe('a diffuser of 30 mm fits with 0 mm to spare.');
    expect(told(known(0, -1, 0))).toBe('a diffuser of 30 mm fits with 0 mm to spare, which what is not known may use up.');
    expect(told(known(3, 0, 4))).toBe('a diffuser of 30 mm fits with 3 mm to spare.');
    expect(told(known(3, 0.5, 4))).not.toMatch(/use up/);
    expect(told(known(0.5, 0.2, 0.8))).toMatch(/fits with 0\.5 mm to spare/);
  });

  it('is too narrow, likely or for sure, with the digits that it earns', () => {
    expect(told(known(-2, -4, 0))).toBe('a diffuser of 30 mm is likely 2 mm too narrow (−4 to +0 mm to spare).');
    expect(told(known(-2, -4, 0.5))).toMatch(/is likely 2 mm too narrow \(−4 to \+0\.5 mm to spare\)/);
    expect(told(known(-2.25, -4.56, 1.23))).toMatch(/is likely 2\.3 mm too narrow \(−4\.6 to \+1\.2 mm to spare\)/);
    expect(told(known(-2, -4, -0.5))).toBe('a diffuser of 30 mm does not fit: it is 2 mm too narrow.');
    expect(told(known(-0.5, -0.8, -0.2))).toMatch(/does not fit: it is 0\.5 mm too narrow/);
    // Its ± of 0.02 leaves three digits, one of 0.5 two; told by the wider side.
    expect(told(known(-2.345, -2.365, -2.34))).toMatch(/it is 2\.345 mm too narrow/);
    expect(told(known(-2.345, -2.35, -2.045))).toMatch(/it is 2\.35 mm too narrow/);
    expect(told({ state: 'known', value: -2.345, high: -2.325, origin: 'marked' })).toMatch(/it is 2\.35 mm too narrow/);
  });
});

describe('the nose at the back of the subject', () => {
  const nose = (clearance: object) => says({ clearance }).split('subject. ')[1];
  it('has so much left, or nothing for sure', () => {
    expect(says({})).toMatch(/half-space above the subject\.$/);
    expect(nose(known(3, 2, 4))).toBe('At the back of the subject 3 mm are left before the nose.');
    expect(nose(known(3, 0, 6))).toBe('At the back of the subject 3 mm are left before the nose, or nothing.');
    expect(nose(known(3, 0.5, 6))).toBe('At the back of the subject 3 mm are left before the nose.');
    expect(nose(known(0.5, 0.2, 0.9))).toBe('At the back of the subject 0.5 mm are left before the nose.');
    expect(nose(known(3, -1, 6))).toMatch(/, or nothing\.$/);
  });
  it('meets it before, by so much', () => {
    expect(nose(known(0, -1, 1))).toBe('The nose meets the subject 0 mm before its back is in focus.');
    expect(nose(known(-1.5, -2, -1))).toBe('The nose meets the subject 1.5 mm before its back is in focus.');
  });
});
