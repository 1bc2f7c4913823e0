import type { OneMore, Opening, Shift } from '../../core/choosing.ts';
import { listed, type Objective, type Relay, short } from '../../core/index.ts';
import { lower } from '../fields/names.ts';
import { FIGURE_NAMES } from '../figures/names.ts';
import { answerSaid } from './gives-up.ts';

export const counted = (n: number, word: string): string => `${n} ${word}${n === 1 ? '' : 's'}`;

/** What is owned and what that gives; how many parts were tried to no avail. */
export function ownedSaid({ owned, openings, others }: OneMore): string {
  const have = [counted(owned.objectives, 'objective'), counted(owned.relays, 'relay')];
  const gives = owned.feasible === 0 ? 'no pairing gives' : owned.feasible === 1 ? 'one pairing gives' : `${owned.feasible} pairings give`;
  const opens =
    openings.length === 0
      ? others === 0
        ? 'There is no part that is not yours.'
        : `None of the ${counted(others, 'part')} that are not yours opens anything.`
      : others === 0
        ? ''
        : `${counted(others, 'other part')} ${others === 1 ? 'opens' : 'open'} nothing.`;
  return `With your ${listed(have)} ${gives} what is asked. ${opens}`.trim();
}

/** `finest separation recorded 1.2 µm in the place of 1.9 µm`, each against the best of what is owned. */
export const shiftsSaid = (shifts: readonly Shift[]): string =>
  shifts
    .map(({ figure, from, to }) => `${lower(FIGURE_NAMES[figure])} ${answerSaid(figure, to)} in the place of ${answerSaid(figure, from)}`)
    .join('; ');

/** What a seller is asked besides what is engraved: threads, and the room that is left before an objective. */
export function lookFor({ kind, part, best }: Pick<Opening, 'kind' | 'part' | 'best'>): string[] {
  if (kind === 'relay') {
    const { maleThread, femaleThread } = part as Relay;
    const threads = [...(maleThread ? [`male ${maleThread}`] : []), ...(femaleThread ? [`female ${femaleThread}`] : [])];
    return [threads.length > 0 ? `thread ${listed(threads)}` : 'ask for its threads'];
  }
  const { mountThread } = part as Objective;
  const free = best.figures.clearWorkingDistanceMm;
  return [
    mountThread ? `thread ${mountThread}` : 'ask for its thread',
    free.state === 'known'
      ? `at least ${short(Math.floor(10 * (free.low ?? free.value)) / 10)} mm free before the lens`
      : 'ask for its working distance',
  ];
}
