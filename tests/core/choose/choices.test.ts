import { describe, expect, it } from 'vitest';
import { valueBench } from '../../../core/choose/values.ts';
import { type Asked, type Choices, choosing, limitsOf, type OneMore, oneMore, wantSchema } from '../../../core/choosing.ts';
import { glassworks } from '../../../core/glassworks.ts';
import { amount, compare, evaluate, FIGURE_IDS, numberIn, type Pairing, pairingSchema, report } from '../../../core/index.ts';
import { manyParts } from '../../support/many-parts.ts';
import { random } from '../../support/random.ts';
import { ungranted, type Wish } from './brute-force.ts';
import { OBJECTIVES, PLAIN_RELAYS, RELAYS, SENSORS } from './catalogue.ts';

const CAMERA = (SENSORS.find(({ id }) => id === 'aps-c-23-5-26mp') as (typeof SENSORS)[number]).part;

const asked = (want: Wish & { coverGlassMm?: number }, more: Partial<Asked> = {}): Asked => ({
  want: wantSchema.parse(want),
  sensor: CAMERA,
  objectives: OBJECTIVES,
  relays: PLAIN_RELAYS,
  infinitySpacesMm: [60],
  sort: { by: 'resolvedDetailUm', first: 'least' },
  frontier: ['resolvedDetailUm', 'objectFieldWidthMm'],
  most: 12,
  ...more,
});

/** All steps of a search, how many they were, and what it comes to. */
function finished<T>(search: Generator<unknown, T>): { answer: T; steps: number } {
  for (let steps = 0; ; steps++) {
    const { done, value } = search.next();
    if (done) return { answer: value as T, steps };
  }
}
const chosen = (question: Asked): Choices => finished(choosing(question)).answer;

const CIRCLES_OF = ['correctedCircleMm', 'litCircleMm', 'sharpCircleMm'] as const;

/** A pairing with one number changed, by hand. */
function changed(pairing: Pairing, path: string, value: number): Pairing {
  const copy = structuredClone(pairing) as unknown as Record<string, Record<string, unknown>>;
  const [, part = '', name = ''] = path.split('/');
  if (name === '') (copy as Record<string, unknown>)[part] = value;
  else {
    (copy[part] as Record<string, unknown>)[name] = value;
    if (name === 'focalLengthMm') {
      for (const other of ['powerDioptre', 'focalLengthRangeMm']) delete (copy[part] as Record<string, unknown>)[other];
    }
  }
  return copy as unknown as Pairing;
}

const WISHES: Wish[] = [
  { subject: { widthMm: 1, heightMm: 1.3 }, minCornerIllumination: 0.9, finestDetailUm: 1.4, samplingRatio: [1, 3] },
  { subject: { widthMm: 1.2, heightMm: 2, shareOfFrame: 0.8 }, finestDetailUm: 2, maxLengthMm: 300 },
  { magnification: [7, 8], minCoveredShare: 0.95 },
  { fieldWidthMm: [2.5, 3], samplingRatio: [1.2, 2.2], minCornerIllumination: 0.8 },
  { subject: { widthMm: 3 }, lightingClearance: { depthMm: 20, minConeDeg: 35 }, maxLengthMm: 260 },
];

describe('choices', () => {
  it('meet every limit that they are told with, by the figures that they are told with', () => {
    let told = 0;
    let bounds = 0;
    for (const wish of WISHES) {
      const { choices } = chosen(asked(wish, { most: 3, frontier: ['resolvedDetailUm', 'totalLengthMm'] }));
      for (const { pairing, figures, limits, bites } of choices) {
        const evaluation = evaluate(pairing);
        expect(figures).toEqual(Object.fromEntries(FIGURE_IDS.map((id) => [id, evaluation.answers[id]])));
        expect(ungranted(wish, evaluation, 0)).toBe(0);
        expect(limits.map(({ name }) => name)).toEqual(limitsOf(wantSchema.parse(wish)).map(({ name }) => name));
        const margins = limits.flatMap(({ margin }) => (margin === undefined ? [] : [margin]));
        expect(limits.find(({ name }) => name === bites)?.margin).toBe(Math.min(...margins));
        for (const { meets, surely, without, figure, limit } of limits) {
          expect(meets).toBe(true);
          const answer = figures[figure as (typeof FIGURE_IDS)[number]];
          if (answer.state !== 'known') continue;
          const ends = [answer.low as number, answer.high as number];
          const value = answer.value;
          // On the same side of the limit wherever it is, and no circle that it takes the smallest of unknown.
          const bound =
            /goodField|coveredShare/.test(figure as string) && CIRCLES_OF.some((id) => evaluation.answers[id].state === 'unknown');
          expect(without !== undefined).toBe(bound);
          expect(surely).toBe(!bound && ends.every((x) => (value >= limit ? x >= limit : x <= limit) || x === value));
          if (bound) bounds++;
          told++;
        }
      }
    }
    expect(told).toBeGreaterThan(25);
    expect(bounds).toBeGreaterThan(3);
  });

  it('have near misses that miss what they say, and whose remedy, applied, meets every limit', () => {
    let remedies = 0;
    const paths = new Set<string>();
    const sensor = (SENSORS.find(({ id }) => id === 'full-frame-61mp') as (typeof SENSORS)[number]).part;
    for (const wish of WISHES)
      for (const { pairing, missing, wouldMeetIf } of chosen(asked(wish, { sensor, infinitySpacesMm: [60], most: 1 })).nearMisses) {
        expect(missing.length).toBeGreaterThan(0);
        expect(ungranted(wish, evaluate(pairing), 0)).toBe(missing.length);
        if (!wouldMeetIf) continue;
        remedies++;
        paths.add(wouldMeetIf.path);
        // As it is told it can be sent on: no second way of saying the same contradicts it.
        const told = wouldMeetIf.pairing;
        expect(pairingSchema.safeParse(told).success).toBe(true);
        expect([told.objective, told.sensor, told.subject]).toEqual([pairing.objective, pairing.sensor, pairing.subject]);
        const [part, name] = wouldMeetIf.path.slice(1).split('/') as ['relay', 'focalLengthMm' | undefined];
        const now = name ? told[part][name] : told[part as 'infinitySpaceMm'];
        expect(amount(now as number)).toBe(wouldMeetIf.value);
        expect(ungranted(wish, evaluate(wouldMeetIf.pairing), 0), JSON.stringify(wouldMeetIf)).toBe(0);
        // Half-way there it does not do yet: no larger a change than is needed, to its two digits.
        const half = (wouldMeetIf.from + wouldMeetIf.value) / 2;
        expect(ungranted(wish, evaluate(changed(pairing, wouldMeetIf.path, half)), 0)).toBeGreaterThan(0);
      }
    expect(remedies).toBeGreaterThan(12);
    expect(paths.size).toBeGreaterThan(1);
  });

  it('call a tie what differs by less than the ± of the difference, as a comparison has it', () => {
    const { choices } = chosen(
      asked(
        {},
        {
          objectives: OBJECTIVES.filter((_, i) => i % 7 === 0),
          relays: PLAIN_RELAYS.filter((_, i) => i % 5 === 0),
          sort: { by: 'totalLengthMm', first: 'least' },
        },
      ),
    );
    const seen = { level: 0, apart: 0, ties: 0 };
    for (let i = 1; i < choices.length; i++) {
      const pair = [choices[i - 1], choices[i]].map((choice) => choice?.pairing as Pairing);
      const figures = compare(pair).differences[0]?.figures as NonNullable<ReturnType<typeof compare>['differences'][number]>['figures'];
      const levelIn = (id: 'totalLengthMm' | 'resolvedDetailUm' | 'objectFieldWidthMm'): boolean => {
        const difference = figures[id];
        if (difference.state !== 'known') return false;
        // Within its ±, or under one part in a hundred of the larger.
        const larger = Math.max(...[i - 1, i].map((k) => numberIn((choices[k] as Choices['choices'][number]).figures[id]) as number));
        return ((difference.low as number) <= 0 && (difference.high as number) >= 0) || Math.abs(difference.value) < 0.01 * larger;
      };
      const level = levelIn('totalLengthMm');
      // A tie is one in all that is asked about: here the sort and the two figures of the frontier.
      const tie = level && levelIn('resolvedDetailUm') && levelIn('objectFieldWidthMm');
      expect(choices[i]?.levelWithPrevious ?? false).toBe(level);
      expect(choices[i]?.tieWithPrevious ?? false).toBe(tie);
      expect(choices[i]?.line.includes('A tie on paper')).toBe(tie);
      seen[level ? 'level' : 'apart']++;
      if (tie) seen.ties++;
    }
    expect(seen.level).toBeGreaterThan(0);
    expect(seen.apart).toBeGreaterThan(0);
  });

  it('say what a cover glass does that the objective is not made for, and what is not known', () => {
    const want = { magnification: [15, 25] as [number, number] };
    const slides = (coverGlassMm: number) => chosen(asked({ ...want, coverGlassMm }, { most: 40 })).choices;
    const told = (choices: Choices['choices']) => new Map(choices.map(({ ids, cautions }) => [ids.objective, cautions.join(' ')]));
    const [bare, covered] = [told(slides(0)), told(slides(0.17))];
    const made = (id: string | undefined): unknown => OBJECTIVES.find((o) => o.id === id)?.part.coverGlassMm;
    let unsuitable = 0;
    for (const [id, cautions] of bare) {
      const wrong = cautions.match(/Made for a cover glass of 0\.17 mm and used without one: ([\d.]+) waves/);
      if (wrong) {
        unsuitable++;
        expect(made(id)).toBe(0.17);
        expect(Number(wrong[1])).toBeGreaterThanOrEqual(0.07);
        expect(covered.get(id)).not.toContain('waves of spherical');
      }
      expect(cautions).not.toContain('Engraved for a cover glass');
    }
    expect(unsuitable).toBeGreaterThan(0);
  });

  it('keep a missing price apart: it excludes nothing, ranks last and is counted', () => {
    const priced = PLAIN_RELAYS.map((relay, i) => (i % 3 === 0 ? relay : { ...relay, price: 100 + 10 * i }));
    const owned = OBJECTIVES.map((objective) => ({ ...objective, owned: true }));
    const question = asked(
      { subject: { widthMm: 1.5 }, maxPrice: 200 },
      { objectives: owned, relays: priced, sort: { by: 'price', first: 'least' }, most: 200 },
    );
    const { choices, feasible, unpriced } = chosen(question);
    const whole = choices.filter(({ priceMissing }) => !priceMissing);
    expect(unpriced).toBe(choices.length - whole.length);
    expect(feasible).toBe(choices.length);
    expect(unpriced).toBeGreaterThan(0);
    expect(choices.slice(0, whole.length)).toEqual(whole);
    const prices = whole.map(({ price }) => price as number);
    expect(prices).toEqual(prices.toSorted((a, b) => a - b));
    expect(Math.max(...prices)).toBeLessThanOrEqual(200);
    for (const { limits } of choices.slice(whole.length))
      expect(limits.at(-1)).toMatchObject({ name: 'price', state: 'unknown', meets: true, surely: false });
  });

  it('trace glass only where nothing else decides, and find the same; each traced pairing is a step at which it can be ended', () => {
    const works = glassworks();
    const glassy = RELAYS.filter(({ part }) => part.glass).slice(0, 2);
    const objectives = OBJECTIVES.filter(({ id }) => /^(lwd-apo-10x|plan-10x-0-25-200|lwd-apo-5x)/.test(id));
    const wish: Wish = { subject: { widthMm: 1, heightMm: 1.2 }, finestDetailUm: 1.5 };
    const question = asked(wish, { objectives, relays: glassy, most: 50 });
    const { answer, steps } = finished(choosing(question, works));
    const all = objectives.flatMap(({ part: objective }) =>
      glassy.map(({ part: relay }) => evaluate({ objective, relay, sensor: CAMERA, infinitySpaceMm: 60 }, works)),
    );
    expect(answer.considered).toBe(all.length);
    expect(answer.feasible).toBe(all.filter((evaluation) => ungranted(wish, evaluation, 0) === 0).length);
    expect(answer.feasible).toBeGreaterThan(0);
    expect(steps).toBeGreaterThan(answer.feasible);
  });
});

describe('values on the bench', () => {
  it('are those of the whole evaluation, whatever was put there before', () => {
    const r = random(50_777);
    const { objectives, relays } = manyParts(12);
    const bench = valueBench(FIGURE_IDS);
    const subject = { widthMm: 1, heightMm: 1.4, depthMm: 0.3 };
    for (let i = 0; i < 60; i++) {
      const pairing: Pairing = {
        objective: r.oneOf([...objectives, ...OBJECTIVES]).part,
        relay: r.oneOf([...relays, ...PLAIN_RELAYS]).part,
        sensor: CAMERA,
        infinitySpaceMm: r.integer(10, 150),
        subject,
      };
      bench.put(pairing);
      const { answers } = evaluate(pairing);
      bench.read()?.forEach((value, k) => {
        const answer = answers[FIGURE_IDS[k] as (typeof FIGURE_IDS)[number]];
        if (answer.state === 'known') expect(value).toBe(answer.value);
        else if (answer.state === 'unlimited') expect(value).toBe(Number.POSITIVE_INFINITY);
        else expect(value).toMatchObject({ state: answer.state });
      });
    }
  });
});

describe('one more part', () => {
  const owning = (objectives: string[], relays: string[], want: Wish): OneMore =>
    finished(
      oneMore(
        asked(want, {
          objectives: OBJECTIVES.map((o) => ({ ...o, owned: objectives.includes(o.id) })),
          relays: PLAIN_RELAYS.map((o) => ({ ...o, owned: relays.includes(o.id) })),
        }),
      ),
    ).answer;

  it('opens, by each part tried alone with what is owned, what a search with it finds', () => {
    const wish: Wish = { subject: { widthMm: 1, heightMm: 1.3 }, finestDetailUm: 1.4 };
    const { owned, openings, others } = owning(['plan-4x-0-1-200'], ['close-up-5d-58', 'tele-200-f4'], wish);
    expect(owned).toMatchObject({ objectives: 1, relays: 2, feasible: 0 });
    expect(openings.length).toBeGreaterThan(0);
    // A relay more does not help an objective that cannot resolve it.
    expect(new Set(openings.map(({ kind }) => kind))).toEqual(new Set(['objective']));
    for (const { id, opens, verify, gains, loses } of openings) {
      const objective = OBJECTIVES.find((o) => o.id === id) as (typeof OBJECTIVES)[number];
      const due = PLAIN_RELAYS.filter((relay) => ['close-up-5d-58', 'tele-200-f4'].includes(relay.id)).filter(
        ({ part }) => ungranted(wish, evaluate({ objective: objective.part, relay: part, sensor: CAMERA, infinitySpaceMm: 60 }), 0) === 0,
      );
      expect(opens).toBe(due.length);
      expect(verify.length).toBeGreaterThan(2);
      expect([...gains, ...loses]).toEqual([]);
    }
    expect(others + openings.length).toBeGreaterThanOrEqual(OBJECTIVES.length - 1);
  });

  it('tells gains and losses against the best that is owned, only where they are sure', () => {
    const { owned, openings } = owning(['plan-10x-0-25-200', 'plan-4x-0-1-200'], ['close-up-5d-58'], { subject: { widthMm: 0.8 } });
    expect(owned.feasible).toBeGreaterThan(0);
    const seen = { gains: 0, loses: 0 };
    for (const { best, gains, loses } of openings) {
      const pair = [owned.best?.pairing, best.pairing] as [Pairing, Pairing];
      const { figures } = compare(pair).differences[0] as ReturnType<typeof compare>['differences'][number];
      for (const [list, count] of [
        [gains, 'gains'],
        [loses, 'loses'],
      ] as const)
        for (const { figure, from, to, difference } of list) {
          expect(difference).toEqual(figures[figure]);
          expect(from).toEqual(report(pair[0]).figures[figure]);
          expect(to).toEqual(best.figures[figure]);
          if (difference.state !== 'known') throw new Error(figure);
          expect(Math.sign(difference.low as number)).toBe(Math.sign(difference.high as number));
          const smallerIsBetter = /resolvedDetail|workingFNumber|frames|totalLength/.test(figure);
          expect(difference.value > 0).toBe((count === 'gains') !== smallerIsBetter);
          seen[count]++;
        }
    }
    expect(seen.gains).toBeGreaterThan(3);
    expect(seen.loses).toBeGreaterThan(3);
  });
});
