import { closeUpClaims, closeUpSays, type SettingKey, TABLE_GROUPS, type TableFigureId } from '../../../core/table.ts';
import '../../styles/table-close-up.css';
import { SectionCautions } from '../cautions.tsx';
import { SettingFields } from '../fields.tsx';
import { FigureList } from '../figure-list.tsx';
import type { OnSheet } from '../on-sheet.ts';
import { settings, tabled } from '../tabled.ts';
import { AgainstTubes } from './against-tubes.tsx';
import { ReachPlate } from './reach-plate.tsx';

type Key = SettingKey<'closeUp'>;
type Id = TableFigureId<'closeUp'>;

const CAMERA: readonly Key[] = [
  'cameraFocalLengthMm',
  'closestFocusMm',
  'cameraMagnification',
  'cameraSubjectDistanceMm',
  'cameraFNumber',
  'extensionMm',
];
const FINER: readonly Key[] = ['cameraLengthMm', 'nearFocalLengthMm', 'cameraPrincipalPlaneMm', 'cameraPupilDepthMm', 'pupilRatio'];
const LENSES: readonly Key[] = ['closeUpFocalLengthMm', 'closeUpClearApertureMm', 'secondPowerDioptre', 'secondSeparationMm'];

const FIRST: readonly Id[] = [
  'closeUpFarthestMm',
  'closeUpFarMagnification',
  'closeUpNearestMm',
  'closeUpNearMagnification',
  'closeUpGain',
  'closeUpDiffractionFNumber',
  'closeUpRoomMm',
];

/** Camera lenses to try it on, mm. */
const EXAMPLES = [100, 200] as const;

/** What goes on the sheet: nothing until a camera lens is told. */
export const closeUpOnSheet = (): OnSheet =>
  tabled.value.answers.closeUpFarMagnification.state === 'known'
    ? { says: closeUpSays(tabled.value).slice(0, 1), figures: [] }
    : { says: [], figures: [] };

/** The same close-up lens screwed to a camera lens, with extension tubes beside it. */
export function CloseUpSection() {
  const { figures } = TABLE_GROUPS.closeUp;
  const { value } = tabled;
  // Without a close-up lens every figure would say the same again.
  const none = value.answers.closeUpFocalMm.state === 'none';
  return (
    <>
      <p class="sentence" aria-live="polite">
        {closeUpSays(value).join(' ')}
      </p>
      {!none && settings.value.value.cameraFocalLengthMm === undefined && <Examples />}
      <ReachPlate />
      <div class="beside">
        <SettingFields keys={CAMERA} />
      </div>
      <div class="folds beside">
        <details class="fold">
          <summary>More of the camera lens</summary>
          <SettingFields keys={FINER} />
        </details>
        <details class="fold" open={none}>
          <summary>Another close-up lens, or a second one</summary>
          <SettingFields keys={LENSES} />
        </details>
      </div>
      {!none && <Told ids={figures.map(({ id }) => id)} />}
      <SectionCautions group="closeUp" />
    </>
  );
}

/** What is known of it, beside tubes. */
const Told = ({ ids }: { ids: readonly Id[] }) => (
  <>
    <div class="against">
      <AgainstTubes />
      <div class="claims">
        {closeUpClaims(tabled.value).map((claim) => (
          <p key={claim}>{claim}</p>
        ))}
      </div>
    </div>
    <FigureList ids={FIRST} />
    <details class="fold beside">
      <summary>Fields, light, tubes and all the rest</summary>
      <FigureList ids={ids.filter((id) => !FIRST.includes(id))} />
    </details>
  </>
);

/** A camera lens to begin with. */
const Examples = () => (
  <p class="choices beside">
    {EXAMPLES.map((f) => (
      <button
        key={f}
        type="button"
        class="plain"
        onClick={() => {
          settings.take({ ...settings.draft.value, cameraFocalLengthMm: f });
          settings.done();
        }}
      >
        On a {f} mm lens
      </button>
    ))}
  </p>
);
