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
    given(o.immersionIndex, (n) => IMMERSION[n] ?? `n ${n}`),
  );
const IMMERSION: Record<number, string> = { 1.518: 'oil', 1.333: 'water' };

export const engravedRelay = (r: Relay): string => {
  const { focalLengthMm, focalLengthRangeMm: range } = r;
  const byPower = r.powerDioptre !== undefined;
  const thread = (r.kind === 'camera-lens' ? r.femaleThread : r.maleThread)?.match(/^(\d+(?:\.\d+)?) x (1|0?\.\d+)$/);
  const bare = byPower && thread?.[2] === '0.75' && Number(thread[1]) >= 25 && Number(thread[1]) <= 127;
  return line(
    kindWord(r),
    range ? [`${range[0]}-${range[1]}`] : [],
    byPower
      ? given(r.powerDioptre, (d) => `${d} D`)
      : given(focalLengthMm, (f) => `${range ? 'at ' : r.kind === 'supplementary' && f <= 127 ? 'f ' : ''}${f} mm`),
    given(r.fNumber, (n) => `f/${n}`),
    thread ? [bare ? `${thread[1]} mm` : thread[0]] : [],
    // Without a thread beside it a diameter could be one.
    given(r.clearApertureMm, (d) => `${thread || r.kind === 'tube-lens' ? 'Ø' : 'clear'} ${d}`),
  );
};

/** The kind in a word, where the numbers do not say it. */
function kindWord({ kind, powerDioptre, fNumber, focalLengthRangeMm: range }: Relay): string[] {
  if (kind === 'tube-lens') return ['tube lens'];
  if (kind === 'camera-lens') return fNumber === undefined && !range ? ['camera lens'] : [];
  return powerDioptre === undefined || fNumber !== undefined || range ? ['close-up'] : [];
}

/** What only the glass of the relay says, as it would be engraved: its focal length, to four digits. */
export function impliedBy({
  pairing: { relay },
  answers,
}: {
  pairing: { relay: Relay };
  answers: Pick<Evaluation['answers'], 'relayFocalLengthMm'>;
}): { focalLengthMm?: number } {
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
