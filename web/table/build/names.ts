import type { SettingKey, TableFigureId } from '../../../core/table.ts';
import type { SettingField } from '../setting-field.ts';

export const FIGURE_NAMES: Record<TableFigureId<'build'>, string> = {
  tubeLengthMm: 'Tube to build',
  builtTooLongMm: 'Tube as built, too long by',
  focusBehindRelayMm: 'Relay, seat to its focus',
  rimFromFlangeMm: 'Camera’s flange to relay’s rim',
  shoulderFromFlangeMm: 'Camera’s flange to objective’s shoulder',
  subjectFromFlangeMm: 'Camera’s flange to subject',
  subjectToSensorMm: 'Subject to sensor',
  barrelLengthMm: 'Objective, nose to shoulder',
};

export const SETTING_FIELDS: Record<SettingKey<'build'>, SettingField> = {
  relayLengthMm: { label: 'Relay, rim to seat' },
  seatBehindGlassMm: { label: 'Relay, last surface to seat' },
  builtTubeMm: { label: 'Tube as built' },
};
