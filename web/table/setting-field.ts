/** How the page calls a setting. */
export interface SettingField {
  label: string;
  /** For a choice: its options as they are read. */
  choices?: Readonly<Record<string, string>>;
}
