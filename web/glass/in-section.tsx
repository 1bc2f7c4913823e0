import { standing } from '../../core/glassworks.ts';
import { amount, diagonalOf, numberIn, type Relay, short } from '../../core/index.ts';
import type { Movable } from '../plates/movable.ts';
import { movablesOf } from '../plates/movables.ts';
import { sceneOf } from '../plates/path-geometry.ts';
import { answered } from '../state/draft.ts';
import { held } from '../state/held.ts';
import { surfaceName } from './listing.ts';
import { type Section, sectionOf } from './section-geometry.ts';
import { SectionPlate } from './section-plate.tsx';
import type { Studied } from './studied.ts';

/** Glass whose surfaces are clear to any height is drawn as wide as the relay's rim, or as this where that is not known either, mm. */
const USUAL_HALF = 20;

/** The relay's glass as it stands, with the beams through it. */
export function InSection({ studied: { for: judged, study } }: { studied: Studied }) {
  // What is moved is drawn at once; what is judged of it follows.
  const evaluation = held.value === undefined ? judged : answered.value;
  const { pairing, answers, inputs } = evaluation;
  const { way } = study;
  const space = amount(pairing.infinitySpaceMm);
  const rim = inputs.find((input) => input.path === '/relay/clearApertureMm')?.value;
  const place = inputs.find((input) => input.path === '/objective/exitPupilFromShoulderMm');
  const section = sectionOf({
    lens: way.lens,
    prescription: way.prescribed,
    pupilDistanceMm: space - (place?.value ?? 0),
    pupilRadiusMm: (numberIn(answers.pupilDiameterMm) ?? 0) / 2,
    sensorMm: way.cardinal.backFocalLengthMm + study.flatFocusMm,
    cornerHeightMm: diagonalOf(pairing.sensor) / 2,
    cornerSlope: study.points.at(-1)?.slope ?? 0,
    usualHalfMm: rim === undefined ? USUAL_HALF : rim / 2,
  });
  const hasThread = pairing.relay.kind === 'supplementary' || pairing.relay.maleThread !== undefined;
  return (
    <SectionPlate
      section={section}
      shoulder={-space}
      pupilBetween={[(place?.least ?? 0) - space, (place?.greatest ?? 0) - space]}
      names={namesOf(section, pairing.relay.glass, way.reversed)}
      thread={hasThread ? (way.reversed ? 'camera' : 'objective') : undefined}
      threadWords={`male thread${pairing.relay.maleThread ? ` ${pairing.relay.maleThread.replace(' x ', ' × ')}` : ''}`}
      space={movablesOf(evaluation, sceneOf(evaluation)).find((m) => m.name === 'relay') as Movable}
      caption={captionOf(section, standing(way.lens, way.reversed))}
    />
  );
}

/** Surfaces by their number in the list, primed those of the second lens, in the order in which they stand. */
function namesOf({ radii }: Section, glass: Relay['glass'], turned: boolean): string[] {
  const second = glass && 'second' in glass ? glass.second : undefined;
  const ownCount = radii.length - (second?.radiiMm.length ?? 0);
  const first = Array.from({ length: ownCount }, (_, i) => surfaceName(i));
  const behind = (second?.radiiMm ?? []).map((_, i) => surfaceName(i, true));
  const names = [...first, ...(second?.reversed ? behind.toReversed() : behind)];
  return turned ? names.toReversed() : names;
}

function captionOf({ corner, middle }: Section, stands: string): string {
  const lost = (rays: Section['corner']): number => rays.filter((ray) => ray.endsAt !== undefined).length;
  const cut = lost(corner) + lost(middle);
  const heights = corner.flatMap((ray) => (ray.endsAt === undefined ? [ray.points.at(-1)?.[1] ?? 0] : []));
  const spread = heights.length > 0 ? Math.max(...heights) - Math.min(...heights) : 0;
  const blur =
    spread > 0 ? ` The corner's rays (full lines) fall within ${short(1000 * spread, 2)} µm of each other along the diagonal.` : '';
  const clear = cut === 0 ? '' : ' A rim of the glass stops some of the rays.';
  return `${stands.charAt(0).toUpperCase()}${stands.slice(1)}.${blur}${clear}`;
}
