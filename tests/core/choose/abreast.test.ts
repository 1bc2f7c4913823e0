import { describe, expect, it } from 'vitest';
import { PRAISE } from '../../../core/choose/compared.ts';
import {
  type Abreast,
  type Answer,
  BETTER,
  COMPARED,
  type ComparedId,
  differing,
  evaluate,
  forOneSubject,
  judgedUnlike,
  letter,
  type Pairing,
  praiseOf,
  type Row,
  rowsOf,
  standingOf,
} from '../../../core/index.ts';
import { randomPairing } from '../../support/pairings.ts';
import { random } from '../../support/random.ts';

const SEED = Number(process.env.SEED ?? 21);

/** The pairings worked out, each pair asked for in the order that `rowsOf` promises. */
function laid(pairings: readonly Pairing[]): Abreast {
  const evaluations = pairings.map((pairing) => evaluate(pairing));
  const differ = differing(COMPARED);
  return {
    answers: evaluations.map(({ answers }) => answers),
    difference: (from, of) => {
      expect(from).toBeLessThan(of);
      return differ(evaluations[from] as never, evaluations[of] as never);
    },
  };
}
const said = (pairings: readonly Pairing[]): string[] => praiseOf(rowsOf(laid(pairings)));

const plain: Pairing = {
  objective: {
    magnification: 10,
    na: 0.28,
    referenceFocalLengthMm: 200,
    fieldNumberMm: 24,
    workingDistanceMm: 34,
    noseDiameterMm: 33,
    exitPupilFromShoulderMm: 0,
  },
  relay: {
    kind: 'tube-lens',
    focalLengthMm: 200,
    clearApertureMm: 54,
    frontPrincipalPlaneFromRimMm: 0,
    imageCircleMm: 60,
    rimToSensorMm: 200,
  },
  sensor: { widthMm: 36, heightMm: 24, pixelPitchUm: 4.35 },
  infinitySpaceMm: 60,
  subject: { widthMm: 1, heightMm: 2, depthMm: 0.5 },
};
const relay = (more: Partial<Pairing['relay']>): Pairing => ({ ...plain, relay: { ...plain.relay, ...more } });

describe('pairings abreast', () => {
  it('say of a built case what each is best and worst at', () => {
    const short = relay({ focalLengthMm: 150, rimToSensorMm: 150 });
    const long = relay({ focalLengthMm: 250, rimToSensorMm: 250, clearApertureMm: 40 });
    const [a, b, c] = said([plain, short, long]) as [string, string, string];
    expect(b).toMatch(/^(?=.*Widest field \(4\.8 mm\))(?=.*shortest \(210 mm\)).* of the three; .*least of its picture covered \(29 %\)/);
    expect(c).toMatch(/; (?=.*longest \(310 mm\))(?=.*narrowest field \(2\.88 mm\))/);
    expect(a).toMatch(
      /^Most detail recorded \([\d.]+ MP\) of the three; worst in nothing; on paper it shares the first place with C in room for light\.$/,
    );
    for (const sentence of [a, b, c]) expect(sentence).toMatch(/^[A-Z].*[^.]\.$/);
  });

  it('call what cannot be told apart a tie, and claim nothing in it', () => {
    const loose = relay({ focalLengthMm: { value: 204, plusMinus: 8, origin: 'measured' }, rimToSensorMm: { value: 203, plusMinus: 5 } });
    const [a, b] = said([plain, loose]) as [string, string];
    expect(a).toBe('A tie on paper with B: photograph both.');
    expect(b).toBe('A tie on paper with A: photograph both.');
    expect(said([plain, plain, plain])[1]).toBe('A tie on paper with A and C: photograph them all.');
    // The same with the doubt taken out is a difference.
    const sure = relay({ focalLengthMm: 204, rimToSensorMm: 203 });
    expect(said([plain, sure])[0]).toMatch(/widest field .* of the two/i);
  });

  it('take a difference too small to see for none, and one of what is not known for unknown', () => {
    const of = (value: number, plusMinus = 0): Answer => ({
      state: 'known',
      value,
      unit: 'mm',
      low: value - plusMinus,
      high: value + plusMinus,
      origin: 'measured',
    });
    expect(standingOf(of(0.99), of(100), of(100.99))).toBe('level');
    expect(standingOf(of(1.02), of(100), of(101.02))).toBe('more');
    expect(standingOf(of(-1.02), of(101.02), of(100))).toBe('less');
    expect(standingOf(of(20, 20), of(100), of(120))).toBe('level');
    expect(standingOf(of(20, 19.9), of(100), of(120))).toBe('more');
    expect(standingOf({ state: 'unknown', unit: 'mm', missing: [] }, of(1), of(2))).toBe('not known');
    const { clearApertureMm: _, ...bare } = plain.relay;
    const corner = rowsOf(laid([plain, { ...plain, relay: bare }])).find((row) => row.id === 'cornerIllumination');
    expect(corner).toMatchObject({ best: undefined, worst: undefined, first: [] });
  });

  it('tell who shares the first place, and with whom', () => {
    const dark = relay({ clearApertureMm: 16 });
    const other = relay({ focalLengthMm: 220, rimToSensorMm: 220 });
    const rows = rowsOf(laid([plain, dark, other]));
    const corner = rows.find((row) => row.id === 'cornerIllumination');
    expect(corner).toMatchObject({ best: undefined, worst: 1, first: [0, 2] });
    expect(praiseOf(rows)[0]).toMatch(
      /on paper it shares the first place (?=.*with C in corner light).*and the last place with B in picture covered/,
    );
    expect(praiseOf(rows)[1]).toMatch(/^Darkest corners .* of the three; on paper it shares the first place with A in field/);
  });

  it('give no place, and claim none, where one is level with both ends', () => {
    const loose = relay({ focalLengthMm: 220, rimToSensorMm: { value: 230, plusMinus: 45, origin: 'assumed' } });
    const three = [plain, loose, relay({ focalLengthMm: 240, rimToSensorMm: 260 })];
    const rows = rowsOf(laid(three));
    const length = rows.find(({ id }) => id === 'totalLengthMm') as Row;
    expect(length).toMatchObject({ first: [], last: [], best: undefined, worst: undefined, firstOpen: true, lastOpen: true });
    expect(length.stands[2]?.[0]).toBe('less');
    const [a, b, c] = praiseOf(rows) as [string, string, string];
    expect(a).toMatch(/widest field .* of the three; least of its picture covered/);
    for (const sentence of [a, b, c]) expect(sentence).not.toMatch(/length|in nothing/);
    // The same with the doubt taken out.
    expect(said([plain, relay({ focalLengthMm: 220, rimToSensorMm: 230 }), three[2] as Pairing])[0]).toMatch(/^Shortest \(260 mm\)/);
    // Who may be the longest is not told to be worst in nothing, as it is where its length is known.
    const ends = [
      relay({ focalLengthMm: 150, rimToSensorMm: 150 }),
      relay({ focalLengthMm: 250, rimToSensorMm: 250, clearApertureMm: 40 }),
    ];
    expect(said([plain, ...ends])[0]).toContain('worst in nothing');
    expect(said([relay({ rimToSensorMm: { value: 200, plusMinus: 60, origin: 'assumed' } }), ...ends])[0]).toMatch(
      /^Most detail recorded \([\d.]+ MP\) of the three; on paper/,
    );
  });

  it('give a shared place only to those level with each other and all apart from every other', () => {
    const known = (value: number, low: number, high: number): Answer => ({
      state: 'known',
      value,
      unit: 'mm',
      low,
      high,
      origin: 'measured',
    });
    const places = (ends: readonly (readonly [low: number, high: number])[], unknown: readonly number[] = []) => {
      const middle = ([low, high]: readonly [number, number]): number => (low + high) / 2;
      const lost: Answer = { state: 'unknown', unit: 'mm', missing: [] };
      const told = ends.map((own, i) => (unknown.includes(i) ? lost : known(middle(own), ...own)));
      const less = (of: readonly [number, number], from: readonly [number, number]): Answer =>
        known(middle(of) - middle(from), of[0] - from[1], of[1] - from[0]);
      const difference = (from: number, of: number) =>
        unknown.includes(from) || unknown.includes(of) ? lost : less(ends[of] as [number, number], ends[from] as [number, number]);
      const every = (answer: Answer) => Object.fromEntries(COMPARED.map((id) => [id, answer])) as Record<ComparedId, Answer>;
      return rowsOf({ answers: told.map(every), difference: (from, of) => every(difference(from, of)) });
    };
    const length = (rows: readonly Row[]) => {
      const { best, worst, first, last, firstOpen, lastOpen } = rows.find(({ id }) => id === 'totalLengthMm') as Row;
      return { best, worst, first, last, firstOpen, lastOpen };
    };
    const none = { best: undefined, worst: undefined, first: [], last: [], firstOpen: false, lastOpen: false };
    // A is level with B and with C, and B is longer than C beyond doubt.
    const bridged = places([
      [232, 268],
      [262, 299],
      [216, 245],
    ]);
    expect(length(bridged)).toEqual({ ...none, firstOpen: true, lastOpen: true });
    expect(praiseOf(bridged)).toEqual([
      'A tie on paper with B and C: photograph them all.',
      'Nowhere alone best or worst of the three; on paper a tie with A: photograph both.',
      'Nowhere alone best or worst of the three; on paper a tie with A: photograph both.',
    ]);
    const pairs = places([
      [100, 110],
      [200, 210],
      [105, 112],
      [205, 212],
    ]);
    expect(length(pairs)).toEqual({ ...none, first: [0, 2], last: [1, 3] });
    expect(praiseOf(pairs)[0]).toMatch(/; on paper a tie with C: photograph both; on paper it shares .*the first place with C in .*length/);
    // More than half may share a place, and the sentence says what the table says.
    const crowd = places([
      [100, 110],
      [200, 210],
      [105, 112],
      [103, 111],
      [104, 111],
    ]);
    expect(length(crowd)).toEqual({ ...none, worst: 1, first: [0, 2, 3, 4] });
    expect(praiseOf(crowd)[0]).toMatch(/the first place with C to E in .*length/);
    expect(praiseOf(crowd)[1]).toMatch(/^Narrowest field .* of the five; on paper it shares the first|^.*longest/);
    expect(
      length(
        places([
          [100, 110],
          [101, 111],
        ]),
      ),
    ).toEqual(none);
    // What is not known of one leaves both ends open, and nobody is told to be worst in nothing.
    const lost = places(
      [
        [100, 110],
        [200, 210],
        [300, 310],
      ],
      [2],
    );
    expect(length(lost)).toEqual({ ...none, firstOpen: true, lastOpen: true });
    expect(praiseOf(lost).join()).not.toContain('in nothing');
  });

  it('never claim best or worst where the difference to any other may be nothing', () => {
    const r = random(SEED);
    const differ = differing(COMPARED);
    let [claims, ties, shared] = [0, 0, 0];
    for (let k = 0; k < 8; k++) {
      const first = randomPairing(r);
      const pairings = forOneSubject(
        Array.from({ length: r.integer(2, 4) }, () =>
          r.chance(0.5) ? { ...randomPairing(r), objective: first.objective, sensor: first.sensor } : randomPairing(r),
        ),
      ).pairings;
      const evaluations = pairings.map((pairing) => evaluate(pairing));
      const between = evaluations.map((from) => evaluations.map((of) => differ(from, of)));
      const rows = rowsOf({ answers: evaluations.map((e) => e.answers), difference: (from, of) => between[from]?.[of] as never });
      for (const { way, first, last, stands } of rows) {
        const behind = way === 'more' ? 'less' : 'more';
        for (const [group, ahead] of [
          [first, way],
          [last, behind],
        ] as const)
          for (const i of group) for (const j of pairings.keys()) expect(stands[j]?.[i]).toBe(group.includes(j) ? 'level' : ahead);
        expect(first.filter((i) => last.includes(i))).toEqual([]);
        shared += Number(first.length > 0) + Number(last.length > 0);
      }
      const sentences = praiseOf(rows);
      expect(sentences).toHaveLength(pairings.length);
      for (const [i, sentence] of sentences.entries())
        for (const id of COMPARED) {
          const words = PRAISE[id];
          if (!words) continue;
          for (const [which, way] of [
            [words.best, BETTER[id]],
            [words.worst, BETTER[id] === 'more' ? 'less' : 'more'],
          ] as const) {
            if (!new RegExp(`(^|[ ,;])${which}( \\(|,| and| of|;|\\.)`, 'i').test(sentence)) continue;
            claims++;
            for (const [j, row] of between.entries()) {
              const d = row[i]?.[id];
              if (j === i) continue;
              if (d?.state !== 'known') throw new Error(`${id} claimed of what is not known`);
              const beyond = way === 'more' ? (d.low ?? Number.NEGATIVE_INFINITY) > 0 : (d.high ?? Number.POSITIVE_INFINITY) < 0;
              expect(beyond, `${letter(i)} over ${letter(j)}: ${sentence}`).toBe(true);
            }
          }
          ties += Number(sentence.includes('on paper'));
        }
    }
    expect(claims).toBeGreaterThan(25);
    expect(ties).toBeGreaterThan(0);
    expect(shared).toBeGreaterThan(5);
  });

  it('have differences and standings that are opposite the other way round', () => {
    const r = random(SEED + 1);
    const rows = rowsOf(laid([randomPairing(r), randomPairing(r), randomPairing(r)]));
    for (const { stands, differences } of rows)
      for (const [i, row] of stands.entries())
        for (const [j, s] of row.entries()) {
          const back = stands[j]?.[i];
          expect([s, back].toSorted().join()).toMatch(/^(less,more|level,level|not known,not known)$/);
          const [x, y] = [differences[i]?.[j], differences[j]?.[i]];
          if (x?.state === 'known' && y?.state === 'known') expect(x.value + y.value).toBe(0);
        }
  });

  it('stand before one subject, the first that is given, and say in what they are not judged alike', () => {
    const { subject: _, ...bare } = plain;
    expect(forOneSubject([bare, bare])).toMatchObject({ subject: { depthMm: 1 }, depthGiven: false });
    const deep: Pairing = { ...bare, subject: { depthMm: 3 } };
    const wide: Pairing = { ...bare, subject: { widthMm: 2 } };
    const one = forOneSubject([bare, deep, wide]);
    expect(one.subject).toEqual({ widthMm: 2, depthMm: 3 });
    expect(one.depthGiven).toBe(true);
    expect(one.pairings.map(({ subject }) => subject)).toEqual([one.subject, one.subject, one.subject]);
    expect(judgedUnlike([plain, { ...plain, wavelengthNm: 550, litThreshold: 0.5 }])).toEqual([]);
    expect(judgedUnlike([plain, { ...plain, wavelengthNm: 450 }])).toEqual(['the light’s wavelength']);
    expect(judgedUnlike([plain, { ...plain, depth: { convention: 'half-wave-term' } }, { ...plain, litThreshold: 0.7 }])).toEqual([
      'how much light counts as lit',
      'what depth means',
    ]);
  });
});

it('has words for each figure of which one way is better but the depth, which the frames tell, and for no other', () => {
  const worded = COMPARED.filter((id: ComparedId) => PRAISE[id]);
  expect(worded).toEqual(COMPARED.filter((id) => BETTER[id] && id !== 'depthOfFieldUm'));
});
