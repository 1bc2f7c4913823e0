import { listed, short } from '../../core/index.ts';
import { fieldPoint } from '../state/field-point.ts';
import type { Scene } from './path-geometry.ts';

export function captionOf({ field, middle, stops, fieldHeight, openingsKnown }: Scene): string {
  if (!openingsKnown) return "The relay's opening is not known: whether it lets the beams through cannot be told.";
  const lost = field.filter((ray) => ray.endsAt !== undefined);
  const names = [...new Set(lost.map((ray) => stops[ray.endsAt as number]?.label))];
  const which = fieldPoint.value === 1 ? 'the corner' : `the point ${short(fieldHeight)} mm from the middle`;
  const axial = middle.some((ray) => ray.endsAt !== undefined)
    ? 'A stop narrows even the beam of the middle (broken lines).'
    : 'The beam of the middle (broken lines) comes through whole.';
  if (lost.length === 0) return `${axial} So does the beam of ${which} (full lines).`;
  const what =
    lost.length === field.length
      ? `Nothing of the beam of ${which} (dotted) gets through: it is stopped`
      : `The beam of ${which} (full lines) is cut`;
  return `${axial} ${what} by ${listed(names.map(String))}.`;
}

export const scaleNote = (stretch: number): string =>
  stretch === 1 ? 'To scale.' : `Lengths to scale; heights drawn ${short(stretch)} times as ${stretch > 1 ? 'tall' : 'tall, to fit'}.`;
