import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { judge } from '../../core/checked/judge.ts';
import { agrees } from '../../core/checked/printed.ts';
import { SOURCES, type SourceId } from '../../core/checked/sources.ts';
import { SUBJECTS } from '../../core/checked/subjects.ts';
import { CITATIONS } from './citations.ts';

const CHECKS = SUBJECTS.flatMap(({ checks }) => checks);
const STATED = { read: '', 'formula read': ' (formula read, number worked out from it)', 'from memory': ' (from memory)' };

/** So few digits that a hundredth can hide in them. */
const coarse = (printed: string): boolean => printed.replace(/[−\-0.]/g, '').length <= 2;

for (const { title, checks } of SUBJECTS)
  describe(title, () => {
    for (const { id, claim, known, values, how } of checks)
      it(`${id}: ${claim}${STATED[known]}`, () => {
        const cited = CITATIONS.find((citation) => citation.id === id);
        for (const value of values) {
          const { what, expected, shown, holds, fault = '' } = judge(value);
          expect(holds, `${id} ${what}: ${cited?.by} ${cited?.year ?? ''} print ${expected}, core has ${shown} (${how}) ${fault}`).toBe(
            true,
          );
          const { of, printed, cutOff = false, slack } = value;
          const misses = (by: number): boolean => !agrees(by * of(), printed, { cutOff, slack: slack?.of() ?? 0 });
          if (!coarse(printed) && !slack) expect(misses(1.01) || misses(0.99), `${id} ${what}: ${printed} hides 1 %`).toBe(true);
        }
      });
  });

describe('the checks', () => {
  const ids = CHECKS.map(({ id }) => id);

  it('are 130 or more, each once, with 590 numbers or more', () => {
    expect(ids.length).toBeGreaterThanOrEqual(130);
    expect(new Set(ids).size).toBe(ids.length);
    expect(CHECKS.reduce((sum, { values }) => sum + values.length, 0)).toBeGreaterThanOrEqual(590);
    for (const { values } of CHECKS) {
      expect(values.length).toBeGreaterThan(0);
      expect(new Set(values.map(({ what }) => what)).size).toBe(values.length);
      if (values.length > 1) for (const { what } of values) expect(what).toBeTruthy();
    }
  });

  it('are each cited here, and nothing else is', () => {
    expect(CITATIONS.map(({ id }) => id).toSorted()).toEqual(ids.toSorted());
    for (const { id, title, by, source } of CITATIONS) {
      expect(title && by).toBeTruthy();
      expect(source).toBe(CHECKS.find((check) => check.id === id)?.source);
    }
  });

  it('count a source as one where it is one work, and tell any two works apart', () => {
    const works = new Map<SourceId, Set<string>>();
    for (const { source, title, by } of CITATIONS) works.set(source, (works.get(source) ?? new Set()).add(`${by}: ${title}`));
    expect([...works.keys()].toSorted()).toEqual(Object.keys(SOURCES).toSorted());
    for (const [source, called] of works) expect([...called], source).toHaveLength(1);
    const all = [...works.values()].flatMap((called) => [...called]);
    expect(new Set(all).size).toBe(all.length);
    expect(new Set(Object.values(SOURCES)).size).toBe(all.length);
  });
});

/** Words of a citation that anybody may use. */
const ANYBODYS = new Set(
  `optics imaging resource guide engineering textbooks press infinity photo optical state university text sampling telescope
   formula repository encyclopaedia after from stored copy catalogue page others lens listing with indices third order sums kept
   tests open library tables colour`.split(/\s+/),
);

it('no author, publisher or title of a citation stands in core, api or web', () => {
  const files = ['core', 'api', 'web'].flatMap((room) =>
    readdirSync(join(import.meta.dirname, '../..', room), { recursive: true, withFileTypes: true })
      .filter((entry) => entry.isFile() && /\.(tsx?|css|html)$/.test(entry.name))
      .map((entry) => ({ name: `${entry.parentPath}/${entry.name}`, text: readFileSync(join(entry.parentPath, entry.name), 'utf8') })),
  );
  expect(files.length).toBeGreaterThan(300);
  const words = files.map(({ name, text }) => ({ name, words: new Set(text.toLowerCase().match(/[\p{L}]{4,}/gu)), text }));
  const names = new Set(CITATIONS.flatMap(({ by }) => by.toLowerCase().match(/[\p{L}]{4,}/gu) ?? []));
  const telling = [...names].filter((name) => !ANYBODYS.has(name));
  expect(telling.length).toBeGreaterThan(40);
  for (const name of telling)
    expect(
      words.filter((file) => file.words.has(name)).map((file) => file.name),
      name,
    ).toEqual([]);
  // A title of a word or two is a word of the trade.
  for (const { title } of CITATIONS.filter((cited) => cited.title.split(' ').length > 3))
    expect(
      files.filter(({ text }) => text.includes(title)).map(({ name }) => name),
      title,
    ).toEqual([]);
});
