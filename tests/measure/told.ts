/** What the processes of a measurement say to each other. */

export interface Memory {
  heapBytes: number;
  residentBytes: number;
}

/** What the measured server says: where it is, and once it is asked, what it holds or what it has spent. */
export type Told = { address: string } | { memory: Memory } | { cpuMs: number };

/** One request that may be sent, as often as it comes up. */
export interface Ask {
  /** What it counts as in the result. */
  kind: string;
  path: string;
  body: string;
  /** What it must be answered with; 200 unless told. */
  status?: number;
}

/** What the other process is to send: `asks` round and round, from each connection the next as soon as it is answered. */
export interface Task {
  address: string;
  asks: Ask[];
  connections: number;
  /** Ends after so long, or after so many requests, whichever is first. */
  ms: number;
  requests: number;
}

/** What came of the requests of one kind. */
export interface Kind {
  requests: number;
  /** Answers of another status than was due, and connections that broke. */
  errors: number;
  /** The first few of them, in words. */
  said: string[];
  bytes: number;
  /** From the request's last byte sent to the answer's last byte received, ms, ascending. */
  ms: number[];
}

export interface Done {
  seconds: number;
  kinds: Record<string, Kind>;
}
