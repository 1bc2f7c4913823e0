import { short } from '../../core/index.ts';
import { Lead } from '../fields/lead.tsx';
import { answered } from '../state/draft.ts';
import { Beams } from './beams.tsx';
import { DIMENSION_ROW, Dimensions, dimensionsOf } from './dimensions.tsx';
import { type Scene, sceneOf } from './path-geometry.ts';
import { scaleFor } from './path-scale.ts';
import { rowsIn } from './rows.ts';
import { StopTable } from './stop-table.tsx';
import { namesOf, ROW, Stops } from './stops.tsx';
import { Train } from './train.tsx';
import { useWidth } from './width.ts';

/** The rig from the subject to the sensor, in the plane through the corner. */
export function LightPath() {
  const [box, width] = useWidth(1100);
  const scene = sceneOf(answered.value);
  const scale = scaleFor(scene, width);
  const cutting = new Set(scene.corner.flatMap((ray) => (ray.endsAt === undefined ? [] : [ray.endsAt])));
  const narrow = width < 620;
  const half = scale.h(scale.most * 1.08);
  const names = namesOf(scene, scale, narrow, width);
  const dimensions = dimensionsOf(scene, scale, width);
  const head = 30 + ROW * rowsIn(names);
  const axis = head + half;
  const height = axis + half + 26 + DIMENSION_ROW * rowsIn(dimensions);
  return (
    <figure class="plate path" ref={box} aria-labelledby="path-caption">
      <svg width={width} height={height} viewBox={`0 0 ${width} ${height}`} role="img" aria-labelledby="path-caption">
        <title>The light path</title>
        <Train scene={scene} scale={scale} axis={axis} />
        <Beams scene={scene} scale={scale} axis={axis} cutting={cutting} />
        <Stops scene={scene} scale={scale} axis={axis} head={head} cutting={cutting} names={names} />
        <Dimensions dimensions={dimensions} top={axis + half + 16} />
      </svg>
      <figcaption id="path-caption">
        {captionOf(scene)} {scaleNote(scale.stretch)}
        {scene.pupilBetween[1] > scene.pupilBetween[0] ? ' The dotted bracket holds the exit pupil, wherever in it that is.' : ''}
        {scene.lengthKnown ? '' : " The objective's length is not known: it is drawn at a usual one."}
      </figcaption>
      {!scene.openingsKnown && (
        <p class="hint">
          The relay's opening is not known, so no beam can be cut there: <Lead path="/relay/clearApertureMm">give its clear opening</Lead>.
        </p>
      )}
      <StopTable scene={scene} narrow={narrow} cutting={cutting} />
    </figure>
  );
}

function captionOf({ corner, middle, stops }: Scene): string {
  const lost = corner.filter((ray) => ray.endsAt !== undefined);
  const names = [...new Set(lost.map((ray) => stops[ray.endsAt as number]?.label))];
  const axial = middle.some((ray) => ray.endsAt !== undefined)
    ? 'A stop narrows even the beam of the middle (broken lines).'
    : 'The beam of the middle (broken lines) comes through whole.';
  if (lost.length === 0) return `${axial} So does the beam of the corner (full lines).`;
  const what =
    lost.length === corner.length ? 'The beam of the corner (full lines) is cut whole' : 'The beam of the corner (full lines) is cut';
  return `${axial} ${what} by ${names.join(' and by ')}.`;
}

const scaleNote = (stretch: number): string =>
  stretch === 1 ? 'To scale.' : `Lengths to scale; heights drawn ${short(stretch)} times as ${stretch > 1 ? 'tall' : 'tall, to fit'}.`;
