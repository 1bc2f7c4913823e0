/**
 * In which order tests are tried: those first that notice most for the time they take. What a test has noticed in a
 * file so far tells best; before anything is known, tests of the folder that mirrors the file are taken to notice more.
 */
export interface Tried {
  readonly file: string;
  readonly ms: number;
}

interface Tally {
  noticed: number;
  tried: number;
}

/** How much a first guess weighs against what was seen, in trials. */
const WEIGHT = 4;
const NEAR = 0.4;
const FAR = 0.05;
/** What calling a test costs at all, ms. */
const CALL_MS = 0.3;

export class Order<T extends Tried> {
  private readonly tallies = new Map<string, Map<T, Tally>>();

  /** Tests in the order to try them on a mutant of a file of core. */
  of(source: string, tests: readonly T[]): T[] {
    const seen = this.tallies.get(source);
    const folder = source.slice(0, source.lastIndexOf('/'));
    const worth = (test: T): number => {
      const { noticed, tried } = seen?.get(test) ?? { noticed: 0, tried: 0 };
      const first = test.file.includes(`${folder}/`) ? NEAR : FAR;
      return (noticed + WEIGHT * first) / (tried + WEIGHT) / (test.ms + CALL_MS);
    };
    return tests
      .map((test) => [worth(test), test] as const)
      .sort((a, b) => b[0] - a[0])
      .map(([, test]) => test);
  }

  note(source: string, test: T, noticed: boolean): void {
    const seen = this.tallies.get(source) ?? new Map<T, Tally>();
    this.tallies.set(source, seen);
    const tally = seen.get(test) ?? { noticed: 0, tried: 0 };
    tally.tried++;
    if (noticed) tally.noticed++;
    seen.set(test, tally);
  }
}
