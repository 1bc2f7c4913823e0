/** A piece of text that wants to stand at `at`, `width` wide. */
export interface Label {
  at: number;
  width: number;
}

/** Rough width of text in px at a given size, for keeping labels apart. */
export const widthOf = (text: string, size = 13): number => text.length * size * 0.5;

/**
 * Labels in as few rows as keep them apart: for each its row and the middle of its text, which is
 * moved inside `[least, greatest]`.
 */
export function inRows(labels: readonly Label[], least: number, greatest: number, gap = 12): { row: number; middle: number }[] {
  const ends: number[] = [];
  const order = labels.map((_, i) => i).sort((a, b) => (labels[a] as Label).at - (labels[b] as Label).at);
  const placed: { row: number; middle: number }[] = [];
  for (const i of order) {
    const { at, width } = labels[i] as Label;
    const middle = Math.min(greatest - width / 2, Math.max(least + width / 2, at));
    let row = ends.findIndex((end) => middle - width / 2 >= end + gap);
    if (row < 0) row = ends.length;
    ends[row] = middle + width / 2;
    placed[i] = { row, middle };
  }
  return placed;
}

/** Rows needed. */
export const rowsIn = (placed: readonly { row: number }[]): number => 1 + Math.max(0, ...placed.map(({ row }) => row));
