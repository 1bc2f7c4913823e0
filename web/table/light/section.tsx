import '../../styles/table-light.css';
import { lightSentence, TABLE_GROUPS } from '../../../core/table.ts';
import { SectionCautions } from '../cautions.tsx';
import { SettingFields } from '../fields.tsx';
import { FigureList } from '../figure-list.tsx';
import { tabled } from '../tabled.ts';
import { SidePlate } from './side-plate.tsx';

/** From where light can reach the subject, and what is in the way. */
export function LightSection() {
  const { figures, settings } = TABLE_GROUPS.light;
  return (
    <div class="light-part">
      <p class="sentence" role="status">
        {lightSentence(tabled.value)}
      </p>
      <div class="plate-and-list">
        <SidePlate />
        <FigureList ids={figures.map(({ id }) => id)} />
      </div>
      <SettingFields keys={settings.map(({ key }) => key)} />
      <SectionCautions group="light" />
    </div>
  );
}
