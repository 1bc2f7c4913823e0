export const FIGURE_NAMES = {};
export const SETTING_FIELDS = {};
