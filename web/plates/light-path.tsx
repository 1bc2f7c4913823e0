import '../styles/path.css';
import '../styles/held.css';
import { useRef } from 'preact/hooks';
import { Complaint, toldAt } from '../fields/complaint.tsx';
import { Lead } from '../fields/lead.tsx';
import { answered } from '../state/draft.ts';
import { fieldPointMm } from '../state/field-point.ts';
import { byHand, held } from '../state/held.ts';
import { Beams } from './beams.tsx';
import { BENCH, Bench } from './bench.tsx';
import { Handle } from './handle.tsx';
import { lengthsOf, topLabels } from './labels.ts';
import { LENGTH_ROW, Leaders } from './leaders.tsx';
import { lensPiece } from './lens-piece.ts';
import type { Movable } from './movable.ts';
import { movablesOf } from './movables.ts';
import { Notes } from './notes.tsx';
import { captionOf, scaleNote } from './path-caption.ts';
import { type Scene, sceneOf } from './path-geometry.ts';
import { extent, NARROW, type PathScale, scaleFor, spaceAt } from './path-scale.ts';
import { entryId, PlateInput } from './plate-input.tsx';
import { RelayOutline } from './relay-outline.tsx';
import { ridersOf } from './riders.ts';
import { rowsIn } from './rows.ts';
import { StopTable } from './stop-table.tsx';
import { Stops } from './stops.tsx';
import { Train } from './train.tsx';
import { useWidth } from './width.ts';

/** Rows of names above, px. */
const NAME_ROW = 28;
const LETTER_ROW = 18;

/** The rig from the subject to the sensor, in the plane through the corner; what slides on it can be moved. */
export function LightPath() {
  const [box, width] = useWidth(1100);
  const evaluation = answered.value;
  const { relay } = evaluation.pairing;
  const piece = lensPiece(relay.glass !== undefined);
  const lens = piece?.lensOnPath(evaluation, pupilOf(evaluation));
  const scene = sceneOf(evaluation, fieldPointMm.value, lens);
  const scale = useScale(scene, width);
  const narrow = width < NARROW;
  const cutting = new Set(scene.field.flatMap((ray) => (ray.endsAt === undefined ? [] : [ray.endsAt])));
  const movables = movablesOf(evaluation, scene);
  const labels = topLabels(scene, scale, movables, cutting, narrow, width);
  const lengths = lengthsOf(scene, scale, movables, width);
  const nameRows = useMost(rowsIn(labels), narrow ? 1 : 2);
  const lengthRows = useMost(narrow ? 0 : rowsIn(lengths), narrow ? 0 : 1);
  const row = narrow ? LETTER_ROW : NAME_ROW;
  const head = 4 + row * nameRows;
  const axis = head + scale.half;
  const foot = axis + scale.half;
  const height = foot + BENCH + (narrow ? 4 : 8) + LENGTH_ROW * lengthRows;
  const [from, to] = extent(scene, width);
  return (
    <figure class="plate path" ref={box} aria-labelledby="path-caption">
      <div class="stage" style={{ height: `${height}px` }}>
        <svg width={width} height={height} viewBox={`0 0 ${width} ${height}`} role="img" aria-labelledby="path-caption">
          <title>The light path</title>
          <Train scene={scene} scale={scale} axis={axis} />
          {piece && lens ? (
            <piece.Glass section={lens.outline} scale={scale} axis={axis} thread={lens.thread} />
          ) : (
            <RelayOutline scene={scene} scale={scale} axis={axis} />
          )}
          <Beams scene={scene} scale={scale} axis={axis} />
          <Stops scene={scene} scale={scale} axis={axis} cutting={cutting} />
          <Bench
            scale={scale}
            top={foot}
            from={from}
            to={Math.min(to, scale.z(width - 8))}
            riders={ridersOf(movables, scene, scale, axis)}
          />
          <Leaders labels={labels} lengths={narrow ? [] : lengths} scale={scale} axis={axis} head={head} row={row} foot={foot + BENCH} />
        </svg>
        {movables.map((movable) => (
          <Controls
            key={movable.name}
            movable={movable}
            place={narrow ? undefined : (placeOf(movable, labels, head, row) ?? placeUnder(movable, lengths, foot + BENCH))}
            x={movable.at ? scale.x(movable.at.z) : 0}
            y={movable.along === 'axis' ? foot + 6 : axis - scale.h(movable.at?.y ?? 0)}
            grain={grainOf(movable, scale)}
            follow={(x, y) => {
              if (movable.along === 'height') return movable.valueAt(Math.abs(axis - y) / (scale.k * scale.stretch));
              return movable.name === 'relay' ? spaceAt(x, scene, width) : movable.valueAt(scale.z(Math.min(x, width - 8)));
            }}
          />
        ))}
      </div>
      <Notes />
      {narrow && (
        <ul class="entries">
          {movables.map((movable) => (
            <li key={movable.name}>
              <PlateInput entry={movable} steps />
            </li>
          ))}
        </ul>
      )}
      {movables.map(({ name, path }) => (
        <Complaint key={name} id={`${entryId(name)}-wrong`} found={path ? toldAt(path) : []} />
      ))}
      <figcaption id="path-caption">
        {captionOf(scene)} {scaleNote(scale.stretch)}
        {scene.pupilBetween[1] > scene.pupilBetween[0] ? ' The dotted bracket holds the exit pupil, wherever in it that is.' : ''}
        {scene.lengthKnown ? '' : " The objective's length is not known: it is drawn at a usual one."}
        {relay.glass ? '' : ' The relay is drawn in broken lines: its glass is not known.'}
      </figcaption>
      {!scene.openingsKnown && (
        <p class="hint">
          A ruler across its front tells it in a minute: <Lead path="/relay/clearApertureMm">give its clear opening</Lead>.
        </p>
      )}
      <StopTable scene={scene} narrow={narrow} cutting={cutting} />
    </figure>
  );
}

const pupilOf = ({ inputs }: typeof answered.value): number =>
  inputs.find((input) => input.path === '/objective/exitPupilFromShoulderMm')?.value ?? 0;

/** While a hand holds a handle the paper keeps still, but for what only the relay's way can show: the whole shrinks as it goes. */
function useScale(scene: Scene, width: number): PathScale {
  const before = useRef<PathScale | undefined>(undefined);
  const last = before.current;
  const still = byHand.value && held.value !== 'relay';
  const kept = held.value !== undefined && last ? { stretch: last.stretch, ...(still ? { k: last.k } : {}) } : undefined;
  const scale = scaleFor(scene, width, kept);
  before.current = scale;
  return scale;
}

/** Rows may become more while a handle is held, and not fewer: nothing under the drawing moves to and fro. */
function useMost(rows: number, least: number): number {
  const most = useRef(least);
  most.current = Math.max(rows, least, held.value === undefined ? 0 : most.current);
  return most.current;
}

interface ControlsProps {
  movable: Movable;
  /** Where the number stands on the stage: the middle of its line; undefined where it stands in the list below. */
  place: readonly [x: number, y: number] | undefined;
  x: number;
  y: number;
  grain: number;
  follow(x: number, y: number): number;
}

/** A handle and its number. */
function Controls({ movable, place, x, y, grain, follow }: ControlsProps) {
  return (
    <>
      {movable.at && <Handle moved={movable} x={x} y={y} grain={grain} follow={follow} />}
      {place && (
        <span class="placed" style={{ left: `${place[0]}px`, top: `${place[1]}px` }}>
          <PlateInput entry={movable} />
        </span>
      )}
    </>
  );
}

function placeOf(movable: Movable, labels: ReturnType<typeof topLabels>, head: number, row: number): readonly [number, number] | undefined {
  const label = labels.find((one) => one.movable?.name === movable.name);
  return label && [label.middle, head - row * (label.row + 1) + 4];
}

function placeUnder(movable: Movable, lengths: ReturnType<typeof lengthsOf>, top: number): readonly [number, number] | undefined {
  const length = lengths.find((one) => one.movable?.name === movable.name);
  return length && [length.middle, top + LENGTH_ROW * length.row + 8];
}

const GRAINS = [0.1, 0.2, 0.5, 1, 2, 5, 10];
/** Under the hand values go by the roundest step that the eye can tell, px. */
const TELLS_PX = 0.6;
function grainOf({ name, along, value }: Movable, { k, stretch }: PathScale): number {
  if (name === 'iris') return value < 10 ? 0.1 : 0.5;
  const px = along === 'axis' ? k : (k * stretch) / 2;
  return GRAINS.find((g) => g * px >= TELLS_PX) ?? 10;
}
