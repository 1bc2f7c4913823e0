export const FIGURES = [] as const;
