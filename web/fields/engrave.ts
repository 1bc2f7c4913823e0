import { amount, type Evaluation, numberIn, type Objective, type QuantityInput, type Relay, type Sensor } from '../../core/index.ts';

/**
 * Parts as they would be engraved: what core's reading understands, so that a line that is shown can
 * be changed in place and read again.
 */
const given = (q: QuantityInput | undefined, say: (x: number) => string): string[] => (q === undefined ? [] : [say(amount(q))]);
const line = (...pieces: string[][]): string => pieces.flat().join(' ');

export const engravedObjective = (o: Objective): string =>
  line(
    [`${amount(o.magnification)}x/${amount(o.na)}`],
    given(o.coverGlassMm, (d) => `∞/${d}`),
    [`f ${amount(o.referenceFocalLengthMm)}`],
    given(o.fieldNumberMm, (d) => `FN ${d}`),
    given(o.workingDistanceMm, (d) => `WD ${d}`),
  );

/** @param focalLength the relay's, where its glass says it and nothing else does, mm */
export const engravedRelay = (r: Relay, focalLength?: number): string => {
  const { focalLengthMm = focalLength } = r;
  const thread = r.maleThread?.match(/^(\d+(?:\.\d+)?) x 0\.75$/)?.[1];
  const byPower = r.powerDioptre !== undefined;
  return line(
    r.kind === 'tube-lens' ? ['tube lens'] : [],
    byPower ? given(r.powerDioptre, (d) => `${d} D`) : given(focalLengthMm, (f) => `${f} mm`),
    given(r.fNumber, (n) => `f/${n}`),
    thread === undefined ? [] : [byPower ? `${thread} mm` : `${thread} x 0.75`],
    given(r.clearApertureMm, (d) => `Ø ${d}`),
  );
};

/** What only the glass of the relay says, as it would be engraved: its focal length, to four digits. */
export function impliedBy({ pairing: { relay }, answers }: Evaluation): { focalLengthMm?: number } {
  const f = numberIn(answers.relayFocalLengthMm);
  if (!relay.glass || relay.focalLengthMm !== undefined || relay.powerDioptre !== undefined || f === undefined) return {};
  return { focalLengthMm: Number(f.toPrecision(4)) };
}

export const engravedSensor = (s: Sensor): string =>
  line(
    [`${amount(s.widthMm)} x ${amount(s.heightMm)} mm`],
    given(s.pixelPitchUm, (p) => `${p} µm`),
    s.pixelPitchUm === undefined && s.columns !== undefined && s.rows !== undefined ? [`${s.columns} x ${s.rows}`] : [],
  );

/** What makes a part the same part: while these stay, a changed line keeps all that cannot be engraved. */
const IDENTITY = {
  objective: ['magnification', 'na', 'referenceFocalLengthMm'],
  relay: ['kind', 'focalLengthMm', 'powerDioptre'],
  sensor: ['widthMm', 'heightMm'],
} as const;

/** The part that a typed line means, on the ground of the part that stood there before and of what that `implied` without saying it. */
export function retyped(kind: keyof typeof IDENTITY, before: object, read: object, implied: object = {}): object {
  const was = { ...implied, ...before } as Record<string, QuantityInput | string | undefined>;
  const is = read as Record<string, QuantityInput | string | undefined>;
  const same = IDENTITY[kind].every((name) => plain(was[name]) === plain(is[name]));
  if (!same) return read;
  const kept = Object.fromEntries(Object.entries(is).filter(([name, value]) => plain(was[name]) !== plain(value)));
  return { ...before, ...kept };
}

const plain = (x: QuantityInput | string | undefined): unknown => (x === undefined || typeof x === 'string' ? x : amount(x));
