import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { asOwn, asStored, freeId } from '../../api/drawer/changes.ts';
import { EMPTY, type Stored } from '../../api/drawer/form.ts';
import { rowsOfTable } from '../../api/drawer/table/read.ts';
import { cellOf, jsonCell, textIn } from '../../api/drawer/table/text.ts';
import { tableOf } from '../../api/drawer/table/write.ts';
import { judging, takenIn } from '../../api/drawer/take-in.ts';
import type { OwnPart } from '../../core/index.ts';
import { ownPart } from './arbitrary-own.ts';

/** The drawer as a table: out and in again it is the same, and no cell of it is a formula. */

const RUNS = Number(process.env.RUNS ?? 40);
const drawers = fc.array(ownPart, { minLength: 1, maxLength: 12 });

function stored(parts: readonly OwnPart[]): Stored[] {
  const taken = new Set<string>();
  return parts.map((own) => {
    const id = freeId(own.part.name, own.kind, (id) => taken.has(id));
    taken.add(id);
    return asStored(id, 1, own);
  });
}

const takeIn = (table: string, contents = EMPTY, replace = false) => takenIn(contents, [...judging(rowsOfTable(table))], replace);

describe('out and in again', () => {
  test('is the identity on random drawers of all three kinds', () => {
    const seen = { objective: 0, relay: 0, sensor: 0, glass: 0, stories: 0 };
    fc.assert(
      fc.property(drawers, (parts) => {
        const out = stored(parts);
        const { contents, answer } = takeIn(tableOf(out));
        expect(answer).toEqual({ added: out.length, replaced: 0, unchanged: 0, refused: [] });
        expect([...(contents?.parts.values() ?? [])]).toEqual(out);
        expect(takeIn(tableOf(out), contents).answer).toEqual({ added: 0, replaced: 0, unchanged: out.length, refused: [] });
        for (const { kind, part } of out) {
          seen[kind]++;
          if ('glass' in part) seen.glass++;
          if (Object.values(part).some((value) => typeof value === 'object')) seen.stories++;
        }
      }),
      { numRuns: RUNS },
    );
    for (const count of Object.values(seen)) expect(count).toBeGreaterThan(5);
  }, 60_000);

  test('is so when another country cuts at semicolons and writes commas in its numbers, or at tabs', () => {
    const out = stored([
      {
        kind: 'sensor',
        owned: true,
        price: 12.5,
        notes: 'a;b, c\td',
        part: { name: 'one', widthMm: { value: 35.9, plusMinus: 0.05, origin: 'measured' }, heightMm: 24, pixelPitchUm: 4.35 },
      },
      { kind: 'relay', owned: false, part: { name: 'two', kind: 'tube-lens', focalLengthMm: 200, frontPrincipalPlaneFromRimMm: -12.75 } },
    ]);
    // Cell by cell, as a spreadsheet saves what it has read.
    const cells = tableOf(out)
      .replace(/"([^"]*)"/g, (_, inner: string) => encodeURIComponent(inner))
      .split(',');
    for (const cut of [';', '\t']) {
      const table = cells.map((cell) => (/%/.test(cell) ? `"${decodeURIComponent(cell)}"` : cell.replace(/(\d)\.(\d)/, '$1,$2'))).join(cut);
      expect(table).toContain(`35,9${cut}0,05${cut}measured`);
      expect([...(takeIn(table).contents?.parts.values() ?? [])].map(asOwn)).toEqual(out.map(asOwn));
    }
  });

  test('text, apostrophes and empty text included', () => {
    fc.assert(
      fc.property(fc.string({ unit: fc.constantFrom(...'\'=+-@,;|\t\r\n a＝"') }), (text) => {
        expect(textIn(cellOf(text))).toBe(text);
      }),
      { numRuns: 2000 },
    );
    for (const text of ['', "'", "''", "'=1", "''=1", "' =1", 'plain', "it's", "'quoted'"]) expect(textIn(cellOf(text)), text).toBe(text);
    expect(textIn('')).toBeUndefined();
    expect([cellOf('plain, =no'), cellOf("it's"), cellOf('')]).toEqual(["plain,' =no", "it's", "'"]);
  });
});

describe('no formula', () => {
  /** Cells as any reader cuts them that takes quotation marks for nothing and every usual sign for a cut. */
  const crudely = (table: string): string[] => table.replaceAll('"', '').split(/[,;|\t\r\n]/);
  const FORMULA = /^ *[=+@＝＋－＠]|^ *-(?!\d)/;
  test('begins a cell, wherever the lines are cut', () => {
    fc.assert(
      fc.property(fc.array(ownPart, { minLength: 1, maxLength: 3 }), (parts) => {
        for (const cell of crudely(tableOf(stored(parts)))) expect(cell).not.toMatch(FORMULA);
      }),
      { numRuns: RUNS },
    );
  });
  test.each(['=1+1', '+1', '-1+1', '@sum', '\t=1', '\r=1', '\n=1', 'a;=1', 'a,=1', 'a\n-b', 'a|=1', '  =1', '＝1', 'a;"=1"', '"=1'])(
    '%j gets an apostrophe',
    (text) => {
      const cell = cellOf(text);
      expect(cell).toContain("'");
      for (const piece of crudely(cell)) expect(piece).not.toMatch(/^ *[=+\-@＝]/);
    },
  );
  test('numbers below zero stay numbers', () => {
    const table = tableOf(
      stored([
        { kind: 'relay', owned: true, part: { name: 'x', kind: 'tube-lens', focalLengthMm: 200, frontPrincipalPlaneFromRimMm: -12.5 } },
      ]),
    );
    expect(table.split(/[,\r\n]/)).toContain('-12.5');
  });
  test('JSON in a cell hides what could cut or compute, and reads the same', () => {
    const value = { class: 'singlet', crown: '=a;b|c@d', radii: [-1, 2] };
    expect(jsonCell(value)).not.toMatch(/[=;|@]/);
    expect(JSON.parse(jsonCell(value))).toEqual(value);
  });
});

test('a table begins with the mark by which spreadsheets know UTF-8, and has only the columns in use', () => {
  const part = { name: 'Größe 4/3', widthMm: 17.3, heightMm: 13, pixelPitchUm: { value: 3.3, plusMinus: 0.1 } };
  expect(tableOf(stored([{ kind: 'sensor', owned: false, part }]))).toBe(
    '\uFEFFid,kind,owned,price,notes,name,widthMm,heightMm,pixelPitchUm,pixelPitchUm ±\r\ngro-e-4-3,sensor,no,,,Größe 4/3,17.3,13,3.3,0.1\r\n',
  );
});

describe('bad rows', () => {
  const HEAD =
    'id,kind,owned,price,notes,name,relayKind,focalLengthMm,focalLengthMm ±,focalLengthMm origin,focalLengthMm marked,widthMm,heightMm,pixelPitchUm,glass';
  const rows = (...lines: string[]) => takeIn([HEAD, ...lines].join('\r\n'));
  const good = 'good,relay,yes,10,fine,A tube lens,tube-lens,200,,,,,,,';

  test('are told by their line, text of several lines counted, and the good ones are kept', () => {
    const { contents, answer } = rows(
      'a,relay,yes,,"two\r\nlines",A,tube-lens,200,,,,,,,',
      'b,relay,perhaps,,,B,tube-lens,200,,,,,,,',
      '',
      ',,,,,,,,,,,,,,',
      'c,relay,yes,dear,,C,tube-lens,long,,,,,,,',
      good,
      'Not an id,relay,yes,,,D,tube-lens,200,,,,,,,',
      'e,sensor,yes,,,E,,,,,,36,24,4,{oops',
      'f,relay,yes,,,F,tube-lens,,0.5,measured,200,,,,',
      'good,relay,yes,10,fine,Another,tube-lens,200,,,,,,,',
      'plan-10x-0-25-200,relay,yes,,,G,tube-lens,200,,,,,,,',
      'h,relay,yes,,,H,tube-lens,200,,,,36,,,',
      'i,relay,yes,,,I,tube-lens,200,,,,,,,,=more',
      ',relay,yes,,,,tube-lens,200,,,,,,,',
      'j,lens,yes,,,J,tube-lens,200,,,,,,,',
    );
    expect(answer).toMatchObject({ added: 2, replaced: 0, unchanged: 0 });
    expect([...(contents?.parts.keys() ?? [])]).toEqual(['a', 'good']);
    const told = answer.refused.map(({ line, id, problems }) => [line, id, problems.map(({ path, code }) => `${path} ${code}`).join()]);
    expect(told).toEqual([
      [4, 'b', '/owned wrongType'],
      [7, 'c', '/price wrongType,/part/focalLengthMm wrongType'],
      [9, 'Not an id', '/id wrongId'],
      [10, 'e', '/part/glass notJson'],
      [11, 'f', '/part/focalLengthMm/value missing'],
      [12, 'good', '/id idTwice'],
      [13, 'plan-10x-0-25-200', '/id catalogueId'],
      [14, 'h', '/part unknownName'],
      [15, 'i', ' tooManyCells'],
      [16, undefined, '/part/name missing'],
      [17, 'j', '/kind notOneOf'],
    ]);
    for (const { problems } of answer.refused)
      for (const p of problems) expect(`${p.message}${p.given}`.length * p.expected.length).toBeGreaterThan(0);
  });

  test('a row whose id is taken is refused, or replaces where that is asked for', () => {
    const { contents } = rows(good);
    const other = good.replace('200', '180');
    expect(takeIn(`${HEAD}\n${other}`, contents).answer).toMatchObject({
      added: 0,
      refused: [{ line: 2, id: 'good', problems: [{ code: 'idTaken' }] }],
    });
    expect(takeIn(`${HEAD}\n${other}`, contents).contents).toBeUndefined();
    const replaced = takeIn(`${HEAD}\n${other}`, contents, true);
    expect(replaced.answer).toEqual({ added: 0, replaced: 1, unchanged: 0, refused: [] });
    expect(replaced.contents?.parts.get('good')).toMatchObject({ version: 2, part: { focalLengthMm: 180 } });
    const sensor = 'good,sensor,yes,,,S,,,,,,36,24,4,';
    expect(takeIn(`${HEAD}\n${sensor}`, contents, true).answer.refused).toMatchObject([
      { problems: [{ path: '/kind', code: 'kindChanged' }] },
    ]);
  });

  test('without an id one is made, and the same part is not taken in twice', () => {
    const line = ',relay,yes,,,A tube lens,tube-lens,200,,,,,,,';
    const first = rows(line, line);
    expect([...(first.contents?.parts.keys() ?? [])]).toEqual(['a-tube-lens', 'a-tube-lens-2']);
    expect(takeIn(`${HEAD}\n${line}\n${line}\n${line}`, first.contents).answer).toMatchObject({ added: 1, unchanged: 2 });
  });

  test.each([
    ['nothing', '', /no line|lacks/],
    ['prose', 'Dear drawer,\nplease hold this.', /column that means nothing/],
    ['a column of somebody else', `${HEAD},bought at\n${good},here`, /column that means nothing/],
    ['a column twice', `${HEAD},name\n${good},x`, /column twice/],
    ['no column owned', 'kind,name\nrelay,x', /lacks a column/],
    ['a quotation that never ends', `${HEAD}\na,relay,yes,,"never ends`, /no whole table/],
    ['more parts than a drawer holds', `${HEAD}\n${`${good}\n`.repeat(2001)}`, /more parts/],
  ])('%s is no table of ours', (_, table, message) => {
    expect(() => takeIn(table)).toThrow(message);
  });
});
