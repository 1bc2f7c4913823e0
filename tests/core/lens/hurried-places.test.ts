import { describe, expect, it } from 'vitest';
import { hurrying } from '../../../core/lens/hurried.ts';
import type { GlassRelay, Glassworks, SharpQuestion } from '../../../core/pairing/glassworks.ts';
import type { Relay } from '../../../core/parts/relay.ts';

const relayOf = (name: string): Relay => ({ kind: 'supplementary', name }) as Relay;
const RELAY = relayOf('one');

/** One whole stop of 5 mm, which nothing cuts. */
const asked = (pupilDistanceMm: number, more: Partial<SharpQuestion> = {}): SharpQuestion => ({
  discs: { walk: [0], radius: [5] },
  pupilDistanceMm,
  frequencyLpPerMm: 30,
  relativeContrast: 0.8,
  focus: 'one frame',
  spectrum: 'photopic',
  wavelengthNm: 550,
  scaleMm: 200,
  limitMm: 8,
  ...more,
});

/** Glass whose circle has the radius d² (at first) with the pupil d before it: a chord of that is told from it. */
function squares() {
  const traced: number[] = [];
  const made: string[] = [];
  let more = 0;
  const works: Glassworks = {
    relay(relay, wavelengthNm) {
      made.push(`${relay.name} ${wavelengthNm}`);
      if (relay.name === 'bad') return [];
      const glass: Partial<GlassRelay> = {
        focalLengthMm: 200,
        sharpRadiusMm({ pupilDistanceMm: d }) {
          traced.push(d);
          return d * d + more;
        },
      };
      return glass as GlassRelay;
    },
  };
  const { exact, hurried } = hurrying(works);
  const circle =
    (own: Glassworks) =>
    (question: SharpQuestion, relay = RELAY): number =>
      (own.relay(relay, 550) as GlassRelay).sharpRadiusMm(question);
  return {
    made,
    exact: circle(exact),
    hurried: circle(hurried),
    own: hurried,
    /** The places that were traced since it was last asked. */
    traced: (): number[] => traced.splice(0),
    change: (by: number): void => {
      more = by;
    },
  };
}

describe('a sharp circle in a hurry', () => {
  it('is read off the chord between the two round places about it, which are traced once', () => {
    const { hurried, traced } = squares();
    // 400 at 20 and 1600 at 40: 60 for each mm between.
    expect(hurried(asked(25))).toBeCloseTo(700, 9);
    expect(traced()).toEqual([20, 40]);
    expect(hurried(asked(35))).toBeCloseTo(1300, 9);
    expect(hurried(asked(20))).toBe(400);
    expect(hurried(asked(40))).toBe(1600);
    expect(traced()).toEqual([]);
  });

  it('traces only the side that is not known yet', () => {
    const { hurried, traced } = squares();
    hurried(asked(25));
    hurried(asked(5));
    expect(traced()).toEqual([20, 40, 0]);
    // Of three places the last one is beside it: 1600 at 40, 3600 at 60.
    expect(hurried(asked(47))).toBeCloseTo(1600 + 7 * 100, 9);
    expect(traced()).toEqual([60]);
    expect(hurried(asked(-5))).toBeCloseTo(100, 9);
    expect(traced()).toEqual([-20]);
  });

  it('traces a round place alone', () => {
    const { hurried, traced } = squares();
    expect(hurried(asked(60))).toBe(3600);
    expect(traced()).toEqual([60]);
  });

  it('is read off places that the exact way has traced, up to 20 mm apart', () => {
    const { exact, hurried, traced } = squares();
    exact(asked(30));
    exact(asked(10));
    traced();
    // 100 at 10 and 900 at 30: 40 for each mm.
    expect(hurried(asked(25))).toBeCloseTo(700, 9);
    expect(traced()).toEqual([]);
    const wider = squares();
    wider.exact(asked(10));
    wider.exact(asked(30.5));
    wider.traced();
    // 20 itself is traced then, and 930.25 at 30.5 is near enough: 530.25 in 10.5 mm.
    expect(wider.hurried(asked(25))).toBeCloseTo(400 + (5 / 10.5) * 530.25, 9);
    expect(wider.traced()).toEqual([20]);
  });

  it('takes a known place nearer than the round one instead of it, on either side', () => {
    const below = squares();
    below.exact(asked(33));
    // 1089 at 33 and 1600 at 40.
    expect(below.hurried(asked(36))).toBeCloseTo(1089 + (3 / 7) * 511, 9);
    expect(below.traced()).toEqual([33, 40]);
    const above = squares();
    above.exact(asked(35));
    // 400 at 20 and 1225 at 35: 55 for each mm.
    expect(above.hurried(asked(25))).toBeCloseTo(675, 9);
    expect(above.traced()).toEqual([35, 20]);
  });

  it('does not take a known place beyond the round one', () => {
    const { exact, hurried, traced } = squares();
    exact(asked(50));
    expect(hurried(asked(25))).toBeCloseTo(700, 9);
    expect(traced()).toEqual([50, 20, 40]);
  });

  it('knows what was traced last, whatever was known beside it', () => {
    const { exact, hurried, traced, change } = squares();
    exact(asked(20));
    exact(asked(30));
    change(1000);
    exact(asked(20));
    traced();
    // 1400 now at 20, and 900 still at 30.
    expect(hurried(asked(25))).toBeCloseTo(1150, 9);
    expect(hurried(asked(20))).toBe(1400);
    expect(traced()).toEqual([]);
  });
});

describe('where a stop may cut', () => {
  /** A stop of 5 mm at the pupil, and one of `radius` whose middle moves 100 mm for each unit of slope; 8 mm of 200 are a slope of 0.04. */
  const behind = (radius: number, walk = 100, at = 0) => ({ discs: { walk: [at, at + walk], radius: [5, radius] } });

  it.each([
    ['wide enough for the beam and its walk of 4 mm', behind(9), true],
    ['the same below the axis', behind(9, -100), true],
    ['of a hair less', behind(8.99), false],
    ['of a hair less below the axis', behind(8.99, -100), false],
    ['moving with the first', behind(5.5, 0, 60), true],
    ['narrow, in a picture half as large', { ...behind(7.01), limitMm: 4 }, true],
  ])('a stop %s', (_, more, quick) => {
    const { hurried, traced } = squares();
    expect(hurried(asked(25, more))).toBeCloseTo(quick ? 700 : 625, 9);
    expect(traced()).toEqual(quick ? [20, 40] : [25]);
  });

  it('nothing is learnt from a cut beam', () => {
    const { exact, hurried, traced } = squares();
    exact(asked(20, behind(8)));
    exact(asked(40, behind(8)));
    hurried(asked(25));
    expect(traced()).toEqual([20, 40, 20, 40]);
  });

  it('stops that cut nothing are the same question, another narrowest stop or detail is another', () => {
    const { hurried, traced } = squares();
    hurried(asked(25));
    traced();
    hurried(asked(25, behind(90)));
    expect(traced()).toEqual([]);
    hurried(asked(25, { discs: { walk: [0, 100], radius: [6, 90] } }));
    expect(traced()).toEqual([20, 40]);
    hurried(asked(25, { frequencyLpPerMm: 31 }));
    expect(traced()).toEqual([20, 40]);
  });
});

describe('what is kept', () => {
  const forty = Array.from({ length: 40 }, (_, i) => relayOf(String(i)));

  it('are the forty relays that were asked for last', () => {
    const { own, made } = squares();
    for (const relay of forty) own.relay(relay, 550);
    expect(made).toHaveLength(40);
    own.relay(relayOf('0'), 550);
    expect(made).toHaveLength(40);
    own.relay(relayOf('one more'), 550);
    made.length = 0;
    for (const name of ['0', '2', '39', 'one more']) own.relay(relayOf(name), 550);
    expect(made).toEqual([]);
    own.relay(relayOf('1'), 550);
    own.relay(relayOf('1'), 600);
    expect(made).toEqual(['1 550', '1 600']);
  });

  it('are the places of the forty questions that were asked last', () => {
    const { hurried, traced } = squares();
    const detail = (frequencyLpPerMm: number): number => hurried(asked(25, { frequencyLpPerMm }));
    for (let i = 1; i <= 40; i++) detail(i);
    expect(traced()).toHaveLength(80);
    detail(1);
    expect(traced()).toEqual([]);
    detail(41);
    traced();
    for (const known of [1, 3, 41]) detail(known);
    expect(traced()).toEqual([]);
    detail(2);
    expect(traced()).toEqual([20, 40]);
  });

  it('a relay that cannot be is told as it is', () => {
    const { own } = squares();
    expect(own.relay(relayOf('bad'), 550)).toEqual([]);
  });
});
