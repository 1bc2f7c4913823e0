import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { isWhole, readObjective, readRelay, readSensor } from '../../../core/engravings.ts';

describe('whatever is typed', () => {
  it.each([
    ['10x/0.25 200', readObjective],
    ['5 D 58 mm', readRelay],
    ['200/4', readRelay],
    ['36 x 24 4.35', readSensor],
  ] as const)('%s is a part, and with a number more that means nothing is none', (text, read) => {
    expect(isWhole(read(text))).toBe(true);
    expect(isWhole(read(`${text} frog`))).toBe(true);
    for (const more of ['7777', '#9', '½', 'no.3']) expect([more, isWhole(read(`${text} ${more}`))]).toEqual([more, false]);
  });

  const PIECES =
    '5 58 200 0.25 10x 10x/0.25 164.5 160 ∞/0.17 f/4 f4 f f= D mm +3 Ø 52 Ø24 x 0.75 M58 close-up tube lens 70-200 at 36 24 36x24 4.35 µm MP APS-C full frame 1 inch oil n , . / - × frog'.split(
      ' ',
    );
  const line = fc
    .array(fc.tuple(fc.constantFrom(...PIECES), fc.constantFrom(' ', ' ', ' ', '')), { maxLength: 7 })
    .map((pieces) => pieces.flat().join(''));

  it.each([
    ['objective', readObjective],
    ['relay', readRelay],
    ['sensor', readSensor],
  ] as const)('an answer settles what the line of the %s asks, and every part is made of numbers', (_, read) => {
    let seen = 0;
    fc.assert(
      fc.property(line, (text) => {
        const { part, asks, needs, unread } = read(text);
        expect(JSON.stringify(part)).not.toMatch(/null/);
        if (text.trim() !== '') expect(Object.keys(part).length + unread.length + asks.length + needs.length).toBeGreaterThan(0);
        for (const { question, answers } of asks) {
          expect(answers.length).toBeGreaterThan(1);
          expect(answers.length).toBeLessThan(5);
          for (const answer of answers) {
            seen++;
            expect(
              read(answer.text).asks.map((ask) => ask.question),
              `${text} -> ${answer.text}`,
            ).not.toContain(question);
          }
        }
      }),
      { numRuns: Number(process.env.RUNS ?? 500) },
    );
    expect(seen).toBeGreaterThan(30);
  });
});
