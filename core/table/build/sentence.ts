import { numberIn } from '../../pairing/answer.ts';
import { amount } from '../../parts/quantity.ts';
import { capital, earned, short } from '../../words.ts';
import type { TableEvaluation } from '../evaluate.ts';
import { type BuildSheet, KINDS, type SheetRun } from './sheet.ts';

/** Millimetres that are worth a word. */
const WORTH = 0.5;

/** What to screw together, in words with the numbers that matter. */
export function buildSentence({ pairing, answers }: TableEvaluation, sheet: BuildSheet): string {
  const relay = KINDS[pairing.relay.kind];
  const space = `${short(amount(pairing.infinitySpaceMm), 4)} mm`;
  return [
    lead(),
    doubt(),
    runWords(sheet.front, `Between the objective and the ${relay}`),
    runWords(sheet.back, `Between the ${relay} and the camera`),
    turned(),
  ]
    .filter(Boolean)
    .join(' ');

  function lead(): string {
    const tube = answers.tubeLengthMm;
    const all = numberIn(answers.subjectToSensorMm);
    const long = all === undefined ? '' : ` From the subject to the sensor it is ${short(all, 3)} mm.`;
    if (pairing.relay.kind === 'camera-lens')
      return `Leave ${space} between the objective's shoulder and the camera lens, which goes on its camera as it is.${long}`;
    if (tube.state === 'known')
      return `Leave ${space} between the objective's shoulder and the ${relay}, and build ${earned(tube.value, tube.low, tube.high)} mm of tube behind it, up to the camera's flange.${long}`;
    return `Leave ${space} between the objective's shoulder and the ${relay}. The tube behind it cannot be told: ${
      tube.state === 'none' ? tube.why : 'the focal length is not known'
    }.`;
  }

  function turned(): string {
    const { piecesTurned: other, front, back } = sheet;
    if (other === undefined || front.state !== 'joined' || back.state !== 'joined') return '';
    return `Turned round it would take ${other} pieces instead of ${front.parts + back.parts}; which way is sharper its glass decides.`;
  }

  function doubt(): string {
    const { low, high } = sheet.tubeMm ?? {};
    if (low === undefined || high === undefined || high - low <= 2 * WORTH) return '';
    return `The focus may want anything from ${short(Math.max(0, low), 3)} to ${short(high, 3)} mm: leave that much to turn.`;
  }
}

function runWords(run: SheetRun, where: string): string {
  switch (run.state) {
    case 'joined': {
      const { differsMm = 0, parts, toBuy } = run;
      const buy = toBuy === 0 ? 'all of which you have' : toBuy === parts ? 'all to buy' : `${toBuy} to buy`;
      const off = Math.abs(differsMm) > WORTH ? `, ${short(Math.abs(differsMm), 2)} mm too ${differsMm > 0 ? 'long' : 'short'}` : '';
      if (parts === 0) return `${where} nothing is needed: the threads fit${off}.`;
      return `${where} ${parts === 1 ? 'one piece does it' : `${parts} pieces do it`}, ${parts === 1 ? (toBuy === 0 ? 'which you have' : 'to buy') : buy}${off}.`;
    }
    case 'none':
      return `${capital(run.why)}; ${run.wouldDo} would.`;
    case 'unknown':
      return `${capital(run.why)}, so the rings ${where.replace('Between', 'between')} cannot be told.`;
    case 'nothing':
      return '';
  }
}
