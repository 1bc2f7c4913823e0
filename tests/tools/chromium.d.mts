/** Where a Chromium stands on this machine, or undefined. */
export function findChromium(): string | undefined;
/** Finds a Chromium, installing Debian's when root; undefined where there is none to be had. */
export function ensureChromium(): string | undefined;
export const CHROMIUM_ARGS: string[];
