import { diffractionMtf, letter, letters, numberIn, percent, pixelMtf, short } from '../../core/index.ts';
import type { Drawing, Line } from '../charts/drawing.ts';
import { apart } from '../charts/subject-contrast.ts';
import { ABREAST_DASH } from '../plates/strokes.ts';
import { LIGHT_STEPS, type Worked } from './compare-task.ts';

/** Curves of several pairings over one another: a letter at the end of each, nothing told by colour. */
export interface Overlaid {
  says: string;
  drawing: Drawing | undefined;
  columns: readonly string[];
  rows: () => readonly (readonly string[])[];
}

type Points = Line['points'];
interface Course {
  place: number;
  points: Points;
}

/** Ends closer than this part of the picture bear their letters together. */
const TOGETHER = 0.03;

/** Lines with their letters at their ends; those that end at one point share the place. */
function lettered(courses: readonly Course[], greatest: { x: number; y: number }): Line[] {
  const end = ({ points }: Course): { x: number; y: number } => points.at(-1) ?? { x: 0, y: 0 };
  const near = (a: Course, b: Course): boolean =>
    Math.abs(end(a).x - end(b).x) < TOGETHER * greatest.x && Math.abs(end(a).y - end(b).y) < TOGETHER * greatest.y;
  const taken = new Set<number>();
  return courses.map((course) => {
    const line: Line = { points: course.points, dash: ABREAST_DASH[course.place % ABREAST_DASH.length] ?? [], width: 1.6 };
    if (taken.has(course.place)) return line;
    const group = courses.filter((other) => other.place >= course.place && near(course, other) && !taken.has(other.place));
    for (const { place } of group) taken.add(place);
    return { ...line, label: { text: letters(group.map(({ place }) => place)), at: course.points.length - 1, side: 'end' } };
  });
}

/** `97 % in A and C, 71 % in B`, `71 % in all`. */
function each(told: readonly (string | undefined)[]): string {
  const groups = new Map<string, number[]>();
  for (const [place, text = 'not known'] of told.entries()) groups.set(text, [...(groups.get(text) ?? []), place]);
  if (groups.size === 1 && told.length > 1) return `${[...groups.keys()][0]} in ${told.length === 2 ? 'both' : 'all'}`;
  return [...groups].map(([text, places]) => `${text} in ${letters(places)}`).join(', ');
}

/** The light from the middle to the corner. */
export function lightAbreast(all: readonly Pick<Worked, 'light'>[]): Overlaid {
  const courses = all.flatMap(({ light }, place) =>
    light ? [{ place, points: light.map((E, i) => ({ x: (100 * i) / LIGHT_STEPS, y: 100 * E })) }] : [],
  );
  const corner = all.map(({ light }) => light && percent(light.at(-1) as number));
  return {
    says: `Of the light in the middle the corner keeps ${each(corner)}.`,
    drawing:
      courses.length === 0
        ? undefined
        : {
            x: { title: 'from the middle of the picture to the corner, %', least: 0, greatest: 108 },
            y: { title: 'light' },
            lines: lettered(courses, { x: 100, y: 100 }),
            marks: [],
            bands: [],
          },
    columns: ['from the middle', ...all.map((_, place) => letter(place))],
    rows: () =>
      Array.from({ length: 11 }, (_, i) => [
        `${10 * i} %`,
        ...all.map(({ light }) => (light ? percent(light[(i * LIGHT_STEPS) / 10] as number) : 'not known')),
      ]),
  };
}

/** Contrast in the middle of the picture of a pattern at the subject; undefined past what the optics pass or the pixels hold. */
type Contrast = { finest: number; at: (objectLpPerMm: number) => number };

function contrastOf({ answers }: Pick<Worked, 'answers'>): Contrast | undefined {
  const [m, cutoff, nyquist] = [answers.systemMagnification, answers.cutoffImageLpPerMm, answers.nyquistLpPerMm].map(numberIn);
  if (!m || !cutoff) return undefined;
  return {
    finest: m * Math.min(cutoff, nyquist ?? Number.POSITIVE_INFINITY),
    at: (nu) => diffractionMtf(nu / m / cutoff) * (nyquist ? pixelMtf(nu / m / (2 * nyquist)) : 1),
  };
}

const CONTRAST_STEPS = 48;
/** The detail that the caption speaks of: this part of what the weakest of them still shows. */
const SPOKEN = 0.75;

/** Contrast against detail at the subject, diffraction and pixels together. */
export function contrastAbreast(all: readonly Pick<Worked, 'answers'>[]): Overlaid {
  const known = all.map(contrastOf);
  const finest = known.flatMap((c) => c?.finest ?? []);
  const greatest = Math.max(...finest);
  const spoken = SPOKEN * Math.min(...finest);
  const courses = known.flatMap((c, place) =>
    c
      ? [
          {
            place,
            points: Array.from({ length: CONTRAST_STEPS + 1 }, (_, i) => {
              const x = (c.finest * i) / CONTRAST_STEPS;
              return { x, y: 100 * c.at(x) };
            }),
          },
        ]
      : [],
  );
  return {
    says:
      finest.length === 0
        ? 'How much contrast is left is not known.'
        : `Of the contrast of lines ${apart(spoken)} µm apart at the subject ${each(known.map((c) => c && percent(c.at(spoken))))} is left in the middle of the picture, by diffraction and pixels alone. Each curve ends at the finest that both pass.`,
    drawing:
      courses.length === 0
        ? undefined
        : {
            x: { title: 'detail at the subject, lp/mm', least: 0, greatest: 1.08 * greatest },
            y: { title: 'contrast' },
            lines: lettered(courses, { x: greatest, y: 100 }),
            marks: [],
            bands: [],
          },
    columns: ['lp/mm at the subject', ...all.map((_, place) => letter(place))],
    rows: () =>
      Array.from({ length: 11 }, (_, i) => {
        const nu = (greatest * i) / 10;
        return [short(nu), ...known.map((c) => (!c ? 'not known' : nu > c.finest * (1 + 1e-9) ? 'none' : percent(c.at(nu))))];
      }),
  };
}
