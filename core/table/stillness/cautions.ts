import { BRIGHT_LIGHT, FLASHES } from '../bright-light.ts';

export const stillnessCautions = (): readonly string[] => [BRIGHT_LIGHT, FLASHES];
