import { BRIGHT_LIGHT } from '../bright-light.ts';

export const stillnessCautions = (): readonly string[] => [
  BRIGHT_LIGHT,
  'Flashes one after the other can set off seizures in people who are sensitive to them: warn whoever is in the room, or shade the light.',
];
