/** Small symmetric matrices by rows, for a dozen readings at most. */
export type Rows = readonly (readonly number[])[];

/**
 * The inverse of a symmetric positive definite matrix, by Gauss and Jordan after its diagonal has been made even: such
 * a matrix wants no other pivots. Undefined where it is singular in double precision.
 */
export function inverse(matrix: Rows): number[][] | undefined {
  const n = matrix.length;
  const even = matrix.map((row, i) => 1 / Math.sqrt(row[i] as number));
  const a = matrix.map((row, i) => [
    ...row.map((x, j) => x * (even[i] as number) * (even[j] as number)),
    ...row.map((_, j) => (i === j ? 1 : 0)),
  ]);
  for (let k = 0; k < n; k++) {
    const pivot = cell(a, k, k);
    // Neither is it greater where a diagonal that is not positive has left no number.
    if (!(pivot > 1e-13)) return undefined;
    const row = (a[k] as number[]).map((x) => x / pivot);
    a[k] = row;
    for (let i = 0; i < n; i++) {
      if (i === k) continue;
      const share = cell(a, i, k);
      a[i] = (a[i] as number[]).map((x, j) => x - share * (row[j] as number));
    }
  }
  return a.map((row, i) => row.slice(n).map((x, j) => x * (even[i] as number) * (even[j] as number)));
}

const cell = (a: Rows, i: number, j: number): number => (a[i] as readonly number[])[j] as number;

export const times = (a: Rows, v: readonly number[]): number[] => a.map((row) => dot(row, v));

export const dot = (a: readonly number[], b: readonly number[]): number => a.reduce((sum, x, i) => sum + x * (b[i] as number), 0);
