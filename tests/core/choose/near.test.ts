import { describe, expect, it } from 'vitest';
import { type NearMiss, nearMissOf } from '../../../core/choose/near.ts';
import { type Asked, type Want, wantSchema } from '../../../core/choosing.ts';
import { amount, type Objective, type Relay } from '../../../core/index.ts';
import { asking, countingWorks, GLASSY, TEN, tube } from './small.ts';

const missOf = (want: Want, relay: Relay = tube(200), more: Partial<Asked> = {}, objective: Objective = TEN): NearMiss =>
  nearMissOf(asking([objective], [relay], { want: wantSchema.parse(want), ...more }), {
    place: [0, 0, 0],
    turn: 0,
    key: 0,
    missing: 1,
    worst: -1,
  });
/** Before 20 mm a relay of f magnifies f / 20 times. */
const atLeast = (f: number): Want => ({ magnification: [f / 20, 1000] });
const atMost = (f: number): Want => ({ magnification: [0.01, f / 20] });

describe('a near miss', () => {
  it('tells the limits that it misses and no other, with the parts and what they cost', () => {
    const miss = missOf({ ...atLeast(240), maxLengthMm: 500 }, tube(200), {
      objectives: [{ part: TEN, id: 'ten', price: 300 }],
      relays: [{ part: tube(200) }],
    });
    expect(miss.missing).toEqual([expect.objectContaining({ name: 'magnificationAtLeast', meets: false, value: 10, limit: 12 })]);
    expect(miss).toMatchObject({ ids: { objective: 'ten' }, price: 300, priceMissing: ['relay'] });
    expect(miss.pairing).toMatchObject({ objective: TEN, infinitySpaceMm: 60 });
    expect(miss.cautions).toEqual([]);
  });

  it('has no remedy where it is too dear as well: no change makes it cheaper', () => {
    const dear = { objectives: [{ part: TEN, price: 300 }] };
    expect(missOf({ ...atLeast(240), maxPrice: 100 }, tube(200), dear)).not.toHaveProperty('wouldMeetIf');
    expect(missOf({ ...atLeast(240), maxPrice: 300 }, tube(200), dear)).toHaveProperty('wouldMeetIf');
  });
});

describe('the remedy of a near miss', () => {
  const remedied = (want: Want, relay?: Relay): number | undefined => missOf(want, relay).wouldMeetIf?.value;

  it('is the least other focal length, rounded away to the fewest digits that make it hardly more', () => {
    // 240.4 mm is needed: 250 would be a quarter more of a change than the 40.4 mm, 241 is not.
    expect(remedied(atLeast(240.4))).toBe(241);
    expect(remedied(atMost(160.6))).toBe(160);
    expect(remedied(atMost(159.4))).toBe(159);
    // 250 mm is a twentieth more of a change than 47.619 mm.
    expect(remedied(atLeast(247.628))).toBe(250);
    expect(remedied(atLeast(247.607))).toBe(248);
  });

  it('is the border itself where that is a round number', () => {
    expect(remedied(atMost(180))).toBe(180);
    expect(remedied(atLeast(240))).toBe(240);
    expect(remedied(atLeast(200.4))).toBe(200.4);
    expect(remedied(atMost(199.6))).toBe(199.6);
  });

  it('is a round border however far it lies, and however small it is', () => {
    const at = (want: Want, focalLengthMm: number, space: number): number | undefined =>
      missOf(want, tube(focalLengthMm), { infinitySpacesMm: [space] }).wouldMeetIf?.value;
    expect(at(atLeast(400), 209.26, 99)).toBe(400);
    expect(at(atMost(140), 270.9, 130)).toBe(140);
    expect(at({ maxLengthMm: 270 }, 177, 170)).toBe(100);
    expect(at({ maxLengthMm: 207.7, magnification: [9.03, 9.04] }, 180.7, 120)).toBe(27);
    // In the numbers of a computer 2.8 / 0.1 and 137.7 / 0.1 are a hair less than 28 and 1377.
    expect(at({ maxLengthMm: 130, magnification: [6.35, 6.37] }, 127.2, 65)).toBe(2.8);
    expect(at({ maxLengthMm: 287.7 }, 140, 150)).toBe(137.7);
    for (const mm of [0.5, 1.7, 3.3, 8.2]) expect(at({ maxLengthMm: 200 + mm, magnification: [9.9, 10.1] }, 200, mm + 0.4)).toBe(mm);
  });

  it('has six digits at most, or all of them', () => {
    expect(remedied(atLeast(200.0321))).toBe(200.033);
    const whole = remedied(atLeast(200.0032)) as number;
    expect(whole).toBeGreaterThanOrEqual(200.0032);
    expect(whole - 200.0032).toBeLessThan(5e-7);
  });

  it('is told with what it is now, and the pairing so changed', () => {
    const miss = missOf(atLeast(240.4));
    expect(miss.wouldMeetIf).toMatchObject({ path: '/relay/focalLengthMm', value: 241, from: 200 });
    expect(miss.wouldMeetIf?.pairing).toEqual({ ...miss.pairing, relay: { ...miss.pairing.relay, focalLengthMm: 241 } });
  });

  it('is looked for at 126 places in equal parts of a focal length: so narrow a window is found at any of them', () => {
    for (const i of [0, 1, 80, 124, 125]) {
      const f = 50 * 12 ** (i / 125);
      const remedy = missOf({ magnification: [(f * (1 - 1e-7)) / 20, (f * (1 + 1e-7)) / 20] }).wouldMeetIf;
      expect(Math.abs((remedy?.value as number) / f - 1), `${i}`).toBeLessThan(1.0001e-7);
    }
    const between = 50 * 12 ** (80.5 / 125);
    expect(missOf({ magnification: [(between * (1 - 1e-7)) / 20, (between * (1 + 1e-7)) / 20] })).not.toHaveProperty('wouldMeetIf');
    expect(remedied(atLeast(601))).toBeUndefined();
    expect(remedied(atMost(49))).toBeUndefined();
  });

  it('is the change that is the least part of what is usual: 300 mm of space, 550 mm of focal length', () => {
    // As long as space and focal length, 260 mm: some 20 mm less is a fifteenth of the one and a twenty-seventh of the other.
    expect(missOf({ maxLengthMm: 240.4 }).wouldMeetIf).toMatchObject({ path: '/relay/focalLengthMm', value: 180, from: 200 });
    // Where the magnification must stay the space alone may change.
    const kept = missOf({ maxLengthMm: 240.4, magnification: [9.9, 10.1] }).wouldMeetIf;
    expect(kept).toMatchObject({ path: '/infinitySpaceMm', value: 40, from: 60 });
    expect(kept?.pairing.infinitySpaceMm).toBe(40);
    expect(missOf({ maxLengthMm: 202.04, magnification: [9.9, 10.1] }).wouldMeetIf).toMatchObject({ value: 2, from: 60 });
    expect(missOf({ maxLengthMm: 200, magnification: [9.9, 10.1] }).wouldMeetIf).toMatchObject({ value: 0, from: 60 });
    expect(missOf({ maxLengthMm: 199, magnification: [9.9, 10.1] })).not.toHaveProperty('wouldMeetIf');
  });

  it('is a wider opening where the corners are dark for it; no remedy where nobody knows how wide it is', () => {
    const want: Want = { minCornerIllumination: 0.99, magnification: [9.9, 10.1], maxLengthMm: 261 };
    const remedy = missOf(want, tube(200, { clearApertureMm: 6 }), { infinitySpacesMm: [60] }).wouldMeetIf;
    expect(remedy).toMatchObject({ path: '/relay/clearApertureMm', from: 6 });
    // Seen from the corner the exit pupil of 10 mm walks 14.4 / 200 of its 80 mm: 5 + 5.77 either side and it is whole.
    expect(remedy?.value).toBeGreaterThan(2 * 5);
    expect(remedy?.value).toBeLessThan(2 * (5 + 5.9));
    const { clearApertureMm: _, ...bare } = tube(200);
    expect(missOf(want, bare)).not.toHaveProperty('wouldMeetIf');
  });

  it('meets all limits at once, and passes over what is no rig', () => {
    const rated = tube(200, { powerDioptre: 5 });
    expect(missOf(atLeast(240.4), rated).wouldMeetIf?.value).toBe(241);
    expect(missOf({ ...atLeast(240.4), maxLengthMm: 300 })).not.toHaveProperty('wouldMeetIf');
    expect(missOf({ ...atLeast(240.4), maxLengthMm: 310 })).toHaveProperty('wouldMeetIf');
  });

  it('of a relay with glass is another focal length alone, without the glass', () => {
    const { works, traced } = countingWorks();
    const of = (want: Want) =>
      nearMissOf(
        asking([TEN], [GLASSY], { want: wantSchema.parse(want) }),
        { place: [0, 0, 0], turn: 0, key: 0, missing: 1, worst: -1 },
        works,
      ).wouldMeetIf;
    expect(of({ maxLengthMm: 255, magnification: [9.9, 10.1] })).toBeUndefined();
    const other = of(atLeast(240.4));
    expect(other).toMatchObject({ path: '/relay/focalLengthMm', value: 241, from: 200 });
    expect(other?.pairing.relay.glass).toBeUndefined();
    expect(amount(other?.pairing.relay.clearApertureMm as number)).toBe(50);
    expect(traced()).toBeLessThan(40);
  });
});
