export interface Ordeal {
  /** The built server's file. */
  server: string;
  /** Acknowledged writes, and kills while one is in flight, at least. */
  writes: number;
  kills: number;
  /** How many servers write the one drawer. */
  servers?: number;
  /** Numbers from 0 to 1. */
  random?: () => number;
  say?: (text: string) => void;
}

export interface Counted {
  acknowledged: number;
  kills: number;
  killsInFlight: number;
  /** After how many kills a new file, or a flag, was left behind: the kill met the write itself. */
  unfinishedLeft: number;
  flagsLeft: number;
  /** Writes without an answer that turned out to be done. */
  appliedUnanswered: number;
  faults: string[];
}

/** Kills servers while they write a drawer of their own and holds the file to all that was acknowledged. */
export function ordeal(ordeal: Ordeal): Promise<Counted>;
