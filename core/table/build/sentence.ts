import { type Answer, numberIn } from '../../pairing/answer.ts';
import { amount } from '../../parts/quantity.ts';
import { capital, earned, listed, percent, short } from '../../words.ts';
import type { TableEvaluation } from '../evaluate.ts';
import type { BuildEffects } from './effects.ts';
import type { SheetRun } from './joined.ts';
import { KINDS } from './parts-list.ts';
import type { BuildSheet } from './sheet.ts';

/** Millimetres that are worth a word. */
const WORTH = 0.5;
/** Maréchal's limit of the Strehl ratio (1947). */
const SHARP = 0.8;

/** What is said of a build: the answer itself, how far it is in doubt, and what a list of the parts tells as well. */
interface BuildWords {
  readonly as: 'answer' | 'doubt' | 'detail';
  readonly text: string;
}

/**
 * What to screw together, in words with the numbers that matter; of what it does to the picture where that is given.
 *
 * @param brief without what else might be built, and what the list of parts tells
 */
export const buildSentence = (table: TableEvaluation, sheet: BuildSheet, effects?: BuildEffects, brief = false): string =>
  buildWords(table, sheet, effects)
    .filter(({ as }) => !brief || as !== 'detail')
    .map(({ text }) => text)
    .join(' ');

/** The same, a part each. */
export function buildWords({ pairing, answers, inputs }: TableEvaluation, sheet: BuildSheet, effects?: BuildEffects): BuildWords[] {
  const relay = KINDS[pairing.relay.kind];
  const space = amount(pairing.infinitySpaceMm);
  const { front, back } = sheet;
  const ofRun = ({ state }: SheetRun): BuildWords['as'] => (state === 'joined' ? 'detail' : 'answer');
  const all: BuildWords[] = [
    { as: 'answer', text: lead() },
    { as: ofRun(front), text: runWords(front, `Between the objective and the ${relay}`, spaceWords()) },
    { as: ofRun(back), text: runWords(back, `Between the ${relay} and the camera`) },
    { as: 'doubt', text: doubt() },
    { as: 'answer', text: asBuilt() },
    { as: 'detail', text: turned() },
  ];
  return all.filter(({ text }) => text !== '');

  function lead(): string {
    const tube = answers.tubeLengthMm;
    const all = told(answers.subjectToSensorMm);
    const long = all === undefined ? '' : ` From the subject to the sensor it is ${all} mm.`;
    const between = `Leave ${short(space, 4)} mm between the objective's shoulder and the ${relay}`;
    if (pairing.relay.kind === 'camera-lens') return `${between}, which goes on its camera as it is.${long}`;
    if (tube.state === 'known') return `${between}, and build ${told(tube)} mm of tube behind it, up to the camera's flange.${long}`;
    return `${between}. The tube behind it cannot be told: ${tube.state === 'none' ? tube.why : 'the focal length is not known'}.`;
  }

  /** What it costs that the infinity space comes out longer or shorter than wanted. */
  function spaceWords(): string {
    if (front.state !== 'joined' || effects === undefined) return '';
    const { longestSpace } = effects;
    if (longestSpace.state === 'none') return ', which matters little: the corners are cut at any infinity space';
    const longest = numberIn(longestSpace);
    if (longest === undefined) return '';
    if (longest === Number.POSITIVE_INFINITY) return ', which does not matter: the corners stay clear at any infinity space';
    return front.lengthMm <= longest
      ? `, which does not matter: the corners stay clear up to ${short(longest)} mm`
      : `, which costs light: the corners stay clear up to ${short(longest)} mm only`;
  }

  /** What the focus may want, and what the pieces can be turned to, both up to the flange where the camera's ring reaches it. */
  function doubt(): string {
    if (back.state !== 'joined' || back.wantedLowMm === undefined || back.wantedHighMm === undefined) return rough();
    if (back.wantedHighMm - back.wantedLowMm <= 2 * WORTH) return '';
    const ring = sheet.parts.find(({ role }) => role === 'mount')?.lengthMm ?? 0;
    const mm = (x: number): string => short(Math.max(0, x + ring));
    const [low, high] = [back.wantedLowMm, back.wantedHighMm];
    const wants = `The focus may want anything from ${mm(low)} to ${mm(high)} mm`;
    const these = ring > 0 ? "with the camera's ring these" : 'these';
    const [over, under] = [back.leastMm - Math.max(low, -ring), high - back.mostMm];
    const far = [
      ...(over > WORTH ? [`${short(over, 2)} mm too long for the shortest that may be wanted`] : []),
      ...(under > WORTH ? [`${short(under, 2)} mm short of the longest that may be wanted`] : []),
    ].join(', and ');
    const turns =
      back.mostMm - back.leastMm < WORTH ? `${these} do not turn` : `${these} turn from ${mm(back.leastMm)} to ${mm(back.mostMm)} mm`;
    const register = inputs.find(({ path }) => path === '/sensor/registerMm');
    const takes =
      register && register.greatest - register.least > 2 * WORTH ? ' That ring takes up what is not known of the register.' : '';
    return `${wants}; ${turns}${far && `: ${far}`}.${ring > 0 ? takes : ''}`;
  }

  function rough(): string {
    const { low, high } = sheet.tubeMm ?? {};
    if (low === undefined || high === undefined || high - low <= 2 * WORTH) return '';
    return `The focus may want anything from ${short(Math.max(0, low))} to ${short(high)} mm: leave that much to turn.`;
  }

  function asBuilt(): string {
    const off = answers.builtTooLongMm;
    if (off.state !== 'known') return '';
    const { low = off.value, high = off.value, value } = off;
    const doubtful = high - low > 2 * WORTH ? ` (${tenths(low)} to ${tenths(high)}, as far as the relay is known)` : '';
    if (Math.abs(value) <= WORTH && doubtful === '') return 'As you built it the tube is right.';
    if (Math.abs(value) < TENTH)
      return `As you built it the tube is right in the middle of what may be: ${tenths(low)} to ${tenths(high)} mm off, as far as the relay is known.`;
    const { magnificationChange: change, strehl } = effects?.tube ?? {};
    const does = [
      ...(change === undefined ? [] : [`the picture is ${percent(Math.abs(change))} ${change < 0 ? 'smaller' : 'larger'}`]),
      ...(strehl === undefined
        ? []
        : [`the middle ${strehl >= SHARP ? 'stays' : 'is no longer'} sharp (Strehl ratio ${short(strehl, 2)})`]),
    ];
    const then = does.length === 0 ? '' : `: focused again with the rail, ${listed(does)}`;
    return `As you built it the tube is ${short(Math.abs(value), 2)} mm too ${value < 0 ? 'short' : 'long'}${doubtful}${then}.`;
  }

  function turned(): string {
    const other = sheet.piecesTurned;
    if (other === undefined || front.state !== 'joined' || back.state !== 'joined') return '';
    const facing = sheet.side === undefined ? '' : `It is drawn with its ${sheet.side}. `;
    return `${facing}Turned round it would take ${other} pieces instead of ${front.parts + back.parts}; the view The glass tells which way is sharper.`;
  }
}

/** Less is told as nothing, mm. */
const TENTH = 0.05;

const tenths = (x: number): string => short(Number(x.toFixed(1)), 2);

/** A known answer in the digits of the figure itself. */
const told = (answer: Answer): string | undefined => (answer.state === 'known' ? earned(answer.value, answer.low, answer.high) : undefined);

/** @param matters what it does that the run is longer or shorter than wanted */
function runWords(run: SheetRun, where: string, matters = ''): string {
  switch (run.state) {
    case 'joined': {
      const { differsMm = 0, parts, toBuy } = run;
      const buy = toBuy === 0 ? 'all of which you have' : toBuy === parts ? 'all to buy' : `${toBuy} to buy`;
      const off =
        Math.abs(differsMm) > WORTH ? `, ${short(Math.abs(differsMm), 2)} mm too ${differsMm > 0 ? 'long' : 'short'}${matters}` : '';
      if (parts === 0) return `${where} nothing is needed: the threads fit${off}.`;
      return `${where} ${parts === 1 ? 'one piece does it' : `${parts} pieces do it`}, ${parts === 1 ? (toBuy === 0 ? 'which you have' : 'to buy') : buy}${off}.`;
    }
    case 'none':
      if (run.kept === 0) return `${capital(run.why)}; ${run.wouldDo} would.`;
      return `${where} ${run.kept === 1 ? 'one piece goes on' : `${run.kept} pieces go on`}, and ${run.wouldDo} is missing: ${run.why}.`;
    case 'unknown':
      return `${capital(run.why)}, so the rings ${where.replace('Between', 'between')} cannot be told.`;
    case 'nothing':
      return '';
  }
}
