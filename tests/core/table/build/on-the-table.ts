import { type Pairing, pairingSchema } from '../../../../core/index.ts';
import {
  type BuildAsk,
  buildAskSchema,
  buildEffects,
  buildSentence,
  buildSheet,
  evaluateTable,
  planOf,
  type Settings,
} from '../../../../core/table.ts';
import opening from '../../../../data/opening.json';
import type { works } from '../../lens/rigs.ts';

/** The group alone: the rest of the table takes many times as long. */
export const worked = (pairing: Pairing, settings: Settings, glass?: typeof works) =>
  evaluateTable(pairing, settings, glass, planOf('build'));

export const OPENING = pairingSchema.parse(opening.pairing);
export const withRelay = (more: object): Pairing => pairingSchema.parse({ ...OPENING, relay: { ...OPENING.relay, ...more } });
export const sheetOf = (pairing: Pairing, ask: BuildAsk = {}) => buildSheet(worked(pairing, {}), buildAskSchema.parse(ask));
export const says = (pairing: Pairing, ask: BuildAsk = {}, settings: Settings = {}): string => {
  const evaluation = worked(pairing, settings);
  const sheet = buildSheet(evaluation, ask);
  return buildSentence(evaluation, sheet, buildEffects(evaluation, sheet));
};
