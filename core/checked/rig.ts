import { type Glassworks, numberIn, type Objective, type Pairing, pairingSchema, type Relay, type Sensor } from '../index.ts';
import { type Plan, planFor } from '../pairing/registry.ts';
import { planOf as planOfGroup, TABLE_GROUP_NAMES, TABLE_GROUPS } from '../table/groups.ts';
import { evaluateTable, type Settings, type TableFigureId } from '../table.ts';
import type { OnTable, ToldId, Value } from './check.ts';

/**
 * A real pairing in which only what is said matters: the exit pupil at the shoulder, the principal plane
 * at the rim, a rim too wide to cut. It passes the same schema as a user's input.
 */
export interface Changes extends Omit<Partial<Pairing>, 'objective' | 'relay' | 'sensor'> {
  objective?: Partial<Objective>;
  relay?: Partial<Relay>;
  sensor?: Partial<Sensor>;
  /** What is set on the table. */
  table?: Settings;
}

export const pairingOf = ({ objective, relay, sensor, table: _, ...setting }: Changes = {}): Pairing =>
  pairingSchema.parse({
    objective: { magnification: 10, na: 0.25, referenceFocalLengthMm: 200, exitPupilFromShoulderMm: 0, ...objective },
    relay: { kind: 'tube-lens', focalLengthMm: 200, clearApertureMm: 500, frontPrincipalPlaneFromRimMm: 0, ...relay },
    sensor: { widthMm: 4.8, heightMm: 3.6, pixelPitchUm: 4, ...sensor },
    infinitySpaceMm: 50,
    ...setting,
  });

export const onTable = (changes: Changes): OnTable => ({ pairing: pairingOf(changes), settings: changes.table ?? {} });

/** The immersion oil of textbooks. */
export const OIL = 1.515;

/** Magnification and aperture as they are engraved: '10x/0.25'. */
export type Engraving = `${number}x/${number}`;

/** An objective behind the tube lens that its engraving is for, as the tables of textbooks take it. */
export function engraved(text: Engraving, { wavelengthNm = 550, immersionIndex = 1 } = {}): Changes {
  const [magnification, na] = text.split('x/').map(Number) as [number, number];
  return { objective: { magnification, na, immersionIndex }, wavelengthNm };
}

/** What it takes to work one figure out, and not its whole report: the same to the last digit, and far quicker. */
const PLANS = new Map<ToldId, Plan<ToldId>>();

function planOf(id: ToldId): Plan<ToldId> {
  const known = PLANS.get(id);
  if (known) return known;
  const group = TABLE_GROUP_NAMES.find((name) => TABLE_GROUPS[name].figures.some((figure) => figure.id === id));
  const plan = (group ? planOfGroup(group) : planFor([id as Exclude<ToldId, TableFigureId>])) as Plan<ToldId>;
  PLANS.set(id, plan);
  return plan;
}

/** A figure's value in the pairing's report or on its table; a figure without one is an error. */
export function told(changes: Changes, id: ToldId): number {
  return toldOn(onTable(changes), id);
}

/** The same of any rig; one whose relay has glass needs what works with glass. */
export function toldOn({ pairing, settings }: OnTable, id: ToldId, works?: Glassworks): number {
  // What belongs to the pairing alone is the same on its table.
  const answer = evaluateTable(pairing, settings, works, planOf(id) as Plan<TableFigureId>).answers[id as TableFigureId];
  const value = numberIn(answer);
  if (value === undefined) throw new Error(`${id} is ${answer.state}`);
  return value;
}

/** A value taken from a figure of a rig; `changes` may itself want working out, which waits until it is asked. */
interface Taken extends Pick<Value, 'what' | 'cutOff' | 'slack' | 'not'> {
  /** Units of the source to one of core's. */
  readonly per?: number;
  /** How the source's number follows from the figure, where it is more than another unit. */
  readonly as?: (figure: number) => number;
}

/** A printed value and the figure of a report that must give it. */
export function figureValue(
  id: ToldId,
  printed: string,
  changes: Changes | (() => Changes),
  { per = 1, as = (figure) => per * figure, ...more }: Taken = {},
): Value {
  const rig = typeof changes === 'function' ? changes : () => changes;
  return { printed, of: () => as(told(rig(), id)), figure: id, rig: () => onTable(rig()), ...more };
}
