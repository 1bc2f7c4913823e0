import { holdsTheTruth } from './holds.ts';
import { LENSES } from './kinds.ts';

holdsTheTruth(LENSES);
