import { createServer, type Server, type ServerResponse } from 'node:http';
import type { AddressInfo, Socket } from 'node:net';
import { networkInterfaces } from 'node:os';
import { getRequestListener } from '@hono/node-server';
import { addressHere, openingWords } from './addresses.ts';
import { buildApp, type Setting } from './app.ts';
import { HEADERS } from './guard.ts';
import { problemAnswer, problemOf, type Refusal, refusal } from './problems.ts';

export interface Running {
  /** `http://127.0.0.1:8787`, on the machine itself. */
  readonly address: string;
  /** What is to be said where others can reach it, a line each; the key stands in it and nowhere else. */
  readonly words: readonly string[];
  /** Lets the requests in hand finish, for two seconds at most. */
  stop(): Promise<void>;
}

/** A request that has not come in whole after this long is cut off, ms; and how often that is looked at, in parts of it. */
const SLOWEST_REQUEST = 30_000;
const LOOKS = 10;
const PATIENCE = 2_000;

/**
 * @param slowestMs after how long a request that has not come in whole is cut off
 * @throws the system's error, such as EADDRINUSE, where it cannot listen
 */
export async function startServer(
  port: number,
  setting: Setting & { host: string; slowestMs?: number },
  app = buildApp(setting),
): Promise<Running> {
  const { host, names = [], key, slowestMs = SLOWEST_REQUEST } = setting;
  const listener = getRequestListener(app.fetch, { hostname: host, errorHandler: unreadable });
  const patience = { requestTimeout: slowestMs, headersTimeout: slowestMs, connectionsCheckingInterval: slowestMs / LOOKS };
  const server = createServer(patience, listener);
  server.on('clientError', notHttp);
  await new Promise<void>((resolve, reject) => {
    server.once('error', reject);
    server.listen(port, host, () => {
      server.off('error', reject);
      resolve();
    });
  });
  const { address: bound, port: here } = server.address() as AddressInfo;
  const reach = { host, names };
  return {
    address: addressHere(reach, bound, here),
    words: openingWords(reach, bound, here, networkInterfaces(), key),
    stop: () => stop(server),
  };
}

function stop(server: Server): Promise<void> {
  return new Promise((resolve) => {
    const impatient = setTimeout(() => server.closeAllConnections(), PATIENCE);
    // A connection whose answer has gone out would be kept for the next request, which is not to come.
    const idle = setInterval(() => server.closeIdleConnections(), 50);
    server.close(() => {
      clearTimeout(impatient);
      clearInterval(idle);
      resolve();
    });
    server.closeIdleConnections();
  });
}

const UNREADABLE = refusal(
  400,
  'notHttp',
  'is not a request that can be read',
  'an address or Host of another form',
  'an address such as /api/health',
);
const TOO_LONG = refusal(431, 'headersTooLarge', 'has headers that are too large', 'more than is read', 'at most 16 kB of headers');
const TOO_SLOW = refusal(408, 'tooSlow', 'did not come in whole in time', 'a part of it', 'the whole of it within half a minute');

/** What does not even become a request for the app: an address that is none, a Host that is none. */
function unreadable(): Response {
  const answer = problemAnswer(UNREADABLE);
  for (const [name, value] of Object.entries(HEADERS)) answer.headers.set(name, value);
  return answer;
}

const WHY: Readonly<Record<string, Refusal>> = { HPE_HEADER_OVERFLOW: TOO_LONG, ERR_HTTP_REQUEST_TIMEOUT: TOO_SLOW };

/** What is not HTTP at all, or too slow, or has endless headers. */
function notHttp(error: NodeJS.ErrnoException, socket: Socket & { _httpMessage?: ServerResponse }): void {
  if (error.code === 'ECONNRESET' || !socket.writable || socket._httpMessage?.headersSent) {
    socket.destroy();
    return;
  }
  const { answer, headers } = problemOf(WHY[error.code ?? ''] ?? UNREADABLE);
  const body = JSON.stringify(answer);
  const all = { ...HEADERS, ...headers, connection: 'close', 'content-length': Buffer.byteLength(body) };
  const lines = Object.entries(all).map(([name, value]) => `${name}: ${value}\r\n`);
  socket.end(`HTTP/1.1 ${answer.status} ${answer.title}\r\n${lines.join('')}\r\n${body}`);
}
