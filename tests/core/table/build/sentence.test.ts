import { describe, expect, it } from 'vitest';
import type { BuildEffects } from '../../../../core/table/build/effects.ts';
import type { SheetRun } from '../../../../core/table/build/joined.ts';
import { buildSentence } from '../../../../core/table/build/sentence.ts';
import type { BuildSheet } from '../../../../core/table/build/sheet.ts';
import type { TableEvaluation } from '../../../../core/table/evaluate.ts';

/** The sentence on sheets and answers made up for the case, each number of it at a border or just beside. */

const known = (value: number, low = value, high = value) => ({ state: 'known', unit: 'mm', value, low, high, origin: 'marked' });
const none = (why: string) => ({ state: 'none', unit: 'mm', why });
const UNKNOWN = { state: 'unknown', unit: 'mm', missing: ['/relay/focalLengthMm'] };
const UNLIMITED = { state: 'unlimited', unit: 'mm' };

type Joined = Extract<SheetRun, { state: 'joined' }>;
const joined = (more: Partial<Joined> = {}): Joined => ({
  state: 'joined',
  parts: 2,
  lengthMm: 60,
  leastMm: 60,
  mostMm: 60,
  toBuy: 2,
  ...more,
});
const NOTHING: SheetRun = { state: 'nothing', why: '' };

interface Case {
  kind?: string;
  space?: number;
  answers?: Record<string, object>;
  inputs?: readonly object[];
  sheet?: Partial<BuildSheet>;
  effects?: object;
  brief?: boolean;
}

function says({ kind = 'supplementary', space = 60, answers = {}, inputs = [], sheet = {}, effects, brief }: Case): string {
  const evaluation = {
    pairing: { relay: { kind }, infinitySpaceMm: space },
    answers: { tubeLengthMm: known(150), subjectToSensorMm: UNKNOWN, builtTooLongMm: UNKNOWN, ...answers },
    inputs,
  };
  const whole = { parts: [], front: NOTHING, back: NOTHING, ...sheet };
  return buildSentence(evaluation as unknown as TableEvaluation, whole, effects as BuildEffects | undefined, brief);
}

/** What comes after the first sentence, which tells the lengths. */
const LEAD =
  "Leave 60 mm between the objective's shoulder and the close-up lens, and build 150 mm of tube behind it, up to the camera's flange.";
const rest = (one: Case): string => {
  const text = says(one);
  expect(text.startsWith(LEAD)).toBe(true);
  return text.slice(LEAD.length).trim();
};

describe('the lengths', () => {
  it('are space and tube, and from subject to sensor where that is known', () => {
    expect(says({})).toBe(LEAD);
    expect(says({ answers: { subjectToSensorMm: known(320.5) } })).toBe(`${LEAD} From the subject to the sensor it is 320.5 mm.`);
    expect(says({ space: 60.1234 })).toMatch(/^Leave 60\.12 mm/);
  });

  it('are the space alone before a camera lens, and with the reason where the tube cannot be told', () => {
    expect(says({ kind: 'camera-lens', answers: { tubeLengthMm: none('it carries its own'), subjectToSensorMm: known(410) } })).toBe(
      "Leave 60 mm between the objective's shoulder and the camera lens, which goes on its camera as it is. From the subject to the sensor it is 410 mm.",
    );
    expect(says({ answers: { tubeLengthMm: none('its register is too long') } })).toMatch(/cannot be told: its register is too long\.$/);
    expect(says({ answers: { tubeLengthMm: UNKNOWN } })).toMatch(/cannot be told: the focal length is not known\.$/);
  });
});

describe('a run in words', () => {
  const front = (more: Partial<Joined>): string => rest({ sheet: { front: joined(more) } });
  const BETWEEN = 'Between the objective and the close-up lens';

  it('counts its pieces and those to buy', () => {
    expect(front({ parts: 0, toBuy: 0 })).toBe(`${BETWEEN} nothing is needed: the threads fit.`);
    expect(front({ parts: 1, toBuy: 0 })).toBe(`${BETWEEN} one piece does it, which you have.`);
    expect(front({ parts: 1, toBuy: 1 })).toBe(`${BETWEEN} one piece does it, to buy.`);
    expect(front({ parts: 2, toBuy: 0 })).toBe(`${BETWEEN} 2 pieces do it, all of which you have.`);
    expect(front({ parts: 2, toBuy: 1 })).toBe(`${BETWEEN} 2 pieces do it, 1 to buy.`);
    expect(front({ parts: 2, toBuy: 2 })).toBe(`${BETWEEN} 2 pieces do it, all to buy.`);
  });

  it('tells by how much it is off from half a millimetre on', () => {
    expect(front({ differsMm: 0.5 })).toBe(`${BETWEEN} 2 pieces do it, all to buy.`);
    expect(front({ differsMm: 0.503 })).toMatch(/, 0\.5 mm too long\.$/);
    expect(front({ differsMm: 1.25 })).toMatch(/, 1\.3 mm too long\.$/);
    expect(front({ differsMm: -12.34 })).toMatch(/, 12 mm too short\.$/);
    expect(front({ parts: 0, toBuy: 0, differsMm: 0.8 })).toBe(`${BETWEEN} nothing is needed: the threads fit, 0.8 mm too long.`);
    expect(front({ parts: 0, toBuy: 0, differsMm: 0.503 })).toMatch(/0\.5 mm too long\.$/);
  });

  it('tells what goes on where a ring is missing, and asks for a thread that is not told', () => {
    const gap = (kept: number): string =>
      rest({ sheet: { front: { state: 'none', why: 'nothing joins A and B', wouldDo: 'a ring', kept } } });
    expect(gap(0)).toBe('Nothing joins A and B; a ring would.');
    expect(gap(1)).toBe(`${BETWEEN} one piece goes on, and a ring is missing: nothing joins A and B.`);
    expect(gap(2)).toBe(`${BETWEEN} 2 pieces go on, and a ring is missing: nothing joins A and B.`);
    expect(rest({ sheet: { back: { state: 'unknown', why: 'its thread is not told', path: '/relay' } } })).toBe(
      'Its thread is not told, so the rings between the close-up lens and the camera cannot be told.',
    );
  });

  it('is left out of the brief sentence where it is joined, and only there', () => {
    const sheet = { front: joined(), back: joined() };
    expect(rest({ sheet, brief: true })).toBe('');
    expect(rest({ sheet, brief: false })).toMatch(/Between the objective.*Between the close-up lens and the camera/);
    const missing: SheetRun = { state: 'none', why: 'nothing joins', wouldDo: 'a ring', kept: 0 };
    expect(rest({ sheet: { front: missing, back: joined() }, brief: true })).toBe('Nothing joins; a ring would.');
    expect(rest({ sheet: { front: joined(), back: missing }, brief: true })).toBe('Nothing joins; a ring would.');
  });
});

describe('a space that comes out longer or shorter', () => {
  const space = (longestSpace: object | undefined, lengthMm = 62): string =>
    rest({ sheet: { front: joined({ differsMm: 2, lengthMm }) }, ...(longestSpace ? { effects: { longestSpace, fresh: [] } } : {}) });

  it('matters as far as the corners say', () => {
    expect(space(undefined)).toMatch(/2 mm too long\.$/);
    expect(space(UNKNOWN)).toMatch(/2 mm too long\.$/);
    expect(space(none(''))).toMatch(/too long, which matters little: the corners are cut at any infinity space\.$/);
    expect(space(UNLIMITED)).toMatch(/does not matter: the corners stay clear at any infinity space\.$/);
    expect(space(known(62))).toMatch(/does not matter: the corners stay clear up to 62 mm\.$/);
    expect(space(known(61))).toMatch(/costs light: the corners stay clear up to 61 mm only\.$/);
  });

  it('is not judged where nothing joins the ends', () => {
    const front: SheetRun = { state: 'none', why: 'nothing joins', wouldDo: 'a ring', kept: 0 };
    expect(rest({ sheet: { front }, effects: { longestSpace: none(''), fresh: [] } })).toBe('Nothing joins; a ring would.');
  });
});

describe('what the focus may want', () => {
  const REGISTER = { path: '/sensor/registerMm', least: 17, greatest: 20 };
  const RING = { what: 'ring', role: 'mount', standing: 'to buy', lengthMm: 10 } as const;
  const back = (more: Partial<Joined>, sheet: Partial<BuildSheet> = {}, inputs: readonly object[] = []): string =>
    rest({
      sheet: { back: joined({ wantedLowMm: 100, wantedHighMm: 110, leastMm: 98, mostMm: 112, ...more }), ...sheet },
      inputs,
      brief: true,
    });

  it('is said where it is more than a millimetre wide, with what the pieces reach', () => {
    expect(back({})).toBe('The focus may want anything from 100 to 110 mm; these turn from 98 to 112 mm.');
    expect(back({ wantedHighMm: 101 })).toBe('');
    expect(back({ wantedHighMm: 101.2 })).toMatch(/^The focus may want anything from 100 to 101 mm/);
    expect(back({ wantedLowMm: -60, wantedHighMm: 0, leastMm: 0, mostMm: 0 })).toMatch(/^The focus may want anything from 0 to 0 mm/);
  });

  it('counts up to the flange, with the ring on the camera, never below nothing', () => {
    expect(back({}, { parts: [RING] })).toBe(
      "The focus may want anything from 110 to 120 mm; with the camera's ring these turn from 108 to 122 mm.",
    );
    expect(back({}, { parts: [{ ...RING, lengthMm: 0 }] })).toBe(
      'The focus may want anything from 100 to 110 mm; these turn from 98 to 112 mm.',
    );
    expect(back({}, { parts: [{ ...RING, lengthMm: 0.9 }] })).toMatch(/from 101 to 111 mm; with the camera's ring these/);
    const { lengthMm: _, ...unknown } = RING;
    expect(back({}, { parts: [unknown] })).toMatch(/from 100 to 110 mm; these/);
    // Shorter than the camera's ring nothing can be: 5 mm of pieces are 15 too many of -20, but only the ring's 10 are within reach.
    expect(back({ wantedLowMm: -20, wantedHighMm: 0, leastMm: 5, mostMm: 5 }, { parts: [RING] })).toBe(
      "The focus may want anything from 0 to 10 mm; with the camera's ring these do not turn: 15 mm too long for the shortest that may be wanted.",
    );
  });

  it('tells what is out of reach on either side by more than half a millimetre', () => {
    expect(back({ leastMm: 100.5, mostMm: 109.5 })).toBe('The focus may want anything from 100 to 110 mm; these turn from 101 to 110 mm.');
    expect(back({ leastMm: 100.75 })).toMatch(/: 0\.75 mm too long for the shortest that may be wanted\.$/);
    expect(back({ mostMm: 106.5 })).toMatch(/: 3\.5 mm short of the longest that may be wanted\.$/);
    expect(back({ leastMm: 103, mostMm: 106 })).toMatch(/: 3 mm too long for .* wanted, and 4 mm short of the longest/);
  });

  it('says that they do not turn where that is less than half a millimetre', () => {
    expect(back({ leastMm: 105, mostMm: 105.4 })).toMatch(/; these do not turn: /);
    expect(back({ leastMm: 105, mostMm: 105.5 })).toMatch(/; these turn from 105 to 106 mm: /);
  });

  it('says that the ring takes up a register known to no more than a millimetre', () => {
    const takes = / That ring takes up what is not known of the register\.$/;
    expect(back({}, { parts: [RING] }, [REGISTER])).toMatch(takes);
    expect(back({}, { parts: [RING] }, [{ ...REGISTER, greatest: 18 }])).not.toMatch(takes);
    expect(back({}, { parts: [RING] }, [{ ...REGISTER, greatest: 18.2 }])).toMatch(takes);
    expect(back({}, { parts: [RING] }, [{ ...REGISTER, path: '/sensor/widthMm' }])).not.toMatch(takes);
    expect(back({}, { parts: [] }, [REGISTER])).not.toMatch(takes);
    expect(back({}, { parts: [{ ...RING, lengthMm: 0 }] }, [REGISTER])).not.toMatch(takes);
    expect(back({}, { parts: [{ ...RING, lengthMm: 0.9 }] }, [REGISTER])).toMatch(takes);
  });

  it('is the room to leave where no pieces are told', () => {
    const tube = (low: number, high: number): string => rest({ sheet: { tubeMm: { value: (low + high) / 2, low, high } } });
    expect(tube(140, 160)).toBe('The focus may want anything from 140 to 160 mm: leave that much to turn.');
    expect(tube(0.4, 3)).toMatch(/from 0\.4 to 3 mm/);
    expect(tube(-5, 3)).toMatch(/from 0 to 3 mm/);
    expect(tube(150, 151)).toBe('');
    expect(tube(150, 151.2)).toMatch(/from 150 to 151 mm/);
    expect(rest({})).toBe('');
    // A joined run of which nothing is wanted, or one end is not limited.
    const { wantedLowMm: _l, wantedHighMm: _h, ...open } = joined();
    const sheet = { tubeMm: { value: 150, low: 140, high: 160 } };
    for (const run of [open, { ...open, wantedLowMm: 1 }, { ...open, wantedHighMm: 99 }])
      expect(rest({ sheet: { ...sheet, back: run }, brief: true })).toMatch(/from 140 to 160 mm: leave that much to turn/);
    const none: SheetRun = { state: 'none', why: 'nothing joins', wouldDo: 'a ring', kept: 0 };
    expect(rest({ sheet: { ...sheet, back: { ...none, wantedLowMm: 1, wantedHighMm: 5 } as SheetRun } })).toMatch(
      /leave that much to turn/,
    );
    const half = (tubeMm: object) => rest({ sheet: { tubeMm: tubeMm as NonNullable<BuildSheet['tubeMm']> } });
    expect([half({ low: 1 }), half({ high: 9 })]).toEqual(['', '']);
  });
});

describe('a tube as it was built', () => {
  const off = (value: number, low = value, high = value, tube?: object): string =>
    rest({
      answers: { builtTooLongMm: known(value, low, high) },
      ...(tube ? { effects: { longestSpace: UNKNOWN, fresh: [], tube } } : {}),
    });

  it('is right within half a millimetre, where that is sure', () => {
    expect(off(0.5)).toBe('As you built it the tube is right.');
    expect(off(-0.5)).toBe('As you built it the tube is right.');
    expect(off(0.503)).toBe('As you built it the tube is 0.5 mm too long.');
    expect(off(0, -0.5, 0.5)).toBe('As you built it the tube is right.');
    expect(off(0, -0.6, 0.5)).toBe(
      'As you built it the tube is right in the middle of what may be: −0.6 to 0.5 mm off, as far as the relay is known.',
    );
    expect(off(0.4, -3, 4)).toBe('As you built it the tube is 0.4 mm too long (−3 to 4, as far as the relay is known).');
    expect(rest({ answers: { builtTooLongMm: none('') } })).toBe('');
  });

  it('is so much too long or too short, and does so much to the picture', () => {
    expect(off(-3.45)).toBe('As you built it the tube is 3.5 mm too short.');
    expect(off(12, 0.04, 23.45)).toMatch(/12 mm too long \(0 to 23, as far/);
    expect(off(3, 1.04, 5.06)).toMatch(/3 mm too long \(1 to 5\.1, as far as the relay is known\)\.$/);
    expect(off(3, 3, 3, { magnificationChange: 0.02 })).toBe(
      'As you built it the tube is 3 mm too long: focused again with the rail, the picture is 2 % larger.',
    );
    expect(off(-3, -3, -3, { magnificationChange: -0.02, strehl: 0.8 })).toBe(
      'As you built it the tube is 3 mm too short: focused again with the rail, the picture is 2 % smaller and the middle stays sharp (Strehl ratio 0.8).',
    );
    expect(off(-3, -3, -3, { strehl: 0.7951 })).toMatch(/rail, the middle is no longer sharp \(Strehl ratio 0\.8\)\.$/);
    expect(off(-3, -3, -3, { strehl: 0.804 })).toMatch(/the middle stays sharp/);
    expect(off(-3, -3, -3, { magnificationChange: 0 })).toMatch(/0 % larger/);
    expect(off(-3, -3, -3, {})).toBe('As you built it the tube is 3 mm too short.');
  });
});

describe('a relay that could be turned round', () => {
  const sheet = { front: joined({ parts: 3 }), back: joined({ parts: 4 }), piecesTurned: 5, side: 'male thread toward the camera' };
  const turns = (more: Partial<BuildSheet>, brief = false): string => rest({ sheet: { ...sheet, ...more }, brief });

  it('is told with how many pieces that would take', () => {
    expect(turns({})).toMatch(/It is drawn with its male thread toward the camera\. Turned round it would take 5 pieces instead of 7; /);
    const { side: _, ...unsided } = sheet;
    expect(rest({ sheet: unsided })).toMatch(/2 to buy\. Turned round it would take 5 pieces/);
    expect(turns({}, true)).toBe('');
    const { piecesTurned: _p, ...best } = sheet;
    expect(rest({ sheet: best })).not.toMatch(/Turned/);
    const missing: SheetRun = { state: 'none', why: 'nothing joins', wouldDo: 'a ring', kept: 0 };
    expect(turns({ front: missing })).not.toMatch(/Turned/);
    expect(turns({ back: missing })).not.toMatch(/Turned/);
  });
});
