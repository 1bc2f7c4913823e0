import { describe, expect, it } from 'vitest';
import { type Asked, type Found, searching, wantSchema } from '../../../core/choosing.ts';
import { type Evaluation, type FigureId, numberIn, type Pairing } from '../../../core/index.ts';
import { type Random, random } from '../../support/random.ts';
import { costOf, evaluatedOnce, unbeaten, ungranted, type Wish } from './brute-force.ts';
import { OBJECTIVES, PLAIN_RELAYS, SENSORS } from './catalogue.ts';

const SPACES = [15, 110];
const USED = SENSORS.filter(({ id }) => /^(aps-c-23-5-26mp|full-frame-61mp)$/.test(id));
const AXES: readonly (readonly [FigureId, 'more' | 'less'])[] = [
  ['resolvedDetailUm', 'less'],
  ['goodFieldMm', 'more'],
  ['totalLengthMm', 'less'],
  ['cornerIllumination', 'more'],
  ['clearWorkingDistanceMm', 'more'],
  ['recordedDetailMegapixels', 'more'],
];

/** The catalogue's, and one of which nobody says how far it is good. */
const SHELF = [...OBJECTIVES, ...OBJECTIVES.slice(7, 8).map(({ id, part: { fieldNumberMm: _, ...part } }) => ({ id: `${id}-bare`, part }))];

const some = <T>(r: Random, items: readonly T[], count: number): T[] => {
  const left = [...items];
  return Array.from({ length: Math.min(count, left.length) }, () => left.splice(r.integer(0, left.length - 1), 1)[0] as T);
};

interface Case {
  wish: Wish;
  asked: Asked;
  pairings: { pairing: Pairing; evaluation: Evaluation | undefined; cost: { known: number; whole: boolean } }[];
}

/** A wish whose limits lie among what the parts can do, and parts of which some are owned and some have a price. */
function randomCase(r: Random): Case {
  const sensor = r.oneOf(USED);
  const bought = <P>(part: { id: string; part: P }) => ({
    ...part,
    ...(r.chance(0.3) ? { owned: true } : {}),
    ...(r.chance(0.7) ? { price: Math.round(r.between(20, 900)) } : {}),
  });
  const objectives = some(r, SHELF, r.integer(1, 9)).map(bought);
  const relays = some(r, PLAIN_RELAYS, r.integer(1, 9)).map(bought);
  const infinitySpacesMm = some(r, SPACES, r.integer(1, 3));
  const pairings = objectives.flatMap((o) =>
    relays.flatMap((relay) =>
      infinitySpacesMm.map((space) => {
        const pairing: Pairing = { objective: o.part, relay: relay.part, sensor: sensor.part, infinitySpaceMm: space };
        return { pairing, evaluation: evaluatedOnce(`${o.id} ${relay.id} ${sensor.id} ${space}`, pairing), cost: costOf(o, relay) };
      }),
    ),
  );
  const valueIn = (id: FigureId): number => {
    const answers = r.oneOf(pairings).evaluation?.answers;
    const value = answers ? numberIn(answers[id]) : undefined;
    return value !== undefined && Number.isFinite(value) && value > 0 ? value : 1;
  };
  const around = (id: FigureId, low: number, high: number): [number, number] => {
    const value = valueIn(id);
    return [low * value, high * value];
  };
  const share = (x: number): number => Math.min(1, Math.max(0.01, x));
  const p = r.between(0.1, 0.5);
  const wish: Wish = {
    ...(r.chance(0.6)
      ? {
          subject: {
            widthMm: valueIn('objectFieldWidthMm') * r.between(0.1, 1),
            ...(r.chance(0.7) ? { heightMm: valueIn('objectFieldHeightMm') * r.between(0.1, 1) } : {}),
            ...(r.chance(0.4) ? { shareOfFrame: r.between(0.05, 0.9) } : {}),
          },
        }
      : {}),
    ...(r.chance(p / 2) ? { fieldWidthMm: around('objectFieldWidthMm', 0.6, 1.8) } : {}),
    ...(r.chance(p / 2) ? { magnification: around('systemMagnification', 0.5, 1.5) } : {}),
    ...(r.chance(p) ? { finestDetailUm: valueIn('resolvedDetailUm') } : {}),
    ...(r.chance(p) ? { minWorkingDistanceMm: valueIn('clearWorkingDistanceMm') } : {}),
    ...(r.chance(p / 2) ? { lightingClearance: { depthMm: r.between(1, 20), minConeDeg: r.between(5, 60) } } : {}),
    ...(r.chance(p) ? { minCoveredShare: share(valueIn('coveredShare') * r.between(0.8, 1.02)) } : {}),
    ...(r.chance(p) ? { minCornerIllumination: share(valueIn('cornerIllumination')) } : {}),
    ...(r.chance(p / 2) ? { samplingRatio: around('samplingRatio', 0.5, 2) } : {}),
    ...(r.chance(p) ? { maxLengthMm: Math.max(10, valueIn('totalLengthMm')) } : {}),
    ...(r.chance(p) ? { maxPrice: r.between(0, 1500) } : {}),
  };
  const axes = some(r, AXES, r.integer(2, 3));
  const asked: Asked = {
    want: wantSchema.parse(wish),
    sensor: sensor.part,
    objectives,
    relays,
    infinitySpacesMm,
    sort: r.chance(0.2) ? { by: 'price', first: 'least' } : { by: r.oneOf(AXES)[0], first: r.oneOf(['least', 'greatest'] as const) },
    frontier: axes.map(([id]) => id),
    most: 5000,
  };
  return { wish, asked, pairings };
}

const finished = (asked: Asked): Found => {
  const steps = searching(asked);
  for (;;) {
    const { done, value } = steps.next();
    if (done) return value;
  }
};

const infinitySpaceOf = ({ infinitySpacesMm }: Asked, [, , s]: readonly [number, number, number]): number => infinitySpacesMm[s] as number;

describe('a search', () => {
  it('finds for 200 random wishes what a brute force finds: the same feasible pairings, sorted, and the same frontier', {
    timeout: 60_000,
  }, () => {
    const r = random(Number(process.env.SEED ?? 50_501));
    const seen = { partly: 0, infeasible: 0, all: 0, frontiers: 0, near: 0 };
    for (let i = 0; i < 200; i++) {
      const { wish, asked, pairings } = randomCase(r);
      const found = finished(asked);
      const short = pairings.map(({ evaluation, cost }) => (evaluation ? ungranted(wish, evaluation, cost.known) : undefined));
      const feasible = short.flatMap((n, turn) => (n === 0 ? [turn] : []));
      expect(found.considered).toBe(pairings.length);
      expect(found.impossible).toBe(short.filter((n) => n === undefined).length);
      expect(found.feasible).toBe(feasible.length);
      expect(
        found.best.map(({ turn }) => turn).toSorted((a, b) => a - b),
        JSON.stringify(wish),
      ).toEqual(feasible);
      expect(found.unpriced).toBe(feasible.filter((turn) => !pairings[turn]?.cost.whole).length);

      const stops = Object.values(found.stopped).reduce((sum, n) => sum + n, 0);
      expect(stops).toBe(short.reduce<number>((sum, n) => sum + (n ?? 0), 0));

      const at = (turn: number) => pairings[turn] as Case['pairings'][number];
      const figure = (turn: number, id: FigureId): number => {
        const { answers } = at(turn).evaluation as Evaluation;
        // A bound for want of the objective's field or of the light is no number to rank by.
        const isBound =
          /^(goodField|coveredShare|recordedDetail)/.test(id) &&
          [answers.correctedCircleMm, answers.litCircleMm].some((a) => a.state === 'unknown');
        return isBound ? Number.NaN : (numberIn(answers[id]) ?? Number.NaN);
      };
      const sortedBy = (turn: number): number => {
        const { by, first } = asked.sort;
        const { cost } = at(turn);
        const x = by === 'price' ? (cost.whole ? cost.known : Number.NaN) : figure(turn, by);
        return Number.isNaN(x) ? Number.POSITIVE_INFINITY : first === 'least' ? x : -x;
      };
      const keys = found.best.map(({ turn }) => sortedBy(turn));
      for (let k = 1; k < keys.length; k++) expect(keys[k] as number).toBeGreaterThanOrEqual((keys[k - 1] as number) - 1e-12);

      const ways = asked.frontier.map((id) => AXES.find(([name]) => name === id)?.[1] as 'more' | 'less');
      const rows = feasible.map((turn) => asked.frontier.map((id) => figure(turn, id)));
      const due = unbeaten(rows, ways).map((k) => feasible[k]);
      expect(found.frontier.map(({ turn }) => turn).toSorted((a, b) => a - b)).toEqual(due);

      const once = finished({ ...asked, eachPairOnce: true }).best;
      const firsts = found.best.filter(
        ({ place: [o, p] }, k) => found.best.findIndex(({ place }) => place[0] === o && place[1] === p) === k,
      );
      expect(once.map(({ turn }) => turn)).toEqual(firsts.map(({ turn }) => turn));
      for (const {
        place: [o, p],
        spacesMm,
      } of once)
        expect(spacesMm?.toSorted((a, b) => a - b)).toEqual(
          found.best
            .filter(({ place }) => place[0] === o && place[1] === p)
            .map(({ place }) => infinitySpaceOf(asked, place))
            .toSorted((a, b) => a - b),
        );

      // Of each two parts the nearest spacing, where none is feasible.
      const spaces = asked.infinitySpacesMm.length;
      const missed = Array.from({ length: pairings.length / spaces }, (_, k) =>
        Math.min(...short.slice(k * spaces, (k + 1) * spaces).map((n) => n ?? Number.POSITIVE_INFINITY)),
      )
        .filter((n) => n > 0 && Number.isFinite(n))
        .toSorted((a, b) => a - b);
      expect(found.near.map(({ missing }) => missing)).toEqual(missed.slice(0, 12));
      for (const { turn, missing } of found.near) expect(short[turn]).toBe(missing);

      if (feasible.length === 0) seen.infeasible++;
      else if (feasible.length < pairings.length) seen.partly++;
      else seen.all++;
      if (due.length > 1) seen.frontiers++;
      seen.near += missed.length > 0 ? 1 : 0;
    }
    expect(seen.partly).toBeGreaterThanOrEqual(60);
    expect(seen.infeasible).toBeGreaterThanOrEqual(20);
    expect(seen.frontiers).toBeGreaterThanOrEqual(30);
    expect(seen.near).toBeGreaterThanOrEqual(100);
  });
});
