/** What a chart shows, free of any library: lines, marks across them, bands along the foot. All in data units. */
export interface Line {
  points: readonly { x: number; y: number }[];
  dash: readonly number[];
  width: number;
  /** Written beside the point with this place in the list: above and before it, or below and after it. */
  label?: { text: string; at: number; side: 'before' | 'after' };
}

export interface Mark {
  along: 'x' | 'y';
  at: number;
  text: string;
  bites?: boolean;
  dash?: readonly number[];
}

export interface Band {
  from: number;
  to: number;
  text: string;
  style: 'solid' | 'dotted' | 'thin';
}

export interface Drawing {
  x: { title: string; least: number; greatest: number };
  y: { title: string };
  lines: readonly Line[];
  marks: readonly Mark[];
  bands: readonly Band[];
}
