import {
  type Answer,
  FIGURE_IDS,
  numberIn,
  type Objective,
  type Pairing,
  pairingSchema,
  type Relay,
  type Report,
  report,
  type Sensor,
} from '../../core/index.ts';
import { evaluateTable, type Settings, TABLE_FIGURES, type TableFigureId } from '../../core/table.ts';
import type { ToldId, Value } from './row.ts';

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

const pairing = ({ objective, relay, sensor, table: _, ...setting }: Changes = {}): Pairing =>
  pairingSchema.parse({
    objective: { magnification: 10, na: 0.25, referenceFocalLengthMm: 200, exitPupilFromShoulderMm: 0, ...objective },
    relay: { kind: 'tube-lens', focalLengthMm: 200, clearApertureMm: 500, frontPrincipalPlaneFromRimMm: 0, ...relay },
    sensor: { widthMm: 4.8, heightMm: 3.6, pixelPitchUm: 4, ...sensor },
    infinitySpaceMm: 50,
    ...setting,
  });

/** An objective behind the tube lens that its engraving is for, as the tables of textbooks take it. */
export const engraved = (magnification: number, na: number, wavelengthNm = 550, immersionIndex = 1): Changes => ({
  objective: { magnification, na, immersionIndex },
  wavelengthNm,
});

const answerOf = ({ figures, vignetting }: Report, id: Exclude<ToldId, TableFigureId>): Answer =>
  (FIGURE_IDS as readonly string[]).includes(id)
    ? figures[id as keyof Report['figures']]
    : (vignetting[id as keyof Report['vignetting']] as Answer);

const isOfTable = (id: ToldId): id is TableFigureId => TABLE_FIGURES.some((f) => f.id === id);

/** A figure's value in the pairing's report or on its table; a figure without one is an error. */
export function told(changes: Changes, id: ToldId): number {
  const answer = isOfTable(id) ? evaluateTable(pairing(changes), changes.table ?? {}).answers[id] : answerOf(report(pairing(changes)), id);
  const value = numberIn(answer);
  if (value === undefined) throw new Error(`${id} is ${answer.state}`);
  return value;
}

/** A printed value and the figure of a report that must give it, `per` units of the source to one of core's. */
export const figureValue = (
  id: ToldId,
  printed: string,
  changes: Changes,
  { per = 1, ...more }: { per?: number } & Pick<Value, 'what' | 'cutOff' | 'slack'> = {},
): Value => ({ printed, of: () => per * told(changes, id), figure: id, ...more });
