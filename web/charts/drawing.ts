/** What a chart shows, free of any library: lines, marks across them, bands along the foot. All in data units. */
export interface Line {
  points: readonly { x: number; y: number }[];
  dash: readonly number[];
  width: number;
  /** Written beside the point with this place in the list: right behind it at the end of a line, above and before it or below and after it on a line that rises, above and after it or below and before it on one that falls, over or under one that is level. */
  label?: { text: string; at: number; side: 'end' | 'before' | 'after' | 'above' | 'below' | 'over' | 'under' };
}

/** What may be between two lines of the same places: hatched. */
export interface Area {
  lower: readonly { x: number; y: number }[];
  upper: readonly { x: number; y: number }[];
  /** Which way the hatching leans. */
  lean: 1 | -1;
}

export interface Mark {
  along: 'x' | 'y';
  at: number;
  text: string;
  bites?: boolean;
  dash?: readonly number[];
  /** Of an upright mark: its name stands at the head of the chart and not at its foot. */
  top?: boolean;
  /** Of an upright mark: an open point is pricked into it at this height. */
  point?: number | undefined;
}

export interface Band {
  from: number;
  to: number;
  text: string;
  style: 'solid' | 'dotted' | 'thin';
}

export interface Drawing {
  x: { title: string; least: number; greatest: number };
  /** Per cent from 0 to 100, unless a unit and the greatest value are told. */
  y: { title: string; unit?: string; greatest?: number };
  lines: readonly Line[];
  marks: readonly Mark[];
  bands: readonly Band[];
  areas?: readonly Area[];
}
