import { connect } from 'node:net';
import { expect } from 'vitest';
import type { z } from 'zod';
import type { Setting } from '../../api/app.ts';
import { problemSchema } from '../../api/schemas/problem.ts';
import { type Running, startServer } from '../../api/server.ts';

/** The real app behind a real server, on a free port. */
export const start = (setting: Setting & { slowestMs?: number } = {}): Promise<Running> =>
  startServer(0, { host: '127.0.0.1', ...setting });

export interface Answered {
  status: number;
  headers: Headers;
  text: string;
  // biome-ignore lint/suspicious/noExplicitAny: parsed JSON, read field by field by the tests
  json: any;
}

export async function ask(url: string, init: RequestInit = {}): Promise<Answered> {
  const response = await fetch(url, init);
  const text = await response.text();
  const isJson = /[/+]json/.test(response.headers.get('content-type') ?? '');
  return { status: response.status, headers: response.headers, text, json: isJson && text !== '' ? JSON.parse(text) : undefined };
}

/** Sends a body as JSON; text goes as it stands, so that it may be wrong. */
export const post = (url: string, body: unknown, headers: Record<string, string> = {}): Promise<Answered> =>
  ask(url, {
    method: 'POST',
    headers: { 'content-type': 'application/json', ...headers },
    body: typeof body === 'string' ? body : JSON.stringify(body),
  });

/** Writes bytes to the port as they are and reads until the other side is done: for what no client sends. */
export function raw(address: string, text: string, patience = 3000): Promise<string> {
  const { hostname, port } = new URL(address);
  return new Promise((resolve, reject) => {
    const socket = connect(Number(port), hostname, () => socket.write(text));
    let got = '';
    const done = (): void => {
      clearTimeout(timer);
      socket.destroy();
      resolve(got);
    };
    const timer = setTimeout(done, patience);
    socket.on('data', (chunk) => {
      got += chunk;
      const [head, body] = got.split('\r\n\r\n');
      const length = Number(head?.match(/content-length: (\d+)/i)?.[1] ?? Number.NaN);
      if (body !== undefined && Buffer.byteLength(body) >= length) done();
    });
    socket.on('close', done);
    socket.on('error', (error) => (got ? done() : reject(error)));
  });
}

export type ProblemBody = z.infer<typeof problemSchema>;

/** Holds an answer to be a problem of that status in the contract's form, each error whole. */
export function expectProblem(answer: Answered, status: number): ProblemBody {
  expect(answer.status, answer.text.slice(0, 300)).toBe(status);
  expect(answer.headers.get('content-type')).toBe('application/problem+json');
  const problem = problemSchema.parse(answer.json);
  expect(problem.status).toBe(status);
  expect(problem.errors.length).toBeGreaterThan(0);
  expect(problem.errors.length).toBeLessThanOrEqual(20);
  for (const error of problem.errors) {
    expect(error.message.length).toBeGreaterThan(3);
    expect(error.given.length).toBeGreaterThan(0);
    expect(error.given.length).toBeLessThanOrEqual(80);
    expect(error.expected.length, JSON.stringify(error)).toBeGreaterThan(0);
  }
  expect(answer.text).not.toMatch(/\bat .*\.(ts|js):\d+|node_modules/);
  return problem;
}

/** The problem that an answer as it came over the wire ends in. */
export function problemIn(answer: string) {
  expect(answer.toLowerCase()).toContain('\r\ncontent-type: application/problem+json\r\n');
  return problemSchema.parse(JSON.parse(answer.slice(answer.indexOf('\r\n\r\n'))));
}
