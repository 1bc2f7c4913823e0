import '../../styles/table-light.css';
import { lightSentence, TABLE_GROUPS, type TableFigureId } from '../../../core/table.ts';
import { SectionCautions } from '../cautions.tsx';
import { SettingFields } from '../fields.tsx';
import { FigureList } from '../figure-list.tsx';
import { settings as settingsNow, tabled } from '../tabled.ts';
import { SidePlate } from './side-plate.tsx';

type Id = TableFigureId<'light'>;

const FIRST: readonly Id[] = ['lightMiddleDeg', 'lightFarCornerDeg', 'lightShare', 'noseClearanceMm'];
const DIFFUSER: readonly Id[] = ['diffuserSpareMm', 'diffuserShare'];

/** From where light can reach the subject, and what is in the way. */
export function LightSection() {
  const { figures, settings } = TABLE_GROUPS.light;
  const first = settingsNow.value.value.diffuserDiameterMm === undefined ? FIRST : [...FIRST, ...DIFFUSER];
  return (
    <div class="light-part">
      <p class="sentence" role="status">
        {lightSentence(tabled.value)}
      </p>
      <SidePlate />
      <SettingFields keys={settings.map(({ key }) => key)} />
      <FigureList ids={first} />
      <details class="fold">
        <summary>{first === FIRST ? "The objective's cone, and a diffuser" : "The objective's cone"}</summary>
        <FigureList ids={figures.map(({ id }) => id).filter((id) => !first.includes(id))} />
      </details>
      <SectionCautions group="light" />
    </div>
  );
}
