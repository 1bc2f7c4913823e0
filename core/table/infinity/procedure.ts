import { sensorOffset } from '../../pairing/leaves.ts';
import { short } from '../../words.ts';
import { numberAt } from '../at.ts';
import type { TableEvaluation } from '../evaluate.ts';
import { farEnough } from './told.ts';
import { wayOf } from './way.ts';

/** How infinity is set, in the order in which it is done; common practice, without source. */
export function infinitySteps(evaluation: TableEvaluation): readonly string[] {
  const ring = wayOf(evaluation.pairing) === 'ring';
  const far = farEnough(evaluation);
  const thing = far === undefined ? 'something as far away as can be seen' : `something at least ${far} away`;
  return [
    `Put the ${ring ? 'lens' : 'relay'} alone on the camera, without the objective: aperture wide open, autofocus and stabiliser off.`,
    `${ring ? 'Turn the focus ring' : 'Change the length of the tube'} until ${thing} is sharp on the magnified screen, never the sun, and lock it${ring ? ' with tape' : ''}.${offOnPurpose(evaluation, ring)}`,
    `Put the objective on. From here on focus with the rail only: the ${ring ? 'ring' : 'tube'} stays as it is.`,
  ];
}

/** A pairing may have its sensor off infinity on purpose. */
function offOnPurpose(evaluation: TableEvaluation, ring: boolean): string {
  const offset = numberAt(evaluation, sensorOffset) as number;
  if (offset === 0) return '';
  const by = `${short(Math.abs(offset))} mm`;
  if (offset < 0) return ` This rig then stands ${by} nearer to the ${ring ? 'lens' : 'relay'} on purpose.`;
  return ring ? ` Then add the ${by} of extension that this rig has on purpose.` : ` Then make it ${by} longer, as this rig is on purpose.`;
}
