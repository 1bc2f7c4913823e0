import { useState } from 'preact/hooks';
import { amount, short } from '../../../core/index.ts';
import { Radios } from '../../fields/radios.tsx';
import { DIMENSION_ROW, Dimensions, laidOut } from '../../plates/dimensions.tsx';
import { NARROW } from '../../plates/path-scale.ts';
import { useWidth } from '../../plates/width.ts';
import { tabled } from '../tabled.ts';
import { built } from './box.ts';
import { lengthsOf, type Rig, rigOf, type Standing } from './rig.ts';

const PAD = { left: 12, right: 22 };
/** Half the height of the drawing, px. */
const halfFor = (narrow: boolean): number => (narrow ? 74 : 122);
const STRETCHES = [6, 5, 4, 3, 2, 1.5, 1];
/** A mount's wall outside the clear opening, mm. */
const WALL = 4;

/** The rig as it is drawn now, or undefined where its length is not known. */
const rigNow = (): Rig | undefined => rigOf(tabled.value, built.value);

/** The rig to scale from the subject to the sensor, its lengths written under it. */
export function RigPlate() {
  const [box, width] = useWidth(1100);
  const [counted, setCounted] = useState<Counted>('parts');
  const rig = rigNow();
  if (!rig) return <p class="hint">The relay's focal length is not known: nothing can be drawn to scale.</p>;
  const { stretch } = scaleFor(rig, width);
  return (
    <>
      <Radios
        legend="Lengths are counted"
        name="counted"
        options={{ parts: 'part by part', flange: 'from the camera’s flange' }}
        value={counted}
        onChoose={(name) => setCounted(name)}
      />
      <figure class="plate rig" ref={box} aria-labelledby="rig-caption">
        <RigDrawing rig={rig} width={width} counted={counted} mark="metal" />
        <figcaption id="rig-caption">
          {caption(rig)}{' '}
          {stretch === 1
            ? 'All of it is to scale.'
            : `Lengths are to scale, ${stretch > 1 ? `heights ${stretch} times as much` : `heights ${short(stretch, 2)} of it`}.`}
        </figcaption>
      </figure>
    </>
  );
}

/** As wide as it is drawn for the sheet, and half as high, px. */
const ON_SHEET = { width: 940, half: 64 };

/** The drawing alone, for the sheet. */
export function RigOnSheet() {
  const rig = rigNow();
  return rig ? <RigDrawing rig={rig} width={ON_SHEET.width} half={ON_SHEET.half} counted="parts" mark="metal-on-sheet" /> : null;
}

type Counted = 'parts' | 'flange';

/** What the drawing takes of the pairing, mm, and px for each mm along and across the axis. */
function scaleFor(rig: Rig, width: number, half = halfFor(width < NARROW)) {
  const { pairing, inputs } = tabled.value;
  const opening = inputs.find(({ path }) => path === '/relay/clearApertureMm')?.value ?? 40;
  const nose = pairing.objective.noseDiameterMm === undefined ? 26 : amount(pairing.objective.noseDiameterMm);
  const chip = amount(pairing.sensor.heightMm) / 2;
  const narrow = width < NARROW;
  const k = (width - PAD.left - PAD.right) / (rig.sensor - rig.subject);
  const most = Math.max(opening / 2 + WALL, nose / 2, chip, ...[...rig.front, ...rig.back].map(({ part }) => (part.acrossMm ?? 0) / 2));
  const stretch = STRETCHES.find((s) => most * k * s <= half) ?? half / (most * k);
  return { opening, nose, chip, narrow, half, k, stretch };
}

/** @param mark the id of its hatching: a page may hold two of these drawings */
function RigDrawing({ rig, width, half: high, counted, mark }: { rig: Rig; width: number; half?: number; counted: Counted; mark: string }) {
  const { opening, nose, chip, narrow, half, k, stretch } = scaleFor(rig, width, high);
  const x = (z: number): number => PAD.left + (z - rig.subject) * k;
  const h = (y: number): number => y * k * stretch;
  const axis = half + 6;
  const top = 2 * half + 12;
  const lengths = lengthsOf(rig, tabled.value, counted === 'flange', narrow);
  const dimensions = laidOut(lengths, x, width);
  const height = top + DIMENSION_ROW * (1 + Math.max(0, ...dimensions.map(({ row }) => row))) + 4;
  return (
    <svg
      width={width}
      height={height}
      viewBox={`0 0 ${width} ${height}`}
      role="img"
      aria-label={lengths.map(([, , words]) => words).join(', ')}
    >
      <defs>
        <pattern id={mark} width="4" height="4" patternUnits="userSpaceOnUse" patternTransform="rotate(45)">
          <path d="M2 0V4" />
        </pattern>
      </defs>
      <path class="axis" d={`M${PAD.left - 8} ${axis}H${width - 4}`} />
      <path class="solid" d={`M${x(rig.subject)} ${axis - 16}V${axis + 16}M${x(rig.sensor)} ${axis - h(chip)}V${axis + h(chip)}`} />
      <Barrel rig={rig} x={x} axis={axis} half={h(nose / 2)} />
      {[...rig.front, ...rig.back].map((one, i) => (
        <Walls key={i} standing={one} x={x} h={h} axis={axis} mark={mark} />
      ))}
      <path
        class={tabled.value.pairing.relay.glass ? 'mount' : 'mount supposed'}
        d={`M${x(rig.rim)} ${axis - h(opening / 2 + WALL)}H${x(rig.seat)}V${axis + h(opening / 2 + WALL)}H${x(rig.rim)}Z`}
      />
      <Lens x={(x(rig.rim) + Math.min(x(rig.seat), x(rig.rim) + 40)) / 2} half={h(opening / 2)} axis={axis} />
      <path
        class="camera"
        d={`M${x(rig.flange)} ${axis - half}H${width - 4}M${x(rig.flange)} ${axis - half}V${axis + half}H${width - 4}`}
      />
      <Dimensions dimensions={dimensions} top={top - 4} />
    </svg>
  );
}

function caption({ supposed, onCamera, back, front, seat, flange }: Rig): string {
  return [
    'The subject stands at the left, the sensor at the right; the open box is the camera, from its flange on.',
    front.length > 0 || back.length > 0 ? 'Hatched are the rings and tubes as they are listed below.' : '',
    onCamera || seat <= flange ? '' : 'The relay would have to stand inside the camera.',
    supposed ? "The objective's length is not known: it is drawn at a usual one." : '',
  ]
    .filter(Boolean)
    .join(' ');
}

interface Place {
  x: (z: number) => number;
  axis: number;
}

function Barrel({ rig, x, axis, half }: Place & { rig: Rig; half: number }) {
  const [tip, shoulder] = [x(rig.nose), x(0)];
  const taper = tip + 0.35 * (shoulder - tip);
  return (
    <path
      class={rig.supposed ? 'mount supposed' : 'mount'}
      d={`M${shoulder} ${axis - half}H${taper}L${tip} ${axis - half * 0.6}V${axis + half * 0.6}L${taper} ${axis + half}H${shoulder}Z`}
    />
  );
}

/** The walls of a ring or tube, cut above and below the axis. */
function Walls({ standing: { part, from, to }, x, h, axis, mark }: Place & { standing: Standing; h: (y: number) => number; mark: string }) {
  const [inner, outer] = [h((part.clearMm ?? 0) / 2), h((part.acrossMm ?? 0) / 2)];
  const [a, b] = [x(from), x(to)];
  return (
    <path
      class="walls"
      fill={`url(#${mark})`}
      d={`M${a} ${axis - outer}H${b}V${axis - inner}H${a}ZM${a} ${axis + outer}H${b}V${axis + inner}H${a}Z`}
    />
  );
}

function Lens({ x, half, axis }: { x: number; half: number; axis: number }) {
  const bulge = Math.max(4, Math.min(9, half / 7));
  return (
    <path
      class="lens"
      d={`M${x} ${axis - half}Q${x + 2 * bulge} ${axis} ${x} ${axis + half}Q${x - 2 * bulge} ${axis} ${x} ${axis - half}Z`}
    />
  );
}
