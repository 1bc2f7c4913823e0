import { amount } from '../../parts/quantity.ts';
import type { TableEvaluation } from '../evaluate.ts';

/** Relays and tubes longer than this, or heavier lenses, bend what they hang on, mm. */
const LONG = 120;
/** Nearer to the subject than this a turn of the focusing tube is too much, mm. */
const NEAR = 5;

export function buildCautions({ pairing, answers }: TableEvaluation): readonly string[] {
  const tube = answers.tubeLengthMm;
  const working = pairing.objective.workingDistanceMm;
  const long = pairing.relay.kind === 'camera-lens' || (tube.state === 'known' && tube.value > LONG);
  return [
    'Never force a thread that binds: threads that look alike may not mate, and a crossed one is spoilt.',
    ...(long
      ? [
          'A heavy relay or a long tube bends the filter thread or mount that it hangs on: carry the rig under the relay, not by the camera alone. What each part may carry is in its maker’s data.',
        ]
      : []),
    ...(working !== undefined && amount(working) < NEAR
      ? ['The nose stands within 5 mm of the subject: screw the rig together away from it, and come nearer while you watch from the side.']
      : []),
  ];
}
