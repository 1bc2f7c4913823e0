/** Where pairings stand on the drawing, px. */
export interface Point {
  readonly x: number;
  readonly y: number;
  readonly onFrontier: boolean;
  /** The entries whose pairings stand here, by their places in the list, once each. */
  readonly places: readonly number[];
}

export interface Label {
  readonly x: number;
  readonly y: number;
  readonly text: string;
  readonly anchor: 'start' | 'end';
  readonly places: readonly number[];
}

export interface Box {
  readonly left: number;
  readonly top: number;
  readonly right: number;
  readonly bottom: number;
}

/** Of each figure, whether less is better. */
export interface Ways {
  readonly lessX: boolean;
  readonly lessY: boolean;
}

/** A place on the drawing, px. */
export interface Spot {
  readonly x: number;
  readonly y: number;
}

const MOST_NUMBERS = 3;
/** Numbers of about this size, px. */
const DIGIT = 7;
const LINE = 14;

/** The numbers beside the points: first those on the line, then what has room; none over a dot, the line or another. */
export function labelsOf(
  points: readonly Point[],
  corners: readonly Spot[],
  { lessX, lessY }: Ways,
  box: Box,
  beside: (places: readonly number[]) => string,
): Label[] {
  const set: { left: number; right: number; y: number }[] = [];
  const steps = corners.slice(1).map((to, i) => ({ from: corners[i] as Spot, to }));
  const onLine = (left: number, right: number, y: number): boolean =>
    steps.some(({ from, to }) => {
      const level = Math.abs(from.y - y) < LINE / 2 && left < Math.max(from.x, to.x) && right > Math.min(from.x, to.x);
      const upright = to.x > left - 2 && to.x < right + 2 && y + LINE / 2 > Math.min(from.y, to.y) && y - LINE / 2 < Math.max(from.y, to.y);
      return level || upright;
    });
  const free = (left: number, right: number, y: number): boolean =>
    left >= box.left + 4 &&
    right <= box.right + 36 &&
    y >= box.top - 8 &&
    y <= box.bottom - 6 &&
    set.every((other) => right < other.left || left > other.right || Math.abs(other.y - y) >= LINE) &&
    points.every((p) => p.x < left - 4 || p.x > right + 4 || Math.abs(p.y - y) > LINE / 2) &&
    !onLine(left, right, y);
  const labels: Label[] = [];
  const ordered = points.toSorted(
    (a, b) => Number(b.onFrontier) - Number(a.onFrontier) || (a.places[0] as number) - (b.places[0] as number),
  );
  for (const { x, y, places } of ordered) {
    const numbers = places.toSorted((a, b) => a - b).map((place) => String(place + 1));
    const some = numbers.length > MOST_NUMBERS ? `${numbers.slice(0, MOST_NUMBERS).join(', ')} …` : numbers.join(', ');
    const text = `${some}${beside(places)}`;
    const width = DIGIT * text.length;
    const left = { left: x - 7 - width, anchor: 'end' } as const;
    const right = { left: x + 7, anchor: 'start' } as const;
    // The way in which both are better the paper is empty.
    const [out, inward] = lessX ? [left, right] : [right, left];
    const [away, back] = lessY ? [9, -9] : [-9, 9];
    const spots = [
      { ...out, y: y + away },
      { ...out, y },
      { ...inward, y },
      { ...inward, y: y + back },
      { ...inward, y: y + away },
      { ...out, y: y + back },
    ];
    const spot = spots.find((one) => free(one.left, one.left + width, one.y));
    if (!spot) continue;
    set.push({ left: spot.left, right: spot.left + width, y: spot.y });
    labels.push({ x: spot.anchor === 'start' ? spot.left : spot.left + width, y: spot.y, text, anchor: spot.anchor, places });
  }
  return labels;
}
