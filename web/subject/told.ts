import { type Choice, type LimitAnswer, type NearMiss, nameOfLimit, type Stopped, toldIn, type Variable } from '../../core/choosing.ts';
import { capital, type FigureId, listed, nameOf, percent, short } from '../../core/index.ts';
import { lower } from '../fields/names.ts';
import { FIGURE_NAMES } from '../figures/names.ts';
import type { Found } from './choose-task.ts';
import type { Level } from './entries.ts';

/** What is said of a search and of what it found, as sentences. */

const times = (n: number): string => (n === 1 ? 'once' : n === 2 ? 'twice' : `${n} times`);

/** Why a pairing is not taken, by the limit that it does not meet. */
const FAILS: Readonly<Record<LimitAnswer['name'], string>> = {
  subjectFits: 'the subject does not fit the frame',
  subjectFills: 'the subject is too small in the frame',
  subjectCovered: 'the subject is not covered to its corners',
  frameCovered: 'too little of the frame is covered',
  fieldNoNarrower: 'the field is too narrow',
  fieldNoWider: 'the field is too wide',
  magnificationAtLeast: 'the magnification is too low',
  magnificationAtMost: 'the magnification is too high',
  finestDetail: 'the finest detail is lost',
  workingDistance: 'the objective comes too near',
  diffuser: 'the diffuser does not go in',
  lightCone: 'the rig stands in the way of the light',
  cornerLight: 'the corners are too dark',
  samplingAtLeast: 'the pixels are too coarse',
  samplingAtMost: 'the pixels are too fine and only magnify blur',
  length: 'the rig is too long',
  price: 'it costs too much',
};

/** The limit that stops most pairings; undefined where none stops any. */
export function stopsMost(stopped: Stopped): [name: keyof Stopped, count: number] | undefined {
  const all = Object.entries(stopped) as [keyof Stopped, number][];
  return all.toSorted((a, b) => b[1] - a[1])[0];
}

/** The answer: how many give it, and what stops the rest. */
export function answerOf({ considered, impossible, feasible, stopped }: Found, asks: number): string {
  const most = stopsMost(stopped);
  const stops =
    most && feasible < considered - impossible
      ? ` What stops ${feasible === 0 ? 'them' : 'the rest'} most often: ${FAILS[most[0]]}, ${times(most[1])}.`
      : '';
  if (asks === 0) return `Nothing is asked yet: all ${considered - impossible} pairings stand in the list.`;
  const it = asks === 1 ? 'it' : 'all of it';
  if (feasible === 0)
    return considered === 1 ? `The one pairing does not give ${it}.` : `None of ${considered} pairings gives ${it}.${stops}`;
  if (feasible === considered) return considered === 1 ? `The one pairing gives ${it}.` : `All ${considered} pairings give ${it}.`;
  return `${feasible} of ${considered} pairings ${feasible === 1 ? 'gives' : 'give'} ${it}.${stops}`;
}

/** What goes with the answer: how the pairings are counted, what could not be built, what has no price. */
export function countsOf({ considered, impossible, feasible, unpriced }: Found, entries: number, told: number): string {
  return [
    ...(told < feasible ? [`${told} of them stand below, as ${entries} of one objective with one relay.`] : []),
    ...(impossible > 0 ? [`${impossible} of the ${considered} cannot be built: their parts stand in each other’s way.`] : []),
    ...(unpriced > 0
      ? [
          unpriced === feasible
            ? `Of none of them the whole price is known: that neither leaves one out nor places it.`
            : `Of ${unpriced} the whole price is not known: that neither leaves them out nor places them.`,
        ]
      : []),
  ].join(' ');
}

/** Why an entry is here, beside what bites. */
export function standsOf(onFrontier: boolean, at: string, figures: number): string {
  if (!onFrontier) return '';
  return figures === 2
    ? `On the line drawn below${at}: what is better in one figure is worse in the other.`
    : `Drawn open below${at}: what is better in one figure is worse in another.`;
}

/** @param by what the list is sorted by */
export function levelSaid({ place, spaceMm, tie }: Level, by: FigureId | 'price'): string {
  const other = `no. ${place + 1}${spaceMm !== undefined ? ` at ${short(spaceMm, 4)} mm` : ''}`;
  return tie ? `A tie on paper with ${other}: photograph both.` : `Level with ${other} in ${lower(figureName(by))}.`;
}

/** What is still to be paid. */
export function priceSaid({ price, priceMissing }: Pick<Choice, 'price' | 'priceMissing'>): string {
  if (!priceMissing) return price === 0 ? 'Nothing is left to pay.' : `${short(price as number, 6)} to pay.`;
  const parts = listed(priceMissing.map((part) => `the ${part}`));
  return price === undefined ? 'Its price is not known.' : `${short(price, 6)} to pay, and the price of ${parts}, not known.`;
}

/** Less than this part of a limit does not show in what is told. */
const HAIR = 0.001;

/** What falls short, by how much: `the finest detail is lost: 2.4 µm where 2 µm is asked, 20 % off`. */
function missingSaid(limit: LimitAnswer): string {
  const { name, state, value, margin, missing = [], surely } = limit;
  const fails = FAILS[name];
  if (state === 'unknown' && name !== 'price')
    return `${nameOfLimit(name)} is not known${missing.length > 0 ? ` without ${listed(missing.map(nameOf))}` : ''}`;
  if (value === undefined) return fails;
  const bridged = surely ? '' : ', which its ± may bridge';
  // The side of the frame is no wish of anybody's.
  if (name === 'subjectFits')
    return `the subject no longer fits the frame: it takes ${value - limit.limit < HAIR ? 'a hair more than' : `${toldIn(limit, value)} of`} its side${bridged}`;
  const asked = toldIn(limit, limit.limit);
  const far =
    margin === undefined || limit.limit === 0
      ? ''
      : -margin < HAIR
        ? ', a hair off'
        : margin < -1
          ? `, ${short(1 - margin, 2)} times as much`
          : `, ${percent(-margin)} off`;
  return `${fails}: ${toldIn(limit, value)} where ${asked} is asked${far}${bridged}`;
}

/** A near miss as one sentence. */
export const missSaid = (missing: readonly LimitAnswer[]): string => `${capital(listed(missing.map(missingSaid)))}.`;

const WITH: Readonly<Record<Variable, string>> = {
  '/infinitySpaceMm': 'an infinity space',
  '/relay/focalLengthMm': 'a relay',
  '/relay/clearApertureMm': 'a clear opening of the relay',
};

/** The one change that would mend it. */
export const wouldSaid = ({ wouldMeetIf }: Pick<NearMiss, 'wouldMeetIf'>): string =>
  wouldMeetIf
    ? `Would do with ${WITH[wouldMeetIf.path]} of ${short(wouldMeetIf.value, 6)} mm in the place of ${short(wouldMeetIf.from, 4)} mm.`
    : '';

/** The figures that are told of each entry: those that the wish, the sorting and the frontier are about, and then the usual ones. */
export function figuresFor(
  limits: readonly Pick<LimitAnswer, 'figure'>[],
  sort: FigureId | 'price',
  axes: readonly FigureId[],
): FigureId[] {
  const asked = limits.flatMap(({ figure }) => figure ?? []);
  const all = [...(sort === 'price' ? [] : [sort]), ...asked, ...axes, ...USUAL];
  return [...new Set(all)].slice(0, MOST_FIGURES);
}
const USUAL = ['systemMagnification', 'goodFieldMm', 'cornerIllumination', 'resolvedDetailUm', 'clearWorkingDistanceMm'] as const;
const MOST_FIGURES = 5;

export const figureName = (by: FigureId | 'price'): string => (by === 'price' ? 'Price' : FIGURE_NAMES[by]);
