import '../../styles/table-stack.css';
import { short } from '../../../core/index.ts';
import { stackSentence, TABLE_GROUPS, type TableFigureId } from '../../../core/table.ts';
import { DEPTH, type Field, SUBJECT } from '../../fields/field-lists.ts';
import { Input } from '../../fields/input.tsx';
import { Lead } from '../../fields/lead.tsx';
import { SectionCautions } from '../cautions.tsx';
import { SettingFields } from '../fields.tsx';
import { FigureList } from '../figure-list.tsx';
import { TABLE, tabled } from '../tabled.ts';
import { ConventionTable } from './convention-table.tsx';
import { ObjectiveTable } from './objective-table.tsx';
import { StackPlate } from './stack-plate.tsx';

type Id = TableFigureId<'stack'>;

/** Fields of the pairing that decide a stack, named as they are out of their own place. */
const named = (fields: readonly Field[], key: string, label: string): Field => ({
  ...(fields.find((field) => field.key === key) as Field),
  label,
});
const PAIRING_FIELDS = [
  named(SUBJECT, 'subject/depthMm', 'Depth of the subject'),
  named(SUBJECT, 'subject/index', 'Refractive index around the subject'),
  named(DEPTH, 'depth/convention', 'Convention of depth'),
];

/** The exposure is the same for the stack and for stillness, and stands on the page once. */
const exposed = (): string => `${short(TABLE.taken('/exposureS')?.value ?? 0)} s`;

/** What is set on the rail; the rest is folded. */
const FIRST: readonly Id[] = ['framesInAll', 'frameStepUm', 'railTravelMm', 'stackTimeS', 'railErrorForgivenUm'];

/** Figures that a rail which is too coarse does not have: its reason is said once, above. */
function hasOwnWords(id: Id): boolean {
  const { answers } = tabled.value;
  const [step, answer] = [answers.frameStepUm, answers[id]];
  return !(step.state === 'none' && answer.state === 'none' && answer.why === step.why);
}

/** The frames from the front of the subject to its back. */
export function StackSection() {
  const { figures, settings } = TABLE_GROUPS.stack;
  const ids = figures.map(({ id }) => id).filter(hasOwnWords);
  const rest = ids.filter((id) => !FIRST.includes(id));
  return (
    <div class="stack-part">
      <p class="sentence" role="status">
        {stackSentence(tabled.value)}
      </p>
      <StackPlate />
      <div class="fields">
        {PAIRING_FIELDS.map((field) => (
          <Input key={field.key} field={field} path={`/${field.key}`} />
        ))}
      </div>
      <SettingFields keys={settings.map(({ key }) => key).filter((key) => key !== 'exposureS')} />
      <p class="hint">
        Each frame is exposed for <Lead path="/exposureS">{exposed()}</Lead>, as set under light and stillness.
      </p>
      <FigureList ids={FIRST.filter(hasOwnWords)} />
      {rest.length > 0 && (
        <details class="fold">
          <summary>Ends, curved field, focus and scale</summary>
          <FigureList ids={rest} />
        </details>
      )}
      <ConventionTable />
      <ObjectiveTable />
      <SectionCautions group="stack" />
    </div>
  );
}
