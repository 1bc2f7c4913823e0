/** How the page calls a setting. */
export interface SettingField {
  label: string;
}
