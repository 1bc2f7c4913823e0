import type { SettingKey, TableFigureId } from '../../../core/table.ts';
import type { SettingField } from '../setting-field.ts';

export const FIGURE_NAMES: Record<TableFigureId<'build'>, string> = {
  tubeLengthMm: 'Tube to build',
  builtTooLongMm: 'Built too long by',
  focusBehindRelayMm: 'Relay to its focus',
  rimFromFlangeMm: 'Flange to relay',
  shoulderFromFlangeMm: 'Flange to objective',
  subjectFromFlangeMm: 'Flange to subject',
  subjectToSensorMm: 'Subject to sensor',
  barrelLengthMm: 'Objective, nose to shoulder',
};

export const SETTING_FIELDS: Record<SettingKey<'build'>, SettingField> = {
  relayLengthMm: { label: 'Length of the relay, rim to seat' },
  seatBehindGlassMm: { label: 'Last surface to seat' },
  builtTubeMm: { label: 'Tube as built' },
};
