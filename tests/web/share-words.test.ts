import { describe, expect, it, vi } from 'vitest';
import { evaluate, FIGURE_IDS, type Pairing, pairingSchema, report, reportOf } from '../../core/index.ts';
import opening from '../../data/opening.json';
import { FIGURE_NAMES } from '../../web/figures/names.ts';
import { figuresAsText } from '../../web/share/figures-text.ts';
import { fileName, read, written } from '../../web/share/file.ts';
import { fullPairing } from '../core/support/full-pairing.ts';
import { random } from '../support/random.ts';

const OPENING = pairingSchema.parse(opening.pairing);
const bytes = (text: string): Uint8Array => new TextEncoder().encode(text);
const file = (more: object): Uint8Array => bytes(JSON.stringify({ pupilwalk: 1, pairing: OPENING, ...more }));

describe('a pairing on disk', () => {
  it('comes back as it was, with the numbers of its day beside it', () => {
    const draw = random(77);
    for (const pairing of [OPENING, ...Array.from({ length: 3 }, () => fullPairing(draw))]) {
      const text = written(pairing, report(pairing));
      expect(read(bytes(text))).toEqual({ pairing: JSON.parse(JSON.stringify(pairing)) });
      const plain = JSON.parse(text) as Record<string, unknown>;
      expect(Object.keys(plain)).toEqual(['pupilwalk', 'pairing', 'report']);
      expect(plain.pupilwalk).toBe(1);
      expect(plain.report).toEqual(JSON.parse(JSON.stringify(report(pairing))));
    }
  });
  it('is named after its parts', () => {
    expect(fileName(OPENING)).toBe('pupilwalk-10x-5D.json');
    const { powerDioptre: _, ...relay } = OPENING.relay;
    expect(fileName({ ...OPENING, relay: { ...relay, kind: 'tube-lens', focalLengthMm: 164.5 } })).toBe('pupilwalk-10x-164.5mm.json');
    expect(fileName({ ...OPENING, relay: { kind: 'supplementary' } as Pairing['relay'] })).toBe('pupilwalk-10x-glass.json');
  });
  it('believes neither the report in it nor anything else that it does not know', () => {
    expect(read(file({ report: { sentence: 'all is well' }, comment: [1] }))).toEqual({ pairing: OPENING });
    const trap = bytes(`{"pupilwalk": 1, "__proto__": {"pairing": {}}, "pairing": ${JSON.stringify(OPENING)}}`);
    expect(read(trap)).toEqual({ pairing: OPENING });
    expect(read(bytes('{"pupilwalk": 1, "__proto__": {"pairing": {}}}')).fault).toBe('there is no pairing in it');
  });
  it('says what is wrong with one that cannot be shown', () => {
    const faults: [Uint8Array, RegExp][] = [
      [bytes(''), /^it is empty$/],
      [bytes('{"pupilwalk": 1, "pair'), /no JSON, or cut short/],
      [new Uint8Array([0x7b, 0xff, 0xfe, 0x7d]), /no JSON/],
      [bytes('{"pairing": NaN}'), /no JSON/],
      [bytes('[1, 2]'), /not saved from this page/],
      [bytes('null'), /not saved from this page/],
      [bytes('"pupilwalk"'), /not saved from this page/],
      [file({ pupilwalk: 2 }), /later version/],
      [file({ pupilwalk: '1' }), /version is not known/],
      [file({ pupilwalk: 0 }), /version is not known/],
      [bytes('{"pupilwalk": 1}'), /no pairing in it/],
      [file({ pairing: 7 }), /./],
      [file({ pairing: { ...OPENING, infinitySpaceMm: -5 } }), /^infinity space, .*too small/],
      [bytes(new TextDecoder().decode(file({})).replace('"infinitySpaceMm":60', '"infinitySpaceMm":1e400')), /^infinity space, /],
      [file({ pairing: { ...OPENING, relay: 'close-up-5d-58' } }), /^relay/],
      [file({ pairing: { ...OPENING, relay: { kind: 'supplementary', powerDioptre: 5, focalLengthMm: 100 } } }), /relay/],
    ];
    for (const [given, words] of faults) {
      const { fault, pairing } = read(given);
      expect(pairing).toBeUndefined();
      expect(fault).toMatch(words);
      expect(fault).toMatch(/[^.]$/);
    }
  });
  it('waits for what traces glass', async () => {
    // Whatever other tests have fetched.
    vi.resetModules();
    const { read } = await import('../../web/share/file.ts');
    const glass = { radiiMm: [100, -100], thicknessesMm: [5], glasses: ['N-BK7'] };
    expect(read(file({ pairing: { ...OPENING, relay: { kind: 'supplementary', glass } } }))).toEqual({ waits: true });
  });
});

describe('the figures as text', () => {
  it('has the sentence, the parts, every figure, the guesses, the cautions and the link', () => {
    const evaluation = evaluate(OPENING);
    const told = reportOf(evaluation);
    const text = figuresAsText(evaluation, told, 'http://here/#1.abc');
    const lines = text.split('\n');
    expect(lines[0]).toMatch(/^Pupilwalk: /);
    expect(lines).toContain(told.sentence);
    expect(lines).toContain('Objective  Plan achromat 10x/0.25: 10x/0.25 ∞/0.17 f 200 FN 22 WD 10.5');
    expect(lines).toContain('Relay  Close-up achromat +5 D: 5 D 58 mm Ø 54');
    expect(lines).toContain('Infinity space  60 mm');
    expect(lines).toContain('  Magnification: 10× (9.52 to 10.53)');
    for (const id of FIGURE_IDS) expect(lines.filter((line) => line.startsWith(`  ${FIGURE_NAMES[id]}: `)).length, id).toBe(1);
    expect(lines.filter((line) => /± /.test(line) && line.endsWith('given as typical of its class')).length).toBe(3);
    for (const { why } of told.assumptions) expect(text).toContain(`: ${why}`);
    for (const caution of told.cautions) expect(lines).toContain(`  ${caution}`);
    expect(text.endsWith('\n\nhttp://here/#1.abc\n')).toBe(true);
  });
  it('never writes what is no number, and names rings', () => {
    const draw = random(5);
    for (let i = 0; i < 10; i++) {
      const pairing = fullPairing(draw);
      try {
        const evaluation = evaluate(pairing);
        const text = figuresAsText(evaluation, reportOf(evaluation), 'link');
        expect(text).not.toMatch(/NaN|undefined|null|Infinity \d|\[object/);
        expect(
          text.match(/^Ring \d {2}opening [\d.]+( ± [\d.]+)? mm, −?[\d.]+( ± [\d.]+)? mm from the (shoulder|sensor)$/gm)?.length ?? 0,
        ).toBe(pairing.stops?.length ?? 0);
      } catch (error) {
        if (!(error instanceof Error) || error.name !== 'PairingError') throw error;
      }
    }
  });
});
