import { createServer, type Server, type ServerResponse } from 'node:http';
import type { AddressInfo, Socket } from 'node:net';
import { getRequestListener } from '@hono/node-server';
import { buildApp, type Setting } from './app.ts';
import { HEADERS } from './guard.ts';
import { problemAnswer, refusal } from './problems.ts';

export interface Running {
  /** `http://127.0.0.1:8787` */
  readonly address: string;
  /** Lets the requests in hand finish, for two seconds at most. */
  stop(): Promise<void>;
}

/** A request that has not come in whole after this long is cut off, ms. */
const SLOWEST_REQUEST = 30_000;
const PATIENCE = 2_000;

/** @throws the system's error, such as EADDRINUSE, where it cannot listen */
export async function startServer(port: number, setting: Setting & { host: string }, app = buildApp(setting)): Promise<Running> {
  const listener = getRequestListener(app.fetch, { hostname: setting.host, errorHandler: unreadable });
  const server = createServer({ requestTimeout: SLOWEST_REQUEST, headersTimeout: SLOWEST_REQUEST }, listener);
  server.on('clientError', notHttp);
  await new Promise<void>((resolve, reject) => {
    server.once('error', reject);
    server.listen(port, setting.host, () => {
      server.off('error', reject);
      resolve();
    });
  });
  const { address, family, port: bound } = server.address() as AddressInfo;
  return { address: `http://${family === 'IPv6' ? `[${address}]` : address}:${bound}`, stop: () => stop(server) };
}

function stop(server: Server): Promise<void> {
  return new Promise((resolve) => {
    const impatient = setTimeout(() => server.closeAllConnections(), PATIENCE);
    server.close(() => {
      clearTimeout(impatient);
      resolve();
    });
    server.closeIdleConnections();
  });
}

/** What does not even become a request for the app: an address that is none, a Host that is none. */
function unreadable(): Response {
  const answer = problemAnswer(
    refusal(400, 'notHttp', 'is not a request that can be read', 'an address or Host of another form', 'an address such as /api/health'),
  );
  for (const [name, value] of Object.entries(HEADERS)) answer.headers.set(name, value);
  return answer;
}

/** What is not HTTP at all, or too slow, or has endless headers. */
function notHttp(error: NodeJS.ErrnoException, socket: Socket & { _httpMessage?: ServerResponse }): void {
  if (error.code === 'ECONNRESET' || !socket.writable || socket._httpMessage?.headersSent) {
    socket.destroy();
    return;
  }
  const status = { HPE_HEADER_OVERFLOW: '431 Request Header Fields Too Large', ERR_HTTP_REQUEST_TIMEOUT: '408 Request Timeout' }[
    error.code ?? ''
  ];
  const headers = Object.entries({ ...HEADERS, connection: 'close', 'content-length': '0' }).map(
    ([name, value]) => `${name}: ${value}\r\n`,
  );
  socket.end(`HTTP/1.1 ${status ?? '400 Bad Request'}\r\n${headers.join('')}\r\n`);
}
