import { laidOn, numberIn, type Pairing } from '../../core/index.ts';
import type { Compared } from './compared.ts';

/** What a pairing sees of the subject's plane, mm. */
export interface Field {
  readonly width: number;
  readonly height: number;
  /** Diameter of what is corrected, lit and sharp, as far as it is known; undefined where nothing is. */
  readonly goodMm: number | undefined;
  /** The subject's box, turned so that its longer side lies along the field's. */
  readonly subject: readonly [width: number, height: number] | undefined;
}

/** The subject's two sides, of which one may stand for both. */
export function sidesOf(subject: Pairing['subject']): readonly [number, number] | undefined {
  const side = subject?.widthMm ?? subject?.heightMm;
  return side === undefined ? undefined : [side, subject?.heightMm ?? side];
}

export function fieldOf({ answers, pairing }: Pick<Compared, 'answers' | 'pairing'>, subject: Pairing['subject']): Field | undefined {
  const [width, height] = [numberIn(answers.objectFieldWidthMm), numberIn(answers.objectFieldHeightMm)];
  if (!width || !height) return undefined;
  const sides = sidesOf(subject);
  return { width, height, goodMm: numberIn(answers.goodFieldMm), subject: sides && laidOn(pairing.sensor, sides) };
}

/** Whether the subject has room in the picture. */
export const fits = ({ width, height, subject }: Field): boolean => !subject || (subject[0] <= width && subject[1] <= height);

/** A field placed in the drawing, px: its left and top. */
export interface Placed {
  readonly field: Field;
  readonly place: number;
  readonly x: number;
  readonly y: number;
  readonly w: number;
  readonly h: number;
}

export interface Layout {
  /** px a mm, one for all. */
  readonly k: number;
  readonly placed: readonly Placed[];
  readonly height: number;
}

/** Between two fields, above one for its letter, and below it for its size, px. */
const [GAP, HEAD, FEET] = [28, 24, 40];
/** No field takes less than this, so that its size can be written below it, px. */
const CELL = 104;
const TALLEST = 300;

/** All fields at one scale, in rows from left to right in the order of their letters. */
export function layout(fields: readonly { field: Field; place: number }[], width: number): Layout {
  const widest = Math.max(...fields.map(({ field }) => field.width));
  const tallest = Math.max(...fields.map(({ field }) => field.height));
  const most = Math.ceil(fields.length / (width > 640 ? 4 : 2));
  let k = Math.min((width - 2) / widest, TALLEST / tallest);
  // Smaller until they have room in as few rows as that.
  for (let i = 0; i < 60; i++, k *= 0.95) {
    const laid = atScale(fields, width, k);
    if (laid.rows <= most) return laid;
  }
  return atScale(fields, width, k);
}

function atScale(fields: readonly { field: Field; place: number }[], width: number, k: number): Layout & { rows: number } {
  const placed: Placed[] = [];
  let [x, y, rowHeight, rows] = [1, 0, 0, 1];
  for (const { field, place } of fields) {
    const [w, h] = [field.width * k, field.height * k];
    const cell = Math.max(CELL, w);
    if (x > 1 && x + cell > width) [x, y, rowHeight, rows] = [1, y + rowHeight, 0, rows + 1];
    placed.push({ field, place, x, y: y + HEAD, w, h });
    x += cell + GAP;
    rowHeight = Math.max(rowHeight, HEAD + h + FEET);
  }
  return { k, placed, height: y + rowHeight, rows };
}
