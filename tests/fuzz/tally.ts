import type { Got, Sent } from './client.ts';
import type { Kind } from './requests.ts';
import type { Work } from './work.ts';

/** What became of the requests to one operation. */
export interface Tally {
  asked: number;
  byStatus: Map<number, number>;
  /** How many of each kind were asked, and how many of them got through. */
  kinds: Map<Kind, { asked: number; through: number }>;
  /** The costliest. */
  worst: Work;
}

export interface Fault {
  fault: string;
  kind: Kind;
  sent: Sent;
  got: Got;
}

/** No more of one kind are kept: what is wrong once is wrong a thousand times. */
const MOST_ALIKE = 3;

export class Findings {
  readonly tallies = new Map<string, Tally>();
  readonly faults: Fault[] = [];
  /** Faults, those not kept among them. */
  count = 0;

  blame(fault: string, kind: Kind, sent: Sent, got: Got): void {
    this.count++;
    const start = fault.slice(0, 50);
    if (this.faults.filter((other) => other.fault.startsWith(start)).length < MOST_ALIKE) this.faults.push({ fault, kind, sent, got });
  }

  add(name: string, kind: Kind, { status }: Got, { all, stretch }: Work): void {
    const fresh: Tally = { asked: 0, byStatus: new Map(), kinds: new Map(), worst: { all: 0, stretch: 0 } };
    const here = this.tallies.get(name) ?? fresh;
    this.tallies.set(name, here);
    here.asked++;
    here.byStatus.set(status, (here.byStatus.get(status) ?? 0) + 1);
    const { asked, through } = here.kinds.get(kind) ?? { asked: 0, through: 0 };
    here.kinds.set(kind, { asked: asked + 1, through: through + (status < 300 ? 1 : 0) });
    here.worst = { all: Math.max(here.worst.all, all), stretch: Math.max(here.worst.stretch, stretch) };
  }
}
