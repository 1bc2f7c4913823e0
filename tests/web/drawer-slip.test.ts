import { describe, expect, it } from 'vitest';
import { type OwnPart, ownPartSchema } from '../../core/index.ts';
import { engraved, spareName } from '../../web/drawer/called.ts';
import { groupsFor, isStated } from '../../web/drawer/groups.ts';
import {
  at,
  complained,
  edited,
  followed,
  fresh,
  isChanged,
  judged,
  laidOut,
  type Slip,
  type Standing,
  saidAgainst,
  standingIn,
} from '../../web/drawer/slip.ts';
import { counted, differences, FIELDS, firstWords, measuredIn, refusedInWords, sayingAt, valueTold } from '../../web/drawer/told.ts';
import type { Field } from '../../web/fields/field-lists.ts';

/** A slip of the drawer without a page: what is typed, what is kept beside a measurement, what became of it elsewhere. */

const FOCAL = '/relay/focalLengthMm';
const RELAY: OwnPart = ownPartSchema.parse({
  kind: 'relay',
  owned: true,
  part: { name: 'Mine', kind: 'camera-lens', focalLengthMm: 200, fNumber: 4 },
});
const standing = (version = 3, own: OwnPart = RELAY): Standing => ({ id: 'mine', version, own });
const measured = (value: unknown, more: object = {}) => ({ value, origin: 'measured', ...more });
const field = (kind: OwnPart['kind'], key: string): Field => {
  const found = FIELDS[kind].find((one) => one.key === key);
  if (!found) throw new Error(key);
  return found;
};

describe('what is typed on a slip', () => {
  it('stands at the paths of a pairing, and is a change until it is as it was', () => {
    const slip = laidOut(standing());
    expect([isChanged(slip), at(slip, FOCAL), at(slip, '/owned')]).toEqual([false, 200, true]);
    const typed = edited(edited(slip, FOCAL, 'frog'), '/notes', 'from a fair');
    expect([at(typed, FOCAL), at(typed, '/notes'), isChanged(typed)]).toEqual(['frog', 'from a fair', true]);
    expect(slip.draft).toEqual(RELAY);
    expect(isChanged(edited(edited(typed, FOCAL, 200), '/notes', undefined))).toBe(false);
    expect(isChanged(fresh('relay', RELAY.part))).toBe(true);
  });

  it('keeps what is engraved beside a number once it is measured, whatever the order of typing', () => {
    const slip = laidOut(standing());
    const inOrder = edited(edited(slip, FOCAL, measured(200)), FOCAL, measured(196, { marked: 200, plusMinus: 2 }));
    const valueFirst = edited(edited(slip, FOCAL, { value: 196, plusMinus: 2 }), FOCAL, measured(196, { plusMinus: 2 }));
    for (const one of [inOrder, valueFirst]) expect(at(one, FOCAL)).toEqual({ value: 196, plusMinus: 2, origin: 'measured', marked: 200 });
    // What was taken out of the slip by hand does not come back with the next letter.
    const cleared = edited(inOrder, `${FOCAL}/marked`, undefined);
    expect(at(edited(cleared, FOCAL, measured(195)), FOCAL)).toEqual(measured(195));
    // No measurement, no engraving beside it.
    expect(at(edited(inOrder, FOCAL, { value: 200, marked: 200 }), FOCAL)).toBe(200);
    expect(at(edited(inOrder, FOCAL, { value: 200, origin: 'assumed', marked: 200 }), FOCAL)).toEqual({ value: 200, origin: 'assumed' });
  });

  it('takes no guess and no earlier measurement for an engraving', () => {
    const part = { ...RELAY.part, clearApertureMm: { value: 60, origin: 'assumed' }, entrancePupilDepthMm: measured(90, { marked: 80 }) };
    const slip = laidOut(standing(3, { ...RELAY, part } as OwnPart));
    expect(at(edited(slip, '/relay/clearApertureMm', measured(61)), '/relay/clearApertureMm')).toEqual(measured(61));
    expect(at(edited(slip, '/relay/imageCircleMm', measured(44)), '/relay/imageCircleMm')).toEqual(measured(44));
    expect(at(edited(slip, '/relay/entrancePupilDepthMm', measured(91)), '/relay/entrancePupilDepthMm')).toEqual(measured(91));
  });
});

describe('what is wrong with a slip', () => {
  const wrong = (slip: Slip) => (judged(slip).problems ?? []).map(({ path, code }) => [path, code]);

  it('is what the schema says, by the paths of a pairing, once for each input', () => {
    const slip = fresh('relay', { name: 'x', kind: 'tube-lens', focalLengthMm: { value: -1, plusMinus: -1 }, fNumber: 'frog' });
    expect(wrong(slip)).toEqual([
      [`${FOCAL}/value`, 'tooSmall'],
      ['/relay/fNumber', 'wrongType'],
    ]);
    expect(wrong(edited(fresh('relay', RELAY.part), '/price', -1))).toEqual([['/price', 'tooSmall']]);
    expect(wrong(edited(fresh('relay', RELAY.part), '/relay/name', undefined))).toEqual([['/relay/name', 'missing']]);
    expect(judged(laidOut(standing())).own).toEqual(RELAY);
  });

  it('is what no pairing would take, by the part alone', () => {
    expect(wrong(fresh('relay', { name: 'x', kind: 'supplementary' }))).toEqual([[FOCAL, 'missing']]);
    expect(wrong(fresh('relay', { name: 'x', kind: 'supplementary', powerDioptre: 5, focalLengthMm: 190 }))).toEqual([
      [FOCAL, 'contradiction'],
    ]);
    const five = { name: 'x', kind: 'supplementary', powerDioptre: 5, focalLengthMm: measured(190, { plusMinus: 2 }) };
    expect(wrong(fresh('relay', five))).toEqual([]);
    expect(wrong(fresh('objective', { name: 'x', magnification: 100, na: 1.2, referenceFocalLengthMm: 200 }))).toEqual([
      ['/objective/na', 'contradiction'],
    ]);
    expect(wrong(fresh('sensor', { name: 'x', widthMm: 36, heightMm: 24 }))).toEqual([['/sensor/pixelPitchUm', 'missing']]);
    // A long register is its own business: no relay stands before it here.
    const sensor = { name: 'x', widthMm: 36, heightMm: 24, pixelPitchUm: 4, registerMm: 400, throatDiameterMm: 50 };
    expect(wrong(fresh('sensor', sensor))).toEqual([]);
  });

  it('is said of what was typed, of what is missing only on keeping, and no longer than it is so', () => {
    const slip = fresh('objective', { name: 'x', magnification: 'ten' });
    const left = complained(slip, false);
    expect(left.told.map(({ path }) => path)).toEqual(['/objective/magnification']);
    const asked = complained(left, true);
    expect(asked.told.map(({ path }) => path)).toEqual(['/objective/magnification', '/objective/na', '/objective/referenceFocalLengthMm']);
    expect(saidAgainst(asked, '/objective/na')).toHaveLength(1);
    const mended = edited(asked, '/objective/na', 0.25);
    expect(saidAgainst(mended, '/objective/na')).toEqual([]);
    // What was said stays said while it is so.
    expect(complained(mended, false).told.map(({ path }) => path)).toEqual([
      '/objective/magnification',
      '/objective/referenceFocalLengthMm',
    ]);
  });
});

describe('what became of a part elsewhere', () => {
  const typed = edited(laidOut(standing()), FOCAL, 190);
  const theirs = standing(4, { ...RELAY, part: { ...RELAY.part, focalLengthMm: 210 } } as OwnPart);

  it('reaches a slip that nothing was typed on', () => {
    expect(followed(laidOut(standing()), [theirs])).toEqual(laidOut(theirs));
    expect(followed(laidOut(standing()), [])).toBeUndefined();
  });

  it('is told to one that was typed on, which stays as it is', () => {
    expect(followed(typed, [theirs])).toEqual({ ...typed, meanwhile: theirs });
    expect(followed(typed, [])).toEqual({ ...typed, meanwhile: 'taken out' });
    expect(followed(typed, [standing()])).toBe(typed);
    // Put back where it lay, there is nothing to tell any more.
    expect(followed({ ...typed, meanwhile: 'taken out' }, [standing()])).toEqual(typed);
    const agreed = standing(4, judged(typed).own as OwnPart);
    expect(followed(typed, [agreed])).toEqual(laidOut(agreed));
  });

  it('does not reach a part that was never kept', () => {
    const never = fresh('relay', RELAY.part);
    expect(followed(never, [theirs])).toBe(never);
  });
});

describe('a part in words', () => {
  it('says what was measured, with its ± and what is engraved', () => {
    const part = { ...RELAY.part, focalLengthMm: measured(196, { plusMinus: 2, marked: 200 }), clearApertureMm: measured(54) };
    expect(measuredIn({ ...RELAY, part } as OwnPart)).toEqual([
      'focal length, as set 196 ± 2 mm, engraved 200',
      'clear opening of the front rim 54 mm',
    ]);
    expect(measuredIn(RELAY)).toEqual([]);
    expect(valueTold(field('relay', 'clearApertureMm'), { value: 54, plusMinus: 2, origin: 'assumed' })).toBe('54 ± 2 mm assumed');
    expect(valueTold(field('relay', 'kind'), 'camera-lens')).toBe('camera lens at infinity');
    expect(valueTold(field('objective', 'flatField'), false)).toBe('no');
    expect(valueTold(field('relay', 'fNumber'), 'frog')).toBe('frog');
    expect(valueTold(field('relay', 'fNumber'), undefined)).toBe('');
  });

  it('tells where two stands of it differ, and nowhere else', () => {
    const mine = {
      ...RELAY,
      price: 120,
      notes: 'mine',
      part: { ...RELAY.part, focalLengthMm: measured(196), focalLengthRangeMm: [70, 200] },
    };
    const theirs = { ...RELAY, owned: false, part: { ...RELAY.part, glass: { radiiMm: [] } } };
    expect(differences('relay', mine, theirs)).toEqual([
      { what: 'Focal length, as set', mine: '196 mm measured', theirs: '200 mm' },
      { what: 'Zoom, shortest and longest', mine: '70 to 200 mm', theirs: '' },
      { what: 'Its glass', mine: '', theirs: 'listed' },
      { what: 'Owned', mine: 'yes', theirs: 'no' },
      { what: 'Price', mine: '120', theirs: '' },
      { what: 'Notes', mine: 'mine', theirs: '' },
    ]);
    expect(differences('relay', RELAY, structuredClone(RELAY))).toEqual([]);
  });

  it('counts, shortens and names', () => {
    expect(counted([RELAY, { ...RELAY, owned: false }, { ...RELAY, kind: 'sensor' } as OwnPart])).toBe(
      '2 relays and 1 camera; 2 owned, 1 thought of',
    );
    expect(counted([RELAY])).toBe('1 relay; 1 owned');
    const tele = { name: 'x', kind: 'camera-lens', focalLengthMm: measured(196, { marked: 200 }), fNumber: 4 };
    expect(engraved('relay', tele)).toBe('200 mm f/4');
    expect(engraved('relay', { kind: 'supplementary', powerDioptre: 5, focalLengthMm: measured(196) })).toBe('5 D');
    expect(firstWords(' two\nlines ')).toBe('two lines');
    expect(firstWords('a long note that goes on', 12)).toBe('a long note …');
    expect(spareName('Mine', ['Mine'])).toBe('Mine (2)');
    expect(spareName('Mine (2)', ['Mine (2)', 'Mine (3)'])).toBe('Mine (4)');
    expect(spareName('x'.repeat(120), []).length).toBeLessThanOrEqual(120);
  });

  it('tells a refusal by the names of the page', () => {
    const problem = { path: '/part/na', code: 'tooBig', message: 'must be at most 1.7', given: '9', expected: 'at most 1.7' };
    expect(refusedInWords('objective', [problem])).toBe('objective, numerical aperture must be at most 1.7; what would do: at most 1.7.');
    expect(
      refusedInWords('relay', [{ path: '', code: 'x', message: 'was not kept: the disk is full', given: '', expected: 'some room' }]),
    ).toBe('it was not kept: the disk is full; what would do: some room.');
    expect(sayingAt(problem)).toBe('numerical aperture: 9 is too large. Put in a number from 0.001 to 1.7.');
    expect(sayingAt({ ...problem, path: '/kind', message: 'is missing', expected: 'one of three' })).toBe(
      'kind: is missing. What would do: one of three.',
    );
  });

  it('puts first what is usual and what a part says', () => {
    const keys = (kind: OwnPart['kind'], base: object) => groupsFor(kind, base).usual.map(({ key }) => key);
    expect(keys('relay', { kind: 'supplementary' })).not.toContain('fNumber');
    expect(keys('relay', { kind: 'camera-lens' })).toContain('fNumber');
    expect(keys('relay', { kind: 'supplementary', focalLengthRangeMm: [1, 2] })).toContain('focalLengthRangeMm/1');
    expect(isStated('focalLengthMm', undefined)).toBe(true);
    expect(isStated('exitPupilFromShoulderMm', undefined)).toBe(false);
    expect(isStated('exitPupilFromShoulderMm', -20)).toBe(true);
    for (const kind of ['objective', 'relay', 'sensor'] as const) {
      const { usual, rest } = groupsFor(kind, {});
      expect([...usual, ...rest].map(({ key }) => key).sort()).toEqual(FIELDS[kind].map(({ key }) => key).sort());
    }
  });
});

describe('what lies in the drawer', () => {
  it('is what is one’s own, in its order', () => {
    const { part } = RELAY as Extract<OwnPart, { kind: 'relay' }>;
    const relays = [
      { id: 'b', part, own: { owned: false, price: 3, version: 7 } },
      { id: 'a', part, own: { owned: true, notes: 'x', version: 1 } },
      { id: 'tele', part },
    ];
    expect(standingIn({ objectives: [], relays, sensors: [], last: false }, 'relay')).toEqual([
      { id: 'b', version: 7, own: { kind: 'relay', owned: false, price: 3, part } },
      { id: 'a', version: 1, own: { kind: 'relay', owned: true, notes: 'x', part } },
    ]);
  });
});
