import { numberIn } from '../../pairing/answer.ts';
import { systemNa } from '../../pairing/aperture.ts';
import { immersion, subjectIndex } from '../../pairing/leaves.ts';
import { percent } from '../../words.ts';
import { numberAt } from '../at.ts';
import { FLASHES } from '../bright-light.ts';
import type { TableEvaluation } from '../evaluate.ts';

/** Edge rays that run ahead of the middle ones by less than this are not seen. */
const NOTICED = 0.02;

export function stackCautions(evaluation: TableEvaluation): string[] {
  const { answers, settings, pairing } = evaluation;
  const when = (holds: boolean, text: string): string[] => (holds ? [text] : []);
  const frames = numberIn(answers.framesInAll) ?? 0;
  const ahead = edgeAhead(evaluation);
  return [
    ...when(
      frames > 1,
      'The rail drives the nose toward the subject, frame by frame: go the whole way once by hand, and watch the gap from the side.',
    ),
    ...when(
      answers.curvatureFrames.state === 'unknown',
      'How far the corners focus from the middle is not known, and no frame is counted for it: look at a flat thing, and put in how far the focus moves.',
    ),
    ...when(
      answers.curvatureFrames.state === 'known' && settings.fieldCurvatureUm === undefined && pairing.relay.glass !== undefined,
      "Of the curved field only the relay's part is known, from its glass: the objective's own adds to it or takes from it.",
    ),
    ...when(
      ahead > NOTICED,
      `Under the flat surface the rays at the edge of the aperture move ${percent(ahead)} farther than those in the middle: deep down the picture turns soft, and steps want to be shorter.`,
    ),
    ...when(settings.flashRecycleS !== undefined, FLASHES),
  ];
}

/** By how much the rays at the edge of the aperture move farther with the rail than the paraxial ones; NaN where the aperture is not known. */
function edgeAhead(evaluation: TableEvaluation): number {
  const [NA, n, ni] = [systemNa, subjectIndex, immersion].map((node) => numberAt(evaluation, node)) as [number, number, number];
  return Math.abs(Math.sqrt((n * n - NA * NA) / (ni * ni - NA * NA)) / (n / ni) - 1);
}
