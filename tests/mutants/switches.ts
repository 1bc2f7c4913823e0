/** The switches that `sites.ts` writes into the text: which mutant is on, which ones were come by, and how often any. */

class RunsForEver extends Error {}

export class Switches {
  private active = -1;
  private calls = 0;
  private most = Number.POSITIVE_INFINITY;
  private readonly met: Uint8Array;

  constructor(readonly count: number) {
    this.met = new Uint8Array(count);
  }

  /** Whether a mutant is on. @throws RunsForEver where it has been asked more often than is allowed */
  on(id: number): boolean {
    if (++this.calls > this.most) throw new RunsForEver('runs for ever');
    this.met[id] = 1;
    return id === this.active;
  }

  private readonly whileLoading = new Map<string, Uint8Array>();

  /** Called by each module as it begins and as it ends: what is come by between is worked out by loading it. */
  loading(): void {
    this.fresh();
  }
  loaded(file: string): void {
    this.whileLoading.set(file, this.met.slice());
  }
  /** What the loading of a module comes by. */
  metLoading(file: string): Uint8Array | undefined {
    return this.whileLoading.get(file);
  }

  /** Begins to note anew. */
  fresh(): void {
    this.met.fill(0);
    this.calls = 0;
  }
  /** Which were come by since then, and how often any was asked for. */
  noted(): { met: Uint8Array; calls: number } {
    return { met: this.met.slice(), calls: this.calls };
  }

  /** Whether one was come by since it was turned on, or since the last `fresh`. */
  hasMet(id: number): boolean {
    return this.met[id] === 1;
  }

  /** Turns a mutant on, to be asked for no more than so often. */
  turnOn(id: number, most: number): void {
    this.active = id;
    if (id >= 0) this.met[id] = 0;
    this.calls = 0;
    this.most = most;
  }
  turnOff(): void {
    this.active = -1;
    this.most = Number.POSITIVE_INFINITY;
  }
}
