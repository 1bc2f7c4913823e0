/** The first `most` of all that come, in order: what comes after them is let go, so that memory does not grow. */
export class Best<T> {
  readonly kept: T[] = [];
  constructor(
    private readonly most: number,
    /** Negative where `a` comes before `b`; never 0. */
    private readonly order: (a: T, b: T) => number,
  ) {}

  /** Whether `candidate` would be kept. */
  wants(candidate: T): boolean {
    const last = this.kept.at(-1);
    return this.kept.length < this.most || (last !== undefined && this.order(candidate, last) < 0);
  }

  add(candidate: T): void {
    let low = 0;
    let high = this.kept.length;
    while (low < high) {
      const middle = (low + high) >> 1;
      if (this.order(this.kept[middle] as T, candidate) < 0) low = middle + 1;
      else high = middle;
    }
    this.kept.splice(low, 0, candidate);
    if (this.kept.length > this.most) this.kept.pop();
  }
}
