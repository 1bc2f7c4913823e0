import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { type Batch, batch } from '../../core/batch.ts';
import { figure, Gap, leaf, type Node, openStep, type Step, step } from '../../core/figure.ts';
import { graph } from '../../core/graph.ts';
import { seeded } from './support/arbitrary-train.ts';

const named = (id: string, needs: readonly Node<number>[], of: (...xs: number[]) => number | Gap): Step<number> => step({ id, needs, of });

/** Deterministic, different for each node, and sensitive to the order of its needs. */
const mixing =
  (salt: number) =>
  (...xs: number[]): number =>
    xs.reduce((sum, x, i) => sum + Math.sin(salt + (i + 1) * x), salt);

interface Plan {
  leaves: number;
  /** Of each step: which earlier nodes it needs, whether it sees gaps, what it cannot do. */
  steps: { picks: number[]; open: boolean; fails: 'never' | 'unknown' | 'none' }[];
}

const plan: fc.Arbitrary<Plan> = fc.record({
  leaves: fc.integer({ min: 1, max: 6 }),
  steps: fc.array(
    fc.record({
      picks: fc.array(fc.nat(), { minLength: 1, maxLength: 7 }),
      open: fc.boolean(),
      fails: fc.oneof({ weight: 6, arbitrary: fc.constant('never' as const) }, fc.constantFrom('unknown' as const, 'none' as const)),
    }),
    { minLength: 1, maxLength: 25 },
  ),
});

function build({ leaves, steps }: Plan) {
  const inputs = Array.from({ length: leaves }, (_, i) => leaf(`leaf${i}`, `x${i}`, '', ''));
  const nodes: Node<number>[] = [...inputs];
  steps.forEach(({ picks, open, fails }, i) => {
    const needs = picks.map((pick) => nodes[pick % nodes.length] as Node<number>);
    const mix = mixing(i + 1);
    // Where a step fails it does so for some values only, so that gaps come and go with the leaves.
    const of = (...xs: number[]): number | Gap => {
      const value = mix(...xs);
      if (fails === 'never' || value > i + 1) return value;
      return fails === 'unknown' ? Gap.unknown(`/step${i}`) : Gap.none(`step ${i} has none`);
    };
    const seeing = (...xs: (number | Gap)[]): number | Gap => of(...xs.map((x) => (typeof x === 'number' ? x : x.missing.length - 0.5)));
    nodes.push(open ? openStep({ id: `step${i}`, needs, of: seeing }) : named(`step${i}`, needs, of));
  });
  return { inputs, nodes };
}

/** A node's value by plain recursion: no order, no sheet. */
function workedOut(node: Node<number>, leaves: ReadonlyMap<Node, unknown>): unknown {
  if (node.kind === 'leaf') return leaves.get(node);
  const values = node.needs.map((need) => workedOut(need as Node<number>, leaves));
  const gaps = values.filter((v) => v instanceof Gap);
  return gaps.length > 0 && !node.open ? Gap.join(gaps) : (node.of as (...xs: unknown[]) => unknown)(...values);
}

const value = fc.oneof(
  { weight: 5, arbitrary: fc.integer({ min: -50, max: 50 }) },
  fc.constantFrom(Gap.unknown('/a'), Gap.unknown('/b', '/a'), Gap.none('gone')),
);

/** The mark of the k-th leaf cell, on the row and at the place that it is told with. */
function markAt({ leafCells }: Batch, rows: readonly ReadonlyMap<number, string>[], k: number): string {
  const { row, place } = leafCells[k] as Batch['leafCells'][number];
  return rows[row]?.get(place) as string;
}

describe('a graph of figures', () => {
  it('stands in order of need, each node once', () => {
    fc.assert(
      fc.property(plan, (p) => {
        const { nodes } = build(p);
        const { order, place } = graph(nodes.toReversed());
        expect(new Set(order).size).toBe(order.length);
        expect(new Set(order)).toEqual(new Set(nodes));
        order.forEach((node, i) => {
          expect(place.get(node)).toBe(i);
          if (node.kind !== 'leaf') for (const need of node.needs) expect(place.get(need)).toBeLessThan(i);
        });
      }),
      seeded(91),
    );
  });

  it('fills a sheet with what plain recursion gives, gaps included', () => {
    fc.assert(
      fc.property(plan, fc.array(value, { minLength: 6, maxLength: 6 }), (p, values) => {
        const { inputs, nodes } = build(p);
        const all = graph(nodes);
        const leaves = new Map<Node, unknown>(inputs.map((input, i) => [input, values[i]]));
        const sheet = all.fill(leaves);
        for (const node of nodes) expect(sheet[all.place.get(node) as number]).toEqual(workedOut(node, leaves));
      }),
      seeded(92, 150),
    );
  });

  it('followed after a change of one leaf is the same as filled afresh, and touches followers alone', () => {
    let gaps = 0;
    fc.assert(
      fc.property(
        plan,
        fc.array(value, { minLength: 6, maxLength: 6 }),
        fc.array(fc.tuple(fc.nat(), value), { minLength: 1, maxLength: 8 }),
        (p, values, changes) => {
          const { inputs, nodes } = build(p);
          const all = graph(nodes);
          const leaves = new Map<Node, unknown>(inputs.map((input, i) => [input, values[i]]));
          const sheet = all.fill(leaves);
          for (const [pick, next] of changes) {
            const input = inputs[pick % inputs.length] as Node;
            const at = all.place.get(input) as number;
            const before = sheet.slice();
            leaves.set(input, next);
            sheet[at] = next;
            all.follow(sheet, at);
            expect(sheet).toEqual(all.fill(leaves));
            const followers = all.followers(at);
            sheet.forEach((v, i) => {
              if (i !== at && !followers.includes(i)) expect(v).toBe(before[i]);
            });
          }
          const again = all.fill(leaves);
          all.recompute(again);
          expect(again).toEqual(sheet);
          gaps += sheet.filter((v) => v instanceof Gap).length;
        },
      ),
      seeded(93),
    );
    if (process.env.RUNS === undefined) expect(gaps).toBeGreaterThan(100);
  });

  it('followed toward one node brings that one up to date, and all that it needs', () => {
    fc.assert(
      fc.property(plan, fc.array(value, { minLength: 6, maxLength: 6 }), fc.nat(), fc.nat(), value, (p, values, from, to, next) => {
        const { inputs, nodes } = build(p);
        const all = graph(nodes);
        const leaves = new Map<Node, unknown>(inputs.map((input, i) => [input, values[i]]));
        const sheet = all.fill(leaves);
        const input = inputs[from % inputs.length] as Node;
        const node = nodes[to % nodes.length] as Node<number>;
        leaves.set(input, next);
        sheet[all.place.get(input) as number] = next;
        all.follow(sheet, all.place.get(input) as number, all.place.get(node));
        expect(sheet[all.place.get(node) as number]).toEqual(workedOut(node, leaves));
      }),
      seeded(94),
    );
  });

  it('worked out on many rows at once is each of them filled afresh', () => {
    fc.assert(
      fc.property(
        plan,
        fc.array(value, { minLength: 6, maxLength: 6 }),
        fc.array(value, { minLength: 4, maxLength: 4 }),
        fc.array(fc.array(fc.tuple(fc.nat(), fc.nat({ max: 3 })), { maxLength: 4 }), { minLength: 1, maxLength: 40 }),
        (p, values, others, changes) => {
          const { inputs, nodes } = build(p);
          const all = graph(nodes);
          const leaves = new Map<Node, unknown>(inputs.map((input, i) => [input, values[i]]));
          const base = all.fill(leaves);
          const before = base.slice();
          const placeOf = (pick: number): number => all.place.get(inputs[pick % inputs.length] as Node) as number;
          const rows = changes.map((row) => new Map(row.map(([pick, which]) => [placeOf(pick), `${which}`])));
          const wanted = nodes.map((node) => all.place.get(node) as number);
          const made = batch(all, rows, wanted);
          // Twice: nothing may be left over from the first time.
          for (const turn of [0, 1]) {
            const of = (mark: string): unknown => others[(Number(mark) + turn) % others.length];
            const cells = made.workOut(base, (k) => of(markAt(made, rows, k)));
            rows.forEach((row, r) => {
              const own = new Map(leaves);
              for (const [place, mark] of row) own.set(all.order[place] as Node, of(mark));
              const sheet = all.fill(own);
              for (const place of wanted) expect(cells[made.cell(place, r)]).toEqual(sheet[place]);
            });
            for (const place of wanted) expect(cells[made.cell(place, -1)]).toEqual(base[place]);
          }
          expect(base).toEqual(before);
        },
      ),
      seeded(95, 60),
    );
  });

  it('works out once what rows share, and no more than is wanted', () => {
    const [x, y] = [leaf('x', 'x', '', ''), leaf('y', 'y', '', '')];
    let [once, unasked] = [0, 0];
    const ofX = named('ofX', [x], (v) => {
      once++;
      return 2 * v;
    });
    const ofBoth = named('ofBoth', [ofX, y], (a, b) => a + b);
    const aside = named('aside', [x], (v) => {
      unasked++;
      return v;
    });
    const all = graph([ofBoth, aside]);
    const base = all.fill(
      new Map([
        [x, 1],
        [y, 10],
      ] as const),
    );
    const at = (node: Node): number => all.place.get(node) as number;
    const rows = ['a', 'a', 'b', 'a'].map((mark, i) => new Map([[at(x), mark], ...(i === 1 ? ([[at(y), 'c']] as const) : [])]));
    const made = batch(all, rows, [at(ofBoth)]);
    [once, unasked] = [0, 0];
    const cells = made.workOut(base, (k) => ({ a: 2, b: 3, c: 20 })[markAt(made, rows, k) as 'a']);
    expect(rows.map((_, row) => cells[made.cell(at(ofBoth), row)])).toEqual([14, 24, 16, 14]);
    expect(once).toBe(2);
    expect(unasked).toBe(0);
  });

  it('works nothing out anew that rests on what came out as before, or alike', () => {
    const x = leaf('x', 'x', '', '');
    let worked = 0;
    const counted = (id: string, of: (v: number) => number) => named(id, [x], of);
    const whole = counted('whole', Math.floor);
    const after = named('after', [whole], (v) => {
      worked++;
      return v;
    });
    const pair = step({
      id: 'pair',
      needs: [x],
      of: (v: number) => (v < 0 ? Gap.none('no') : [Math.floor(v)]),
      same: (a, b) => a[0] === b[0],
    });
    const first = step({
      id: 'first',
      needs: [pair],
      of: ([v]) => {
        worked++;
        return v as number;
      },
    });
    const all = graph([after, first]);
    const sheet = all.fill(new Map([[x, 2.25]]));
    const at = all.place.get(x) as number;
    const onOneRow = batch(all, [new Map([[at, 'moved']])], all.order.keys());
    const to = (v: number): number => {
      worked = 0;
      const cells = onOneRow.workOut(sheet, () => v);
      sheet[at] = v;
      all.follow(sheet, at);
      expect(all.order.map((_, place) => cells[onOneRow.cell(place, 0)])).toEqual(sheet);
      return worked;
    };
    expect(to(2.5)).toBe(0);
    expect(to(3)).toBe(4);
    // From a gap and back: nothing is like a gap.
    expect(to(-1)).toBe(2);
    expect(to(-2)).toBe(2);
    expect(to(4)).toBe(4);
    expect(sheet[all.place.get(first) as number]).toBe(4);
  });

  it('counts as followers exactly what rests on a leaf, in order', () => {
    const [x, y] = [leaf('x', 'x', '', ''), leaf('y', 'y', '', '')];
    const a = named('a', [x], (v) => v);
    const b = named('b', [y], (v) => v);
    const c = named('c', [a, b], (v, w) => v + w);
    const all = graph([c, b]);
    const places = (...nodes: Node[]) => nodes.map((node) => all.place.get(node) as number);
    expect(all.followers(places(x)[0] as number)).toEqual(places(a, c));
    expect(all.followers(places(y)[0] as number)).toEqual(places(b, c).toSorted((p, q) => p - q));
    expect(all.followers(places(c)[0] as number)).toEqual([]);
  });
});

describe('a gap', () => {
  const [x, y] = [leaf('x', 'x', '', ''), leaf('y', 'y', '', '')];
  const through = (a: unknown, b: unknown): unknown => {
    const sum = named('sum', [x, y], (v, w) => v + w);
    return graph([sum])
      .fill(
        new Map<Node, unknown>([
          [x, a],
          [y, b],
        ]),
      )
      .at(-1);
  };

  it('joins the paths that are missing, each once', () => {
    expect(through(Gap.unknown('/a'), Gap.unknown('/b', '/a'))).toEqual(Gap.unknown('/a', '/b'));
    expect(through(1, Gap.unknown('/b'))).toEqual(Gap.unknown('/b'));
    expect(through(1, 2)).toBe(3);
  });

  it('that is the only one is passed on as it is', () => {
    const gap = Gap.unknown('/a');
    expect(through(gap, 1)).toBe(gap);
    expect(through(1, gap)).toBe(gap);
  });

  it('that says there is none wins over one that is unknown, wherever it stands', () => {
    const none = Gap.none('there is none');
    expect(through(Gap.unknown('/a'), none)).toEqual(none);
    expect(through(none, Gap.unknown('/a'))).toEqual(none);
    expect(through(none, 1)).toEqual(none);
  });

  it('keeps a closed step from being worked out, and is shown to an open one', () => {
    let called = 0;
    const closed = step({ id: 'closed', needs: [x], of: () => ++called });
    const open = openStep({ id: 'open', needs: [x], of: (v) => (v instanceof Gap ? 7 : v) });
    const sheet = graph([closed, open]).fill(new Map([[x, Gap.unknown('/x')]]));
    expect(called).toBe(0);
    expect(sheet.at(-1)).toBe(7);
  });
});

describe('a figure', () => {
  const x = leaf('x', 'x', 'mm', 'an input');

  it('is bounded below by nothing and counts as nothing where there is none, unless it says so', () => {
    const text = { unit: 'mm', symbol: 'y', words: 'w', source: 's', needs: [x], of: (v: number) => v, as: (v: string) => v } as const;
    expect(figure({ id: 'plain', ...text })).toMatchObject({
      kind: 'figure',
      bounds: [0, Number.POSITIVE_INFINITY],
      noneCountsAs: 0,
      open: false,
    });
    expect(figure({ id: 'own', ...text, bounds: [-1, 1], noneCountsAs: 5 })).toMatchObject({ bounds: [-1, 1], noneCountsAs: 5 });
  });
});
