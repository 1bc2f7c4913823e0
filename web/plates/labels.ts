import { short } from '../../core/index.ts';
import type { Movable } from './movable.ts';
import type { Scene } from './path-geometry.ts';
import { offPlate, type PathScale } from './path-scale.ts';
import { entryWidth } from './plate-input.tsx';
import { inRows, widthOf } from './rows.ts';

/** What stands above the drawing with a leader to its place: plain words, or a number that can be typed. */
export interface TopLabel {
  key: string;
  text: string;
  /** The number that stands in the place of the words. */
  movable: Movable | undefined;
  /** Place on the axis in px, and how high what it names reaches, mm. */
  at: number;
  reach: number;
  row: number;
  middle: number;
  bites: boolean;
}

const HEIGHTS: Record<string, string> = {
  '/relay/clearApertureMm': 'rim',
  '/relay/fNumber': 'iris',
  '/relay/entrancePupilDiameterMm': 'iris',
};

/** Where there is little room. */
const SHORT: Record<string, string> = { '': 'pupil', rim: 'rim', iris: 'aperture' };

const nameFor = (path: string): string => HEIGHTS[path] ?? path.replace(/^\/stops\/(\d+)\/.*/, 'opening-$1');

/** The stops, the pupil and the field point, in rows that keep them apart; in a word each where there is little room. */
export function topLabels(
  scene: Scene,
  scale: PathScale,
  movables: readonly Movable[],
  cutting: ReadonlySet<number>,
  narrow: boolean,
  width: number,
): TopLabel[] {
  const stops = scene.stops.map((stop, i) => {
    const movable = narrow ? undefined : movables.find((m) => m.name === nameFor(stop.path));
    const name = stop.label.replace(/^the objective's own /, 'exit ').replace(/^the /, '');
    const text = narrow
      ? (SHORT[nameFor(stop.path)] ?? stop.label)
      : `${name} Ø ${short(2 * stop.half)}${offPlate(stop, scale) ? ', beyond the drawing' : ''}`;
    return { key: stop.path || 'pupil', text, movable, at: scale.x(stop.z), reach: stop.half, bites: cutting.has(i) };
  });
  const field = movables.find((m) => m.name === 'field');
  const all = [
    ...stops,
    ...(field && !narrow
      ? [{ key: 'field', text: '', movable: field, at: scale.x(scene.sensor), reach: scene.fieldHeight, bites: false }]
      : []),
  ];
  const placed = inRows(
    all.map(({ at, text, movable }) => ({ at, width: movable ? entryWidth(movable) : widthOf(text) })),
    4,
    width - 4,
  );
  return all.map((label, i) => ({ ...label, ...(placed[i] as { row: number; middle: number }) }));
}

/** A length along the axis with the number that it is, to be typed or, where it only follows, in words. */
export interface Length {
  key: string;
  movable: Movable | undefined;
  words: string;
  /** Its ends, and where the middle of its words stands, px. */
  a: number;
  b: number;
  middle: number;
  row: number;
}

/** The lengths along the axis, in rows that keep their words apart. */
export function lengthsOf(scene: Scene, scale: PathScale, movables: readonly Movable[], width: number): Length[] {
  const { subject, nose, rim, plane, hiatus, sensor, pupil } = scene;
  const ends: Record<string, readonly [number, number]> = {
    working: [subject, nose],
    pupil: [Math.min(0, pupil), Math.max(0, pupil)],
    relay: [0, rim],
    focal: [plane + hiatus, sensor],
  };
  const rings = (name: string): readonly [number, number] | undefined => {
    const z = movables.find((m) => m.name === name)?.at?.z;
    if (!name.startsWith('ring-') || z === undefined) return undefined;
    return z > plane ? [z, sensor] : [0, z];
  };
  const found = movables.flatMap((movable) => {
    const [from, to] = ends[movable.name] ?? rings(movable.name) ?? [];
    if (from === undefined || to === undefined) return [];
    return [{ key: movable.name, movable, words: '', a: scale.x(from), b: scale.x(to) }];
  });
  // A focal length that the glass says is not for sliding, and is told all the same.
  const told = movables.some((m) => m.name === 'focal')
    ? []
    : [
        {
          key: 'focal',
          movable: undefined,
          words: `focal length ${short(scene.rig.relayFocalLengthMm, 4)} mm`,
          a: scale.x(plane + hiatus),
          b: scale.x(sensor),
        },
      ];
  const all = [...found, ...told];
  const placed = inRows(
    all.map(({ movable, words, a, b }) => ({ at: (a + b) / 2, width: movable ? entryWidth(movable) : widthOf(words) + 8 })),
    2,
    width - 2,
    10,
  );
  return all.map((one, i) => ({ ...one, ...(placed[i] as { row: number; middle: number }) }));
}
