import type { SharpOver } from '../../core/glassworks.ts';
import { short } from '../../core/index.ts';
import { engravedObjective, engravedSensor } from '../fields/engrave.ts';
import { OBJECTIVE, SHARP, SPACING } from '../fields/field-lists.ts';
import { Input } from '../fields/input.tsx';
import { fieldAt } from '../fields/names.ts';
import { Radios } from '../fields/radios.tsx';
import { openView } from '../state/address.ts';
import { answered, report } from '../state/draft.ts';
import { sharpOver, studied } from './studied.ts';

const space = SPACING.find((field) => field.key === 'infinitySpaceMm');
const pupil = OBJECTIVE.find((field) => field.key === 'exitPupilFromShoulderMm');
const wavelength = fieldAt('/wavelengthNm');

const OVER: Readonly<Record<SharpOver, string>> = { picture: 'the whole picture', subject: 'the subject on it' };

/** Between what it stands, how far from it, and how it is judged. */
export function Stands() {
  const { objective, sensor } = answered.value.pairing;
  const judged = studied.value?.study.frequency;
  return (
    <section class="setting" aria-labelledby="stands-title">
      <h2 id="stands-title">Where it stands</h2>
      <p>
        Behind {engravedObjective(objective)}, before {engravedSensor(sensor)}:{' '}
        <button type="button" class="lead" onClick={() => openView('pairing')}>
          change them
        </button>
        .
      </p>
      {space && <Input field={space} path="/infinitySpaceMm" />}
      {pupil && <Input field={pupil} path="/objective/exitPupilFromShoulderMm" />}
      {report.value.coverage.subject && (
        <Radios
          legend="What is to be sharp"
          name="over"
          options={OVER}
          value={sharpOver.value}
          onChoose={(name) => {
            sharpOver.value = name;
          }}
        />
      )}
      <details class="fold">
        <summary>Light, detail and focus that it is judged by</summary>
        <div class="fields">
          {[...SHARP, ...(wavelength ? [wavelength] : [])].map((field) => (
            <Input
              key={field.key}
              field={field}
              path={`/${field.key}`}
              standing={field.key === 'sharp/frequency' && judged !== undefined ? short(judged) : undefined}
            />
          ))}
        </div>
      </details>
    </section>
  );
}
