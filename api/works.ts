import { glassworks } from '../core/glassworks.ts';

/** What works with glass for every request; what it keeps it keeps with the request's own relay. */
export const WORKS = glassworks();
