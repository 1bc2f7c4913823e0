/** What differs by less than this part of itself differs by rounding. */
const ROUNDING = 1e-9;

/**
 * The frontier of several figures: those that no other one equals or beats in every figure and beats in one.
 * Rows are told so that more is better; equal rows stand on it side by side. No rank, no weights.
 */
const dominates = (a: readonly number[], b: readonly number[]): boolean => {
  let better = false;
  for (let i = 0; i < a.length; i++) {
    const [x, y] = [a[i] as number, b[i] as number];
    // Without limit is not about so much: strictly less, where both sides are infinite.
    if (x === y || Math.abs(x - y) < ROUNDING * Math.abs(x)) continue;
    if (x < y) return false;
    better = true;
  }
  return better;
};

/** A frontier that grows: each that comes either falls behind one that stands, or drives out those that fall behind it. */
export class Frontier<T extends { readonly row: readonly number[] }> {
  readonly members: T[] = [];
  add(candidate: T): void {
    const { members } = this;
    for (let i = 0; i < members.length; i++)
      if (dominates((members[i] as T).row, candidate.row)) {
        // Whoever turned one away will likely turn the next one away too.
        [members[0], members[i]] = [members[i] as T, members[0] as T];
        return;
      }
    let kept = 0;
    for (const member of members) if (!dominates(candidate.row, member.row)) members[kept++] = member;
    members.length = kept;
    members.push(candidate);
  }
}
