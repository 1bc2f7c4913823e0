import { Agent, request } from 'node:http';

/** A request as it goes over the wire, and what came back. */

export interface Sent {
  readonly method: string;
  readonly path: string;
  readonly headers: Readonly<Record<string, string>>;
  readonly body?: Buffer;
}

export interface Got {
  readonly status: number;
  readonly headers: Readonly<Record<string, string | string[] | undefined>>;
  readonly text: string;
}

/** One connection to a server, used by one request after the other. */
export function clientOf(address: string): { send(sent: Sent): Promise<Got>; close(): void } {
  const { hostname, port } = new URL(address);
  const agent = new Agent({ keepAlive: true, maxSockets: 1 });
  const send = (sent: Sent): Promise<Got> =>
    new Promise((resolve, reject) => {
      const { method, path, headers, body } = sent;
      const length = body === undefined ? {} : { 'content-length': String(body.length) };
      const asked = request({ hostname, port, method, path, agent, headers: { host: 'localhost', ...headers, ...length } }, (answer) => {
        const chunks: Buffer[] = [];
        answer.on('data', (chunk) => chunks.push(chunk));
        answer.on('end', () =>
          resolve({ status: answer.statusCode ?? 0, headers: answer.headers, text: Buffer.concat(chunks).toString() }),
        );
        answer.on('error', reject);
      });
      asked.on('error', (error: NodeJS.ErrnoException) => {
        // A connection that had lain idle was closed just as it was used again: nobody has read the request.
        if (asked.reusedSocket && error.code === 'ECONNRESET') send(sent).then(resolve, reject);
        else reject(error);
      });
      asked.end(body);
    });
  return { send, close: () => agent.destroy() };
}
