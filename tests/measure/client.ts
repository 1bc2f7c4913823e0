import { connect, type Socket } from 'node:net';
import type { Ask, Done, Kind, Task } from './told.ts';

/**
 * Sends requests over connections that are kept, as fast as they are answered, and times each. HTTP is written
 * and read here by hand, because a general client costs as much as the server that is to be measured. In a
 * process of its own, started by `fork`.
 */

const kindsOf = (asks: readonly Ask[]): Record<string, Kind> =>
  Object.fromEntries(asks.map(({ kind }) => [kind, { requests: 0, errors: 0, said: [], bytes: 0, ms: [] }]));

/** An answer that may still be coming in: its bytes so far, and how long it is, once that is known. */
class Answer {
  private chunks: Buffer[] = [];
  private have = 0;
  private whole: number | undefined;
  status = 0;
  head = '';

  /** Takes in what came; true where the answer is whole. @throws what is no answer with a length of its own */
  take(chunk: Buffer): boolean {
    this.chunks.push(chunk);
    this.have += chunk.length;
    if (this.whole === undefined) {
      const start = this.chunks.length === 1 ? chunk : Buffer.concat(this.chunks);
      const end = start.indexOf('\r\n\r\n');
      if (end < 0) return false;
      this.head = start.toString('latin1', 0, end);
      this.status = Number(this.head.slice(9, 12));
      const length = this.head.match(/\ncontent-length: *(\d+)/i)?.[1];
      if (length === undefined) throw new Error(`an answer without a length: ${this.head}`);
      this.whole = end + 4 + Number(length);
    }
    if (this.have > this.whole) throw new Error('more than was asked for came back');
    return this.have === this.whole;
  }

  get bytes(): number {
    return this.have;
  }

  text(): string {
    return Buffer.concat(this.chunks)
      .toString('utf8')
      .slice(this.head.length + 4);
  }
}

function sent({ address, asks, connections, ms, requests }: Task): Promise<Done> {
  const { hostname, port, host } = new URL(address);
  const wire = asks.map(({ path, body }) =>
    Buffer.from(
      `POST ${path} HTTP/1.1\r\nhost: ${host}\r\ncontent-type: application/json\r\ncontent-length: ${Buffer.byteLength(body)}\r\n\r\n${body}`,
    ),
  );
  const kinds = kindsOf(asks);
  const began = performance.now();
  let next = 0;
  let open = connections;
  return new Promise((resolve) => {
    const leave = (socket: Socket): void => {
      socket.destroy();
      if (--open === 0) resolve({ seconds: (performance.now() - began) / 1000, kinds: sorted(kinds) });
    };
    const wrong = (kind: Kind, what: string): void => {
      kind.errors++;
      if (kind.said.length < 3) kind.said.push(what.slice(0, 300));
    };
    const converse = (): void => {
      const socket = connect(Number(port), hostname);
      socket.setNoDelay(true);
      let answer = new Answer();
      let kind = kinds[asks[0]?.kind as string] as Kind;
      let at = 0;
      let due = 200;
      let gone = false;
      const ask = (): void => {
        if (next >= requests || performance.now() - began >= ms) {
          gone = true;
          leave(socket);
          return;
        }
        const i = next++ % wire.length;
        const sending = asks[i] as Ask;
        kind = kinds[sending.kind] as Kind;
        due = sending.status ?? 200;
        answer = new Answer();
        at = performance.now();
        socket.write(wire[i] as Buffer);
      };
      socket.on('connect', ask);
      socket.on('data', (chunk) => {
        try {
          if (!answer.take(chunk)) return;
        } catch (error) {
          wrong(kind, (error as Error).message);
          gone = true;
          leave(socket);
          return;
        }
        kind.ms.push(performance.now() - at);
        kind.requests++;
        kind.bytes += answer.bytes;
        if (answer.status !== due) wrong(kind, `${answer.status} ${answer.text()}`);
        ask();
      });
      socket.on('error', () => {});
      socket.on('close', () => {
        if (gone) return;
        wrong(kind, 'the connection broke');
        leave(socket);
      });
    };
    for (let i = 0; i < connections; i++) converse();
  });
}

const sorted = (kinds: Record<string, Kind>): Record<string, Kind> =>
  Object.fromEntries(Object.entries(kinds).map(([name, kind]) => [name, { ...kind, ms: kind.ms.toSorted((a, b) => a - b) }]));

process.on('message', async (task: Task) => process.send?.(await sent(task)));
process.on('disconnect', () => process.exit(0));
