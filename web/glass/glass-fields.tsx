import { firstSide, GLASS_NAMES, reversed } from '../../core/glassworks.ts';
import { listed, steps, valueAt } from '../../core/index.ts';
import { Complaint, toldAt } from '../fields/complaint.tsx';
import { Input } from '../fields/input.tsx';
import { fieldAt, inputId } from '../fields/names.ts';
import { Radios } from '../fields/radios.tsx';
import { settle } from '../state/address.ts';
import { answered, draft } from '../state/draft.ts';
import { withAt } from '../state/json.ts';
import { choose, type Known, knownNow } from './known.ts';
import { CLASSES, type Listing, listingOf } from './listing.ts';
import { classTried, hasClass } from './search.ts';
import { studied } from './studied.ts';
import { GLASS_LIST, SurfaceTable } from './surface-table.tsx';

const GLASS = '/relay/glass';
const SECOND = '/relay/glass/second';

const text = (key: string, label: string) => ({ key, label, kind: 'text' as const });

const KNOWN: Record<Known, string> = {
  nothing: 'I do not know the glass',
  class: 'a lens of this class',
  surfaces: 'surface by surface',
};

const here = (path: string): unknown => valueAt(draft.value, steps(path));
const place = (path: string, value: unknown): void => settle(withAt(draft.value, path, value));

/** What is known of the relay's glass, and which way round it stands. */
export function GlassFields() {
  const known = knownNow();
  return (
    <div class="glass-fields" id={inputId(GLASS)} tabIndex={-1}>
      <Radios legend="What is known of its glass" name="known" options={KNOWN} value={known} onChoose={choose} />
      <Complaint id={`${inputId(GLASS)}-wrong`} found={known === 'surfaces' ? [] : toldAt(GLASS)} />
      {known === 'nothing' && <Unknown />}
      {known === 'class' && <OfClass />}
      {known === 'surfaces' && <Surfaces />}
      {known !== 'nothing' && <Turned />}
    </div>
  );
}

/** Of a lens of unknown glass only its class can be tried. */
function Unknown() {
  if (!hasClass(answered.value))
    return <p class="hint">Lenses of a class are tried in the place of a close-up lens only: the glass of another relay must be told.</p>;
  return (
    <Radios
      legend="Then lenses like it are tried; like which"
      name="tried"
      options={CLASSES}
      value={classTried.value}
      onChoose={(name) => {
        classTried.value = name;
      }}
    />
  );
}

const LEADING = { crown: 'crown on the side of the male thread', flint: 'flint on the side of the male thread' } as const;

/** One lens of a class: made for the relay's focal length and opening, of usual glasses or of others. */
function OfClass() {
  const { class: kind, leading = 'crown' } = here(GLASS) as { class?: unknown; leading?: unknown };
  const lens = studied.value?.judging.ways[0].lens;
  return (
    <>
      <Radios legend="Which class" name="class" options={CLASSES} value={String(kind)} onChoose={(name) => place(`${GLASS}/class`, name)} />
      <Names />
      <div class="fields">
        <Input field={text('crown', kind === 'singlet' ? 'Glass' : 'Crown')} path={`${GLASS}/crown`} list={GLASS_LIST} />
        {kind !== 'singlet' && <Input field={text('flint', 'Flint')} path={`${GLASS}/flint`} list={GLASS_LIST} />}
      </div>
      {kind !== 'singlet' && (
        <Radios
          legend="Which first"
          name="leading"
          options={LEADING}
          value={String(leading)}
          onChoose={(name) => place(`${GLASS}/leading`, name)}
        />
      )}
      {lens && (
        <>
          <p class="hint">
            Made of {listed(lens.media.filter((m) => m.name !== 'air').map((m) => m.name))}, bent for the close-up lens's normal job.
          </p>
          <p class="choices">
            <button type="button" class="plain" onClick={() => place(GLASS, listingOf(lens))}>
              Write its surfaces out
            </button>
          </p>
        </>
      )}
    </>
  );
}

function Names() {
  return (
    <datalist id={GLASS_LIST}>
      {GLASS_NAMES.map((name) => (
        <option key={name} value={name} />
      ))}
      <option value="air" />
    </datalist>
  );
}

function Surfaces() {
  const second = here(SECOND) as (Listing & { reversed?: boolean }) | undefined;
  return (
    <>
      <Names />
      <SurfaceTable path={GLASS} caption="Surfaces from the side with the male thread; a radius is positive where its centre lies behind" />
      {second === undefined ? (
        <p class="choices">
          <button type="button" class="plain" onClick={() => place(SECOND, secondOf(here(GLASS) as Listing))}>
            Add a second lens behind it
          </button>
        </p>
      ) : (
        <fieldset class="second">
          <legend>The second lens, behind the first</legend>
          <div class="fields">
            <Input
              field={{ ...(fieldAt(`${SECOND}/gapMm`) as NonNullable<ReturnType<typeof fieldAt>>), kind: 'number' }}
              path={`${SECOND}/gapMm`}
            />
          </div>
          <SurfaceTable path={SECOND} caption="Surfaces from the side with its male thread" />
          <label class="tick">
            <input
              type="checkbox"
              checked={second.reversed === true}
              onChange={({ currentTarget }) => place(`${SECOND}/reversed`, currentTarget.checked || undefined)}
            />
            the second lens is turned round against the first
          </label>
          <p class="choices">
            <button type="button" class="plain" onClick={() => place(SECOND, undefined)}>
              Take the second lens out
            </button>
          </p>
        </fieldset>
      )}
    </>
  );
}

/** A second lens begins as the first one's twin, screwed into it. */
const secondOf = ({ radiiMm, thicknessesMm, glasses, semiAperturesMm }: Listing): object => ({
  gapMm: 3,
  radiiMm,
  thicknessesMm,
  glasses,
  ...(semiAperturesMm ? { semiAperturesMm } : {}),
});

/** Which way round it stands: by its thread, and by the side that is the weaker. */
function Turned() {
  const { relay } = answered.value.pairing;
  const thread = relay.maleThread ? `male thread (${relay.maleThread.replace(' x ', ' × ')})` : 'male thread';
  const lens = studied.value?.judging.ways[0].lens;
  const side = (first: ReturnType<typeof firstSide>): string =>
    first ? `, its ${first === 'weak' ? 'weaker' : 'stronger'} side first` : '';
  return (
    <Radios
      legend="How it stands"
      name="turned"
      options={{
        no: `${thread} toward the objective${lens ? side(firstSide(lens)) : ''}`,
        yes: `turned round: ${thread} toward the camera${lens ? side(firstSide(reversed(lens))) : ''}`,
      }}
      value={here('/relay/reversed') === true ? 'yes' : 'no'}
      onChoose={(turned) => place('/relay/reversed', turned === 'yes' ? true : undefined)}
    />
  );
}
