import { computed } from '@preact/signals';
import { useState } from 'preact/hooks';
import { DEFAULTS, duration, numberIn, type Objective, sameJson, short } from '../../../core/index.ts';
import { CONVENTION_WORDS, MOST_OBJECTIVES, nearestIn, type ObjectiveStack, objectiveName, stackByObjective } from '../../../core/table.ts';
import { TABLE_ROLES as AS } from '../../charts/roles.ts';
import { catalogue } from '../../state/catalogue.ts';
import { answered } from '../../state/draft.ts';
import { worksNow } from '../../state/works.ts';
import { settings } from '../tabled.ts';

/** The objectives that are owned, else all that are listed; the pairing's own is always among them. */
const compared = computed(() => {
  const { objective } = answered.value.pairing;
  const listed = typeof catalogue.value === 'object' ? catalogue.value.objectives : [];
  const owned = listed.filter(({ own }) => own?.owned);
  const others = (owned.length > 0 ? owned : listed).map(({ part }) => part).filter((part) => !sameJson(part, objective));
  const all: readonly Objective[] = [objective, ...others];
  return { owned: owned.length > 0, all, leftOut: Math.max(0, all.length - MOST_OBJECTIVES) };
});

const rows = computed(() => stackByObjective(answered.value.pairing, settings.value.value, compared.value.all, worksNow()));

const COLUMNS: readonly (readonly [title: string, of: (row: ObjectiveStack) => string])[] = [
  ['picture', ({ magnification }) => (magnification === undefined ? '–' : `${short(magnification)}×`)],
  ['depth of a frame, µm', ({ depthUm }) => bare(depthUm)],
  ['step, µm', ({ stepUm }) => bare(stepUm)],
  ['frames', ({ frames }) => (frames === undefined ? '–' : String(frames))],
  ['travel, mm', ({ railTravelMm }) => bare(railTravelMm)],
  ['time', ({ timeS }) => (timeS === undefined ? '–' : duration(timeS))],
];
const bare = (x: number | undefined): string => (x === undefined ? '–' : short(x));

/** Rows in sight at once; the others come on demand, and on paper. */
const IN_SIGHT = 8;
/** Printers' marks, one for each reason why there are no frames. */
const MARKS = ['*', '†', '‡', '§', '‖', '¶'] as const;

const near = computed(() => {
  const size = numberIn(answered.value.answers.systemMagnification);
  return size === undefined ? new Set(rows.value) : nearestIn(rows.value, size, IN_SIGHT);
});

/** The same subject with other objectives in this one's place. */
export function ObjectiveTable() {
  const [whole, setWhole] = useState(false);
  const { owned, leftOut } = compared.value;
  const here = objectiveName(answered.value.pairing.objective);
  const convention = CONVENTION_WORDS[answered.value.pairing.depth?.convention ?? DEFAULTS.depthConvention];
  const reasons = [...new Set(rows.value.flatMap(({ why }) => why ?? []))];
  const marked = (why: string): string => MARKS[reasons.indexOf(why)] ?? `(${reasons.indexOf(why) + 1})`;
  const shown = (row: ObjectiveStack): boolean => whole || row.name === here || near.value.has(row);
  const inSight = new Set(rows.value.filter(shown).flatMap(({ why }) => why ?? []));
  return (
    <div class="by-objective">
      <h3 id="by-objective">The same subject with {owned ? 'each of your objectives' : 'other objectives'}</h3>
      {typeof catalogue.value !== 'object' && (
        <p class="hint" role="status">
          {catalogue.value === 'asking' ? 'The list of objectives is on its way.' : 'The list of objectives cannot be reached now.'}
        </p>
      )}
      <table class="objectives" aria-labelledby="by-objective" {...AS.table}>
        <thead {...AS.rows}>
          <tr {...AS.row}>
            <th {...AS.column}>Objective</th>
            {COLUMNS.map(([title]) => (
              <th key={title} {...AS.column}>
                {title}
              </th>
            ))}
          </tr>
        </thead>
        <tbody {...AS.rows}>
          {rows.value.map((row, i) => (
            // Two of the list may bear one name.
            <tr key={`${row.name} ${i}`} class={row.name === here ? 'here' : shown(row) ? undefined : 'far'} {...AS.row}>
              <th {...AS.name}>
                {row.name}
                {row.why && ` ${marked(row.why)}`}
                {row.name === here && <small> in this pairing</small>}
              </th>
              {COLUMNS.map(([title, of]) => (
                <td key={title} {...AS.cell}>
                  {of(row)}
                </td>
              ))}
            </tr>
          ))}
        </tbody>
      </table>
      {rows.value.length > IN_SIGHT && (
        <button type="button" class="lead" aria-expanded={whole} onClick={() => setWhole(!whole)}>
          {whole ? 'Only those nearest in magnification' : `All ${rows.value.length} objectives`}
        </button>
      )}
      {reasons.map((why) => (
        <p key={why} class={inSight.has(why) ? 'hint' : 'hint far'}>
          {marked(why)} No frames: {why}.
        </p>
      ))}
      <p class="hint">
        Each stands in this pairing's place: same relay, camera and settings; the depth of a frame is {convention}; values without their ±.
        {leftOut > 0 ? ` ${leftOut} more are left out.` : ''}
      </p>
    </div>
  );
}
