import { pairingSchema } from '../../core/index.ts';
import text from '../../data/opening.json';

/** The opening example, bundled with the page: read by the same schema as anything else. */
export const OPENING = { title: text.title, story: text.story, pairing: pairingSchema.parse(text.pairing) };
