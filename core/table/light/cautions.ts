import { numberIn } from '../../pairing/answer.ts';
import { amount } from '../../parts/quantity.ts';
import { short } from '../../words.ts';
import { BRIGHT_LIGHT } from '../bright-light.ts';
import type { TableEvaluation } from '../evaluate.ts';

/** Closer than this a wrong turn of the rail's knob ends in the subject, mm. */
const CLOSE = 1;

export function lightCautions({ answers, pairing: { objective } }: TableEvaluation): string[] {
  const left = numberIn(answers.noseClearanceMm);
  const least = answers.noseClearanceMm.state === 'known' ? (answers.noseClearanceMm.low ?? left) : undefined;
  const cover = amount(objective.coverGlassMm ?? 0);
  const when = (holds: boolean, text: string): string[] => (holds ? [text] : []);
  return [
    ...when(
      left !== undefined && least !== undefined && left > 0 && least <= CLOSE,
      `The nose comes within ${short(left ?? 0)} mm of the subject, and may come closer than these figures say: drive the last part by hand, and watch from the side.`,
    ),
    ...when(
      left !== undefined && left <= 0,
      'The nose would strike the subject, or what stands before it, on the way to its back: raise the subject out of its dish, or stop the rail before.',
    ),
    ...when(
      cover > 0,
      `Engraved for a cover glass of ${short(cover)} mm: makers count the working distance from the glass or from the subject under it, and their data sheet says which.`,
    ),
    BRIGHT_LIGHT,
    'Lamps warm and dry what is alive: keep them off until you shoot, and keep to the rules on collecting where you are.',
  ];
}
