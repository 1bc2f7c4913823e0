import { type ChildProcess, fork } from 'node:child_process';
import { fileURLToPath } from 'node:url';
import type { Ask, Done, Kind, Memory, Task, Told } from './told.ts';

/** The measured server and the one that sends requests to it, each a process of its own beside the bundle that runs this. */
export interface Measured {
  readonly address: string;
  send(asks: Ask[], how: Partial<Pick<Task, 'connections' | 'ms' | 'requests'>>): Promise<Done>;
  /** What it holds after its garbage has been collected. */
  memory(): Promise<Memory>;
  /** What its process has spent so far, all its threads together, ms. */
  cpuMs(): Promise<number>;
  stop(): void;
}

const start = (file: string, execArgv: string[]): ChildProcess =>
  fork(fileURLToPath(new URL(file, import.meta.url)), { execArgv, serialization: 'advanced' });

/** @throws where the process ends before it says anything */
const said = <T>(by: ChildProcess): Promise<T> =>
  new Promise((resolve, reject) => {
    const ended = (): void => reject(new Error('a measured process ended by itself'));
    by.once('exit', ended);
    by.once('message', (message) => {
      by.off('exit', ended);
      resolve(message as T);
    });
  });

export async function startMeasured(): Promise<Measured> {
  const server = start('./twin.js', ['--expose-gc']);
  const { address } = await said<{ address: string }>(server);
  const clients = new Set<ChildProcess>();
  const idle: ChildProcess[] = [];
  const told = (what: 'memory' | 'cpu'): Promise<Told> => {
    const answer = said<Told>(server);
    server.send(what);
    return answer;
  };
  return {
    address,
    async send(asks, { connections = 8, ms = 600_000, requests = Number.MAX_SAFE_INTEGER }) {
      const client = idle.pop() ?? start('./client.js', []);
      clients.add(client);
      const done = said<Done>(client);
      client.send({ address, asks, connections, ms, requests } satisfies Task);
      const result = await done;
      idle.push(client);
      return result;
    },
    memory: async () => ((await told('memory')) as { memory: Memory }).memory,
    cpuMs: async () => ((await told('cpu')) as { cpuMs: number }).cpuMs,
    stop() {
      for (const process of [server, ...clients]) process.disconnect();
    },
  };
}

/** The time that a share of the requests stay under, ms. */
export const quantile = (ascending: readonly number[], share: number): number =>
  ascending[Math.min(ascending.length - 1, Math.floor(share * ascending.length))] ?? Number.NaN;

export const median = (values: readonly number[]): number =>
  quantile(
    values.toSorted((a, b) => a - b),
    0.5,
  );

/** Requests a second of all kinds. */
export const rateOf = ({ seconds, kinds }: Done): number => Object.values(kinds).reduce((sum, k) => sum + k.requests, 0) / seconds;

export const errorsOf = ({ kinds }: Done): { count: number; said: string[] } => {
  const all: Kind[] = Object.values(kinds);
  return { count: all.reduce((sum, k) => sum + k.errors, 0), said: all.flatMap((k) => k.said).slice(0, 3) };
};
