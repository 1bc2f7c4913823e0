import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { openDrawer } from '../../api/drawer/drawer.ts';
import { startServer } from '../../api/server.ts';
import { clientOf, type Got, type Sent } from './client.ts';

/** A server with a drawer of its own, and a client of it. */
export interface Asked {
  send(sent: Sent): Promise<Got>;
  stop(): Promise<void>;
  /** What the server told of its own faults. */
  readonly faults: unknown[];
}

export async function serverWith(): Promise<Asked> {
  const folder = mkdtempSync(join(tmpdir(), 'fuzz-'));
  const faults: unknown[] = [];
  const onFault = (error: unknown): void => void faults.push(error);
  const server = await startServer(0, { host: '127.0.0.1', page: new Map(), drawer: openDrawer({ folder, onFault }), onFault });
  const client = clientOf(server.address);
  return {
    faults,
    /** The same text from every server, whatever its folder is called. */
    async send(sent) {
      const got = await client.send(sent);
      return { ...got, text: got.text.replaceAll(folder, '/drawer') };
    },
    async stop() {
      client.close();
      await server.stop();
      rmSync(folder, { recursive: true, force: true });
    },
  };
}

const HEADERS = ['content-type', 'etag', 'location', 'allow', 'retry-after', 'www-authenticate'];

/** What came in lines is the same where it ends the same: how often it tells of itself is a matter of time. */
const textOf = ({ headers, text }: Got): string =>
  headers['content-type'] === 'application/x-ndjson' ? (text.trim().split('\n').at(-1) ?? '') : text;

export const alike = (one: Got, other: Got): boolean =>
  one.status === other.status && textOf(one) === textOf(other) && HEADERS.every((name) => one.headers[name] === other.headers[name]);
