import { useEffect } from 'preact/hooks';
import '../../styles/rig.css';
import '../../styles/table-build.css';
import { amount, percent, short } from '../../../core/index.ts';
import { buildSentence, buildWords, darkens, type SheetPart, TABLE_GROUPS } from '../../../core/table.ts';
import { Input } from '../../fields/input.tsx';
import { fieldAt } from '../../fields/names.ts';
import { settle } from '../../state/address.ts';
import { draft } from '../../state/draft.ts';
import { withAt } from '../../state/json.ts';
import { SectionCautions } from '../cautions.tsx';
import { SettingFields } from '../fields.tsx';
import { FigureList } from '../figure-list.tsx';
import type { OnSheet } from '../on-sheet.ts';
import { tabled } from '../tabled.ts';
import { box, built, effects } from './box.ts';
import { BoxFields, CameraFields } from './box-fields.tsx';
import { PartsTable } from './parts-table.tsx';
import { RigPlate } from './rig-plate.tsx';
import { ThreadsPlate } from './threads-plate.tsx';

/** What is said before the drawing, the answer, or below it, the rest. */
const said = (answer: boolean): string =>
  buildWords(tabled.value, built.value, effects.value)
    .filter(({ as }) => (as === 'answer') === answer)
    .map(({ text }) => text)
    .join(' ');

/** Neighbours that differ in nothing but their lengths are one line of the sheet. */
function inLines(parts: readonly SheetPart[]): readonly (readonly [SheetPart, ...SheetPart[]])[] {
  const lines: [SheetPart, ...SheetPart[]][] = [];
  for (const part of parts) {
    const last = lines.at(-1);
    const alike = last && part.role === 'tube' && last[0].what === part.what && last[0].standing === part.standing;
    if (alike && !part.remark && !last[0].remark) last.push(part);
    else lines.push([part]);
  }
  return lines;
}

/** Parts as the sheet lists them: what they are, how they are turned in, how long. */
function listed(alike: readonly [SheetPart, ...SheetPart[]]): string {
  const [{ what, rear, standing, remark }] = alike;
  const lengths = alike.flatMap(({ lengthMm }) => (lengthMm === undefined ? [] : [short(lengthMm, 4)]));
  return [
    what,
    ...(standing === 'in the pairing' && rear ? [rear] : []),
    ...(lengths.length === 0 ? [] : [`${lengths.join(' + ')} mm`]),
    ...(remark?.startsWith('turns') ? [remark] : []),
    ...(standing === 'to buy' ? ['to buy'] : []),
  ].join(', ');
}

export const buildOnSheet = (): OnSheet => ({
  says: [buildSentence(tabled.value, built.value, effects.value, true)],
  figures: ['tubeLengthMm', 'shoulderFromFlangeMm', 'subjectToSensorMm'],
  // The camera stands at the sheet's head.
  list: inLines(built.value.parts.filter(({ role }) => role !== 'camera')).map(listed),
});

/** What one builds by. */
const SEEN = ['tubeLengthMm', 'builtTooLongMm', 'shoulderFromFlangeMm', 'subjectToSensorMm'] as const;

/** What to screw together, from the objective to the camera. */
export function BuildSection() {
  useEffect(() => box.follow(), []);
  const { figures } = TABLE_GROUPS.build;
  return (
    <>
      {box.fault.value && (
        <p class="notice" role="alert">
          The rings that this address holds could not be read: {box.fault.value}. The box is taken as empty.
        </p>
      )}
      <p class="sentence" aria-live="polite">
        {said(true)}
      </p>
      <RigPlate />
      <p class="rest" aria-live="polite">
        {said(false)}
      </p>
      <h3>The parts in order</h3>
      <PartsTable />
      <ThreadsPlate />
      <Offers />
      <div class="folds">
        <details class="fold">
          <summary>Threads and lengths of the parts</summary>
          <PartFields />
        </details>
        <details class="fold">
          <summary>Rings and tubes that you have</summary>
          <BoxFields />
        </details>
      </div>
      <FigureList ids={SEEN} />
      <details class="fold">
        <summary>Lengths between</summary>
        <FigureList ids={figures.map(({ id }) => id).filter((id) => !SEEN.some((seen) => seen === id))} />
      </details>
      <SectionCautions group="build" />
    </>
  );
}

const PAIRING_PATHS = ['/objective/mountThread', '/relay/maleThread', '/relay/femaleThread', '/relay/reversed', '/sensor/registerMm'];
/** Registers of a class, as guesses (common practice, without source). */
const REGISTERS = [
  ['A camera without a mirror', { value: 18, plusMinus: 2, origin: 'assumed' }],
  ['A camera with a mirror', { value: 44.5, plusMinus: 2.5, origin: 'assumed' }],
] as const;

function PartFields() {
  return (
    <>
      <div class="fields">
        {PAIRING_PATHS.map((path) => {
          const field = fieldAt(path);
          return field && <Input key={path} field={field} path={path} />;
        })}
      </div>
      <p class="choices beside">
        {REGISTERS.map(([words, register]) => (
          <button key={words} type="button" class="plain" onClick={() => settle(withAt(draft.value, '/sensor/registerMm', register))}>
            {words}
          </button>
        ))}
      </p>
      <div class="beside">
        <CameraFields />
      </div>
      <div class="beside">
        <SettingFields keys={TABLE_GROUPS.build.settings.map(({ key }) => key)} />
      </div>
    </>
  );
}

/** A tube that is so much off is worth a word, mm. */
const WORTH = 0.01;

/** What the rings do to the picture, taken into the pairing where that is wanted. */
function Offers() {
  const { back } = built.value;
  const { pairing, answers } = tabled.value;
  const { fresh } = effects.value;
  const error = answers.builtTooLongMm;
  const offset = amount(pairing.sensorOffsetMm ?? 0);
  const off = error.state === 'known' ? error.value : back.state === 'joined' ? (back.differsMm ?? 0) : 0;
  if (fresh.length === 0 && Math.abs(off) <= WORTH) return null;
  return (
    <div class="offers">
      {fresh.length > 0 && <Narrowest />}
      {Math.abs(off) > WORTH && (
        <p>
          {error.state === 'known' ? 'The tube as you built it is' : 'Of these pieces the tube comes out'} {short(Math.abs(off), 3)} mm too{' '}
          {off > 0 ? 'long' : 'short'}.{' '}
          <button type="button" class="lead" onClick={() => settle(withAt(draft.value, '/sensorOffsetMm', offset + off))}>
            Work with the sensor where it stands
          </button>
        </p>
      )}
    </div>
  );
}

/** Whether the narrowest rings darken the corners, and where they do the offer to count them. */
function Narrowest() {
  const { fresh, corner } = effects.value;
  const stops = tabled.value.pairing.stops ?? [];
  const open = fresh.map(({ diameterMm }) => short(amount(diameterMm), 3)).join(' and ');
  const told = `The narrowest of the pieces ${fresh.length === 1 ? 'leaves' : 'leave'} ${open} mm open`;
  if (corner === undefined) return <p>{told}; whether the corners are darker for it cannot be told of this pairing.</p>;
  if (!darkens(effects.value)) return <p>{told}: no corner is darker for it.</p>;
  return (
    <p>
      {told}: the light in the corners falls from {percent(corner.bare)} to {percent(corner.ringed)} of the middle.{' '}
      <button type="button" class="lead" onClick={() => settle(withAt(draft.value, '/stops', [...stops, ...fresh]))}>
        Count them as stops of the pairing
      </button>
    </p>
  );
}
