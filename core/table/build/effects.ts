import { type Answer, numberIn } from '../../pairing/answer.ts';
import { contradictions } from '../../pairing/contradictions.ts';
import { evaluatePart } from '../../pairing/evaluate.ts';
import type { Glassworks } from '../../pairing/glassworks.ts';
import { planFor, planned } from '../../pairing/registry.ts';
import type { Pairing } from '../../pairing/schema.ts';
import { evaluateTable, type TableEvaluation } from '../evaluate.ts';
import type { TableFigureId } from '../groups.ts';
import { tubeError } from '../infinity/settings.ts';
import { tube } from '../infinity/tube.ts';
import type { SheetRun, SheetStop } from './joined.ts';
import type { BuildSheet } from './sheet.ts';

/** What the rings and tubes do to the picture. */
export interface BuildEffects {
  /** The longest infinity space at which the corners keep all of the axial light. */
  readonly longestSpace: Answer;
  /** The narrowest of the rings that are not among the pairing's stops. */
  readonly fresh: readonly SheetStop[];
  /** Light in the corner over light in the middle: without these rings, and with them. Undefined where it cannot be told. */
  readonly corner?: { readonly bare: number; readonly ringed: number };
  /** What the tube as it was built does. */
  readonly tube?: { readonly magnificationChange?: number; readonly strehl?: number };
}

/** The corner is darker by less than this share where nothing is said of it: half of a hundredth of a stop. */
const UNSEEN = 0.0035;
export const darkens = ({ corner }: BuildEffects): boolean => corner !== undefined && corner.bare - corner.ringed > UNSEEN;

/** A pairing takes no more stops. */
const MOST_STOPS = 8;

const LIGHT = planFor(['cornerIllumination', 'longestUnvignettedSpaceMm']);
const TUBE = planned<TableFigureId>([tube.magnificationChange, tube.strehl]);

/** @param works what works with glass: a pairing whose relay has glass needs it */
export function buildEffects(evaluation: TableEvaluation, sheet: BuildSheet, works?: Glassworks): BuildEffects {
  const { pairing } = evaluation;
  const stops = pairing.stops ?? [];
  const held = new Set(stops.map((stop) => JSON.stringify(stop)));
  const fresh = [narrowestOf(sheet.front), narrowestOf(sheet.back)]
    .filter((stop) => stop !== undefined)
    .filter((stop) => !held.has(JSON.stringify(stop)));
  const bare = evaluatePart(pairing, LIGHT, works).answers;
  const ringed = fresh.length === 0 ? undefined : cornerOf({ ...pairing, stops: [...stops, ...fresh] }, works);
  const own = numberIn(bare.cornerIllumination as Answer);
  const wrong = wrongTube(evaluation, works);
  return {
    longestSpace: bare.longestUnvignettedSpaceMm as Answer,
    fresh,
    ...(own === undefined || ringed === undefined ? {} : { corner: { bare: own, ringed } }),
    ...(wrong ? { tube: wrong } : {}),
  };
}

const narrowestOf = (run: SheetRun): SheetStop | undefined => (run.state === 'joined' ? run.narrowest : undefined);

function cornerOf(pairing: Pairing, works: Glassworks | undefined): number | undefined {
  if ((pairing.stops ?? []).length > MOST_STOPS || contradictions(pairing, works).length > 0) return undefined;
  return numberIn(evaluatePart(pairing, LIGHT, works).answers.cornerIllumination as Answer);
}

function wrongTube({ pairing, settings, answers }: TableEvaluation, works: Glassworks | undefined): BuildEffects['tube'] {
  const by = numberIn(answers.builtTooLongMm);
  const [least, most] = tubeError.bounds;
  if (by === undefined || by < least || by > most) return undefined;
  const wrong = evaluateTable(pairing, { ...settings, tubeErrorMm: by }, works, TUBE).answers;
  const [magnificationChange, strehl] = [numberIn(wrong.tubeMagnificationChange), numberIn(wrong.tubeStrehl)];
  return { ...(magnificationChange === undefined ? {} : { magnificationChange }), ...(strehl === undefined ? {} : { strehl }) };
}
