/**
 * Parts typed as they are engraved, as a contents page of its own: the page fetches it once its first answer stands.
 */

export { readObjective } from './parts/engraving/objective.ts';
export { isWhole, type Reading } from './parts/engraving/reading.ts';
export { readRelay } from './parts/engraving/relay.ts';
export { readSensor } from './parts/engraving/sensor.ts';
