import { pairingSchema } from '../../core/index.ts';
import opening from '../../data/opening.json';

/** The opening example, bundled with the page: read by the same schema as anything else. */
export const OPENING = { pairing: pairingSchema.parse(opening.pairing) };
