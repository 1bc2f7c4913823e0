import { describe, expect, test } from 'vitest';
import { limitsOf, type Want, type WindowAnswer, wantSchema, windowOf } from '../../core/choosing.ts';
import { type Pairing, pairingSchema, short } from '../../core/index.ts';
import opening from '../../data/opening.json';
import { axisOf, barsOf, COMMON_RELAYS, lyingWithin, type Mark, ownMarks, placedMarks } from '../../web/charts/window-geometry.ts';
import { widthOf } from '../../web/plates/rows.ts';

/** The drawing of a window, without a page. */

const PAIRING: Pairing = pairingSchema.parse(opening.pairing);
const answerTo = (want: Want, vary: WindowAnswer['vary'] = '/relay/focalLengthMm', pairing = PAIRING): WindowAnswer =>
  windowOf({ pairing, vary, limits: limitsOf(wantSchema.parse(want)) });
const WISH: Want = { magnification: [8, 14], minCoveredShare: 0.8, maxLengthMm: 500 };

describe('the axis', () => {
  test('has equal ratios as equal lengths for a relay, equal lengths for a space', () => {
    const relay = axisOf(answerTo(WISH), 100, 700);
    expect([relay.x(50), relay.x(600)]).toEqual([100, 700]);
    expect(relay.x(200) - relay.x(100)).toBeCloseTo(relay.x(400) - relay.x(200), 9);
    const space = axisOf(answerTo({ maxLengthMm: 400 }, '/infinitySpaceMm'), 0, 600);
    expect(space.x(150)).toBeCloseTo(300, 9);
    for (const axis of [relay, space, axisOf(answerTo(WISH), 26, 364), axisOf(answerTo(WISH, '/relay/clearApertureMm'), 26, 364)]) {
      expect(axis.told.length).toBeGreaterThan(4);
      for (const [i, v] of axis.told.entries())
        if (i > 0) expect(axis.x(v) - axis.x(axis.told[i - 1] as number)).toBeGreaterThan(widthOf(short(v)) + 4);
      expect(axis.fine.length).toBeGreaterThanOrEqual(axis.told.length);
    }
  });
});

describe('the bars', () => {
  test('stand where each limit is met; what closes the window is told from what only ends, and from what goes on', () => {
    const answer = answerTo(WISH);
    const bars = barsOf(answer, { x: (v) => v });
    const at = Object.fromEntries(bars.map((bar) => [bar.name, bar.spans[0]]));
    const [low, high] = answer.window[0] as [number, number];
    expect(at.frameCovered).toEqual({ a: low, b: 600, low: 'closes', high: 'beyond' });
    expect(at.magnificationAtMost).toEqual({ a: 50, b: high, low: 'beyond', high: 'closes' });
    expect(at.magnificationAtLeast).toMatchObject({ low: 'limit', high: 'beyond' });
    expect(at.length).toMatchObject({ low: 'beyond', high: 'limit' });
    expect(bars.map(({ words }) => words)).toContain('up to 280 mm');
  });
  test('of two limits that exclude each other both closing ends are told; what is met nowhere or not known has no bar', () => {
    const subject = { widthMm: 0.9, heightMm: 2.6 };
    const apart = answerTo({ subject, minCoveredShare: 0.3, finestDetailUm: 1.4 }, undefined, {
      ...PAIRING,
      subject,
      sensor: { ...PAIRING.sensor, pixelPitchUm: 7 },
    });
    expect(apart.conflict?.limits).toEqual(['subjectFits', 'finestDetail']);
    const ends = barsOf(apart, { x: (v) => v }).flatMap(({ name, spans }) => spans.map(({ low, high }) => [name, low, high]));
    expect(ends).toContainEqual(['subjectFits', 'beyond', 'closes']);
    expect(ends).toContainEqual(['finestDetail', 'closes', 'beyond']);
    const { clearApertureMm: _, maleThread: __, ...relay } = PAIRING.relay;
    const bars = barsOf(answerTo({ minCornerIllumination: 0.5, magnification: [31, 40] }, undefined, { ...PAIRING, relay }), {
      x: (v) => v,
    });
    expect(bars.map(({ name, known, spans, words }) => [name, known, spans.length, words])).toEqual([
      ['magnificationAtLeast', true, 0, 'nowhere'],
      ['magnificationAtMost', true, 1, 'everywhere'],
      ['cornerLight', false, 0, 'not known'],
    ]);
  });
});

describe('the marks', () => {
  const answer = answerTo(WISH);
  const own = (at: number, label: string): Mark => ({ at, label, kind: 'own' });

  test('are the powers of close-up lenses at their focal lengths, and lie in the window or not', () => {
    const axis = axisOf(answer, 26, 364);
    const placed = placedMarks(
      COMMON_RELAYS.filter(({ kind }) => kind === 'close-up'),
      axis,
      answer,
    );
    expect(placed.map(({ mark }) => mark.label)).toEqual(['+10', '+8', '+6', '+5', '+4', '+3', '+2']);
    for (const { mark, x, within } of placed) {
      expect(x).toBeCloseTo(axis.x(1000 / Number(mark.label)), 9);
      expect(within, mark.label).toBe(['+5', '+4'].includes(mark.label));
    }
    expect(lyingWithin(answer, [])).toBe('Of what is commonly made close-up lenses of +5 and +4 D and camera lenses of 200 mm lie there.');
    expect(lyingWithin(answer, [own(210, 'the old one'), own(90, 'short')])).toMatch(/ Of your own: the old one\.$/);
    expect(lyingWithin(answer, [own(90, 'short')])).toMatch(/ Of your own: none\.$/);
    expect(lyingWithin(answerTo({ magnification: [1, 100] }), [])).toBe('');
  });

  test('have words that never run into each other nor are run through, on the narrowest drawing too', () => {
    for (const width of [260, 390, 800]) {
      const axis = axisOf(answer, 26, width - 26);
      const crowd = Array.from({ length: 9 }, (_, i) => own(60 + i * i * 6, `a relay with a name ${i}`));
      const hung = placedMarks(crowd, axis, answer).map((m) => ({ ...m, begins: m.middle, ends: m.middle + widthOf(m.mark.label) }));
      expect(hung.length).toBe(9);
      for (const a of hung) {
        expect(a.ends).toBeLessThanOrEqual(width);
        for (const b of hung)
          if (a !== b && a.row === b.row) expect(a.ends < b.begins || b.ends < a.begins, `${a.mark.label} ${b.mark.label}`).toBe(true);
      }
      for (const kind of ['close-up', 'lens'] as const) {
        const placed = placedMarks(
          COMMON_RELAYS.filter((m) => m.kind === kind),
          axis,
          answer,
        );
        for (const a of placed)
          for (const b of placed)
            if (a !== b && a.row === b.row)
              expect(Math.abs(a.middle - b.middle)).toBeGreaterThan((widthOf(a.mark.label) + widthOf(b.mark.label)) / 2);
      }
    }
    // A tick farther right goes down past the words of what stands left of it.
    const two = placedMarks([own(195, 'left'), own(200, 'right')], axisOf(answer, 26, 364), answer);
    expect(two.map(({ row }) => row)).toEqual([1, 0]);
  });

  test('of one’s own are those marked as own, by focal length or power, with names cut short', () => {
    const relay = { kind: 'supplementary' } as const;
    expect(
      ownMarks([
        { part: { ...relay, powerDioptre: { value: 4, plusMinus: 0.1 }, name: 'mine' }, own: { owned: true } },
        { part: { ...relay, focalLengthMm: 135 }, own: { owned: true } },
        { part: { ...relay, focalLengthMm: 100, name: 'A name that goes on and on and on' }, own: {} },
        { part: { ...relay, focalLengthMm: 300 } },
        { part: relay, own: {} },
      ]),
    ).toEqual([
      { at: 250, label: 'mine', kind: 'own' },
      { at: 135, label: '135 mm', kind: 'own' },
      { at: 100, label: 'A name that goes on and o…', kind: 'own' },
    ]);
  });
});
