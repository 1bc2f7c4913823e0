import { holdsTheTruth } from './holds.ts';
import { WALLS } from './kinds.ts';

holdsTheTruth(WALLS);
