import { batch, computed, signal } from '@preact/signals';
import { z } from 'zod';
import { type Pairing, PairingError, type Problem, pairingSchema, sameJson, steps, valueAt } from '../../../core/index.ts';
import { type Finding, MOST_SIGHTINGS, measuredAs, type Saw, SIGHTING_KINDS, type Sighting, sawOf } from '../../../core/table.ts';
import { commit, settle } from '../../state/address.ts';
import { answered } from '../../state/draft.ts';
import { withAt } from '../../state/json.ts';
import { kept } from '../../state/kept.ts';
import { tableTexts } from '../../state/view.ts';
import { worksNow } from '../../state/works.ts';
import { type Row, readRow } from './rows.ts';

/** What was typed of what was seen, and what stood in the pairing before a finding took its place. */
const keptSchema = z.strictObject({
  rows: z
    .array(z.strictObject({ kind: z.enum(SIGHTING_KINDS), texts: z.record(z.string().max(20), z.string().max(24)) }))
    .max(MOST_SIGHTINGS),
  opening: z.string().max(60).optional(),
  stood: z.record(z.string().max(60), z.unknown()).optional(),
});
export type SawKept = z.infer<typeof keptSchema>;

/** What was seen; it stands in the address. */
export const sightings = kept<SawKept>(tableTexts.saw, keptSchema, { rows: [] });

/** Half-typed rows are given time before anything is said against them. */
export const quiet = signal(false);
const PATIENCE_MS = 800;
let waiting: ReturnType<typeof setTimeout> | undefined;

export function change(part: Partial<SawKept>): void {
  clearTimeout(waiting);
  batch(() => {
    quiet.value = true;
    sightings.take({ ...sightings.value.peek(), ...part });
  });
  waiting = setTimeout(settleRows, PATIENCE_MS);
}

const settleRows = (): void => {
  clearTimeout(waiting);
  quiet.value = false;
};

/** A blank was left, a row added or taken away: one step of history. */
export function done(): void {
  settleRows();
  commit();
}

export const changeRow = (at: number, row: Row): void =>
  change({ rows: sightings.value.peek().rows.with(at, row as SawKept['rows'][number]) });

/** The pairing as it was before anything was taken: what was seen is always held against that. */
function untaken(pairing: Pairing, stood: SawKept['stood'] = {}): Pairing {
  let before: unknown = pairing;
  for (const [path, value] of Object.entries(stood)) {
    const here = valueAt(pairing, steps(path));
    if (typeof here === 'object' && (here as { origin?: string }).origin === 'measured') before = withAt(before, path, value ?? undefined);
  }
  const parsed = pairingSchema.safeParse(before);
  return parsed.success ? parsed.data : pairing;
}

export interface Looked {
  readonly saw?: Saw;
  /** The sightings that count, and the row of each. */
  readonly sightings: readonly Sighting[];
  readonly rows: readonly number[];
  /** What is wrong, by row; -1 for the opening. */
  readonly problems: ReadonlyMap<number, Problem>;
}

/** What the rows that are filled in say of the pairing. */
export const looked = computed((): Looked => {
  const { rows, opening, stood } = sightings.value.value;
  const problems = new Map<number, Problem>();
  const places: number[] = [];
  const list: Sighting[] = [];
  rows.forEach((row, i) => {
    const read = readRow(row);
    if (read.problems) problems.set(i, read.problems[0] as Problem);
    if (!read.sighting) return;
    places.push(i);
    list.push(read.sighting);
  });
  if (list.length === 0) return { sightings: list, rows: places, problems };
  try {
    const pairing = untaken(answered.value.pairing, stood);
    return {
      saw: sawOf(pairing, { sightings: list, ...(opening ? { opening } : {}) }, worksNow()),
      sightings: list,
      rows: places,
      problems,
    };
  } catch (error) {
    if (!(error instanceof PairingError)) throw error;
    for (const problem of error.problems) {
      const place = /^\/sightings\/(\d+)/.exec(problem.path)?.[1];
      problems.set(place === undefined ? -1 : (places[Number(place)] as number), problem);
    }
    return { sightings: list, rows: places, problems };
  }
});

const quantityOf = (finding: Finding): object => measuredAs(finding, untaken(answered.peek().pairing, sightings.value.peek().stood));

/** Whether the pairing holds a finding already. */
export const isTaken = (finding: Finding): boolean => sameJson(valueAt(answered.value.pairing, steps(finding.path)), quantityOf(finding));

/** Puts a finding into the pairing, as one step of history; what stood there is remembered. */
export function takeFinding(finding: Finding): void {
  const { pairing } = answered.peek();
  const { stood = {} } = sightings.value.peek();
  const quantity = quantityOf(finding);
  if (!(finding.path in stood)) {
    const before = valueAt(pairing, steps(finding.path));
    sightings.take({ ...sightings.value.peek(), stood: { ...stood, [finding.path]: before ?? null } });
  }
  settle(withAt(pairing, finding.path, quantity));
}

/** Puts back what stood where a finding was taken. */
export function putBack({ path }: Finding): void {
  const { stood = {}, ...rest } = sightings.value.peek();
  const { [path]: before, ...others } = stood;
  sightings.take(Object.keys(others).length > 0 ? { ...rest, stood: others } : rest);
  settle(withAt(answered.peek().pairing, path, before ?? undefined));
}
