/** Small symmetric matrices by rows, for a dozen readings at most. */
export type Rows = readonly (readonly number[])[];

/**
 * The inverse of a symmetric positive definite matrix, by Gauss and Jordan with the greatest pivot, after its
 * diagonal has been made even. Undefined where it is singular in double precision.
 */
export function inverse(matrix: Rows): number[][] | undefined {
  const n = matrix.length;
  const even = matrix.map((row, i) => 1 / Math.sqrt(row[i] as number));
  if (!even.every(Number.isFinite)) return undefined;
  const a = matrix.map((row, i) => [
    ...row.map((x, j) => x * (even[i] as number) * (even[j] as number)),
    ...row.map((_, j) => (i === j ? 1 : 0)),
  ]);
  for (let k = 0; k < n; k++) {
    let best = k;
    for (let i = k + 1; i < n; i++) if (Math.abs(cell(a, i, k)) > Math.abs(cell(a, best, k))) best = i;
    if (!(Math.abs(cell(a, best, k)) > 1e-13)) return undefined;
    [a[k], a[best]] = [a[best] as number[], a[k] as number[]];
    const pivot = cell(a, k, k);
    const row = (a[k] as number[]).map((x) => x / pivot);
    a[k] = row;
    for (let i = 0; i < n; i++) {
      if (i === k) continue;
      const share = cell(a, i, k);
      if (share !== 0) a[i] = (a[i] as number[]).map((x, j) => x - share * (row[j] as number));
    }
  }
  return a.map((row, i) => row.slice(n).map((x, j) => x * (even[i] as number) * (even[j] as number)));
}

const cell = (a: Rows, i: number, j: number): number => (a[i] as readonly number[])[j] as number;

export const times = (a: Rows, v: readonly number[]): number[] => a.map((row) => dot(row, v));

export const dot = (a: readonly number[], b: readonly number[]): number => a.reduce((sum, x, i) => sum + x * (b[i] as number), 0);
