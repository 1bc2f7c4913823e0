import type { Figure } from '../figure.ts';
import { type Plan, planned } from '../pairing/registry.ts';
import { FIGURES as BUILD } from './build/figures.ts';
import { SETTINGS as BUILD_SETTINGS } from './build/settings.ts';
import { FIGURES as CLOSE_UP } from './close-up/figures.ts';
import { SETTINGS as CLOSE_UP_SETTINGS } from './close-up/settings.ts';
import { FIGURES as INFINITY } from './infinity/figures.ts';
import { SETTINGS as INFINITY_SETTINGS } from './infinity/settings.ts';
import { FIGURES as LIGHT } from './light/figures.ts';
import { SETTINGS as LIGHT_SETTINGS } from './light/settings.ts';
import { type Setting, type Shape, shapeOf } from './setting.ts';
import { FIGURES as STACK } from './stack/figures.ts';
import { SETTINGS as STACK_SETTINGS } from './stack/settings.ts';
import { FIGURES as STILLNESS } from './stillness/figures.ts';
import { SETTINGS as STILLNESS_SETTINGS } from './stillness/settings.ts';

/**
 * The figures of the table, in the groups and the order in which they are read, and what is set for each. They
 * stand beside the pairing's own (`pairing/registry.ts`) and rest on the same nodes, but are worked out only
 * where the table is looked at: the answer under the hand must not wait for them.
 */
export const TABLE_GROUPS = {
  build: { figures: BUILD, settings: BUILD_SETTINGS },
  infinity: { figures: INFINITY, settings: INFINITY_SETTINGS },
  stack: { figures: STACK, settings: STACK_SETTINGS },
  stillness: { figures: STILLNESS, settings: STILLNESS_SETTINGS },
  light: { figures: LIGHT, settings: LIGHT_SETTINGS },
  closeUp: { figures: CLOSE_UP, settings: CLOSE_UP_SETTINGS },
} as const;

export type TableGroup = keyof typeof TABLE_GROUPS;
type Groups = typeof TABLE_GROUPS;

/** The ids of one group's figures, or of all. */
export type TableFigureId<G extends TableGroup = TableGroup> = { [N in G]: Groups[N]['figures'][number]['id'] }[G];
/** The keys of one group's settings, or of all. */
export type SettingKey<G extends TableGroup = TableGroup> = { [N in G]: Groups[N]['settings'][number]['key'] }[G];

export const TABLE_GROUP_NAMES = Object.keys(TABLE_GROUPS) as TableGroup[];

export const TABLE_FIGURES = Object.values(TABLE_GROUPS).flatMap<Figure<TableFigureId>>(({ figures }) => [...figures]);
export const tableFigureById = (id: TableFigureId): Figure<TableFigureId> =>
  TABLE_FIGURES.find((f) => f.id === id) as Figure<TableFigureId>;

/** Every setting once: one that several groups ask for is the same. */
export const SETTINGS: readonly Setting[] = [...new Set(Object.values(TABLE_GROUPS).flatMap<Setting>(({ settings }) => [...settings]))];

type All = readonly { [G in TableGroup]: Groups[G]['settings'][number] }[TableGroup][];
export const settingsShape = shapeOf(SETTINGS) as unknown as Shape<All>;

/** What is worked out for the whole table, and for one group alone. */
export const WHOLE_TABLE = planned(TABLE_FIGURES);
export const planOf = (group: TableGroup): Plan<TableFigureId> => planned<TableFigureId>(TABLE_GROUPS[group].figures);
