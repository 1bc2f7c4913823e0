export const SETTINGS = [] as const;
