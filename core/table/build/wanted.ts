/** A length and the interval that surely holds it, mm. */
export interface Wanted {
  readonly value: number;
  readonly low: number;
  readonly high: number;
  /** Being so much off is as good as being exact, mm. */
  readonly within?: number;
}
