import { connect } from 'node:net';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import type { Running } from '../../api/server.ts';
import { ask, post, problemIn, raw, start } from './support.ts';

/** Bodies that never end, or drip. */

let server: Running;
beforeAll(async () => {
  server = await start();
});
afterAll(() => server.stop());

const at = (path: string): string => server.address + path;
const good = { objective: 'plan-10x-0-25-200', relay: 'close-up-5d-58', sensor: 'full-frame-45mp', infinitySpaceMm: 60 };

/** Sends a beginning, then a piece every so often, until the other side has had enough; what it said. */
function dripping(address: string, beginning: string, drop: string): Promise<string> {
  const { hostname, port } = new URL(address);
  return new Promise((resolve) => {
    let got = '';
    const socket = connect(Number(port), hostname, () => socket.write(beginning));
    const timer = setInterval(() => socket.writable && socket.write(drop), 50);
    socket.on('data', (chunk) => {
      got += chunk;
      clearInterval(timer);
    });
    socket.on('error', () => {});
    socket.on('close', () => {
      clearInterval(timer);
      resolve(got);
    });
  });
}

describe('bodies without end', () => {
  const head = (extra: string): string =>
    `POST /api/pairings/report HTTP/1.1\r\nHost: localhost\r\nContent-Type: application/json\r\n${extra}\r\n`;
  test('a chunked body is cut off at the limit', async () => {
    const chunk = `10000\r\n${' '.repeat(0x10000)}\r\n`;
    const answer = await raw(server.address, head('Transfer-Encoding: chunked\r\n') + chunk.repeat(5));
    expect(answer).toMatch(/^HTTP\/1\.1 413 /);
    expect(answer).toContain('more than 262144 bytes');
  });
  test('a promise of too much is refused before it comes', async () => {
    const began = Date.now();
    const answer = await raw(server.address, head('Content-Length: 99999999999\r\n'));
    expect(answer).toMatch(/^HTTP\/1\.1 413 /);
    expect(answer).toContain('99999999999 bytes');
    expect(Date.now() - began).toBeLessThan(2500);
  });
  test('a slow body holds up nobody else', async () => {
    const slow = raw(server.address, `${head('Content-Length: 1000\r\n')}{"objective"`, 600);
    const answers = await Promise.all(Array.from({ length: 20 }, () => post(at('/api/pairings/report'), good)));
    expect(answers.map((a) => a.status)).toEqual(Array.from({ length: 20 }, () => 200));
    expect(await slow).toBe('');
  });
  test('a body that breaks off is nobody else’s trouble', async () => {
    await raw(server.address, `${head('Content-Length: 1000\r\n')}{"obj`, 50);
    await raw(server.address, `${head('Transfer-Encoding: chunked\r\n')}zz\r\n`, 500);
    expect((await ask(at('/api/health'))).status).toBe(200);
  });
  test('what breaks off is not told as a fault of the program', async () => {
    const faults: unknown[] = [];
    const other = await start({ page: new Map(), onFault: (error) => faults.push(error) });
    for (const path of ['/api/pairings/report', '/api/parts', '/api/parts/drawer'])
      for (const rest of [
        'Content-Length: 1000\r\n\r\n{"a',
        'Transfer-Encoding: chunked\r\n\r\n5\r\n{"a"',
        'Transfer-Encoding: chunked\r\n\r\nzz\r\n',
      ])
        await raw(other.address, `POST ${path} HTTP/1.1\r\nHost: localhost\r\nContent-Type: application/json\r\n${rest}`, 40);
    await other.stop();
    expect(faults).toEqual([]);
  });
  test('a long sweep lets others be answered between its steps', async () => {
    const about = (value: number) => ({ value, plusMinus: value / 20, origin: 'assumed' });
    const stops = Array.from({ length: 8 }, (_, i) => ({ diameterMm: about(30 - i), fromSensorMm: about(20 + 9 * i) }));
    const heavy = { ...good, relay: 'tele-200-f4', stops, sensorOffsetMm: about(1) };
    const order: string[] = [];
    const sweep = post(at('/api/pairings/sweep'), { pairing: heavy, vary: '/infinitySpaceMm', from: 50, to: 80, steps: 12 }).then(
      (answer) => {
        order.push('sweep');
        return answer;
      },
    );
    for (let i = 0; i < 3; i++) {
      await ask(at('/api/health'));
      order.push('health');
    }
    expect((await sweep).status).toBe(200);
    expect(order).toEqual(['health', 'health', 'health', 'sweep']);
  }, 30_000);
  test('who sends headers or a body by the drop is cut off in time, and others are answered meanwhile', async () => {
    const patient = await start({ page: new Map(), slowestMs: 600 });
    const drops = [
      'GET /api/health HTTP/1.1\r\nHost: localhost\r\n',
      head('Content-Length: 1000\r\n'),
      head('Transfer-Encoding: chunked\r\n'),
    ];
    const slow = Array.from({ length: 30 }, (_, i) =>
      dripping(patient.address, drops[i % drops.length] as string, i % 3 === 0 ? 'X: ' : '1\r\n'),
    );
    for (let i = 0; i < 10; i++) expect((await post(`${patient.address}/api/pairings/report`, good)).status).toBe(200);
    for (const answer of await Promise.all(slow)) {
      expect(answer).toMatch(/^HTTP\/1\.1 408 Request Timeout\r\n/);
      expect(problemIn(answer).errors[0]).toMatchObject({ code: 'tooSlow' });
    }
    await patient.stop();
  });
  test('a small chunked body is read', async () => {
    const text = JSON.stringify(good);
    const chunked = `${text.length.toString(16)}\r\n${text}\r\n0\r\n\r\n`;
    expect(await raw(server.address, head('Transfer-Encoding: chunked\r\n') + chunked)).toMatch(/^HTTP\/1\.1 200 /);
  });
});
