import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll } from 'vitest';
import { buildApp } from '../../api/app.ts';
import { FILES, type Files } from '../../api/drawer/disk.ts';
import { openDrawer } from '../../api/drawer/drawer.ts';
import type { Answered } from './support.ts';

/** A drawer in a folder of its own, asked through the whole app without a server. */

const folders: string[] = [];
/** To be called once in a file of tests that makes folders. */
export const tidyUp = (): void =>
  afterAll(() => {
    for (const folder of folders.splice(0)) rmSync(folder, { recursive: true, force: true });
  });

export function newFolder(): string {
  const folder = mkdtempSync(join(tmpdir(), 'drawer-'));
  folders.push(folder);
  return folder;
}

interface Asked {
  body?: unknown;
  type?: string;
  ifMatch?: string;
}

export function drawerIn(folder = newFolder(), files: Files = FILES) {
  const faults: unknown[] = [];
  const drawer = openDrawer({ folder, files, onFault: (error) => faults.push(error) });
  const app = buildApp({ page: new Map(), drawer, onFault: (error) => faults.push(error) });
  const ask = async (method: string, path: string, { body, type = 'application/json', ifMatch }: Asked = {}): Promise<Answered> => {
    const headers: Record<string, string> = { host: 'localhost' };
    if (body !== undefined) headers['content-type'] = type;
    if (ifMatch !== undefined) headers['if-match'] = ifMatch;
    const sent = body === undefined ? {} : { body: typeof body === 'string' ? body : JSON.stringify(body) };
    const response = await app.request(`http://localhost${path}`, { method, headers, ...sent });
    const text = await response.text();
    const isJson = /json/.test(response.headers.get('content-type') ?? '') && text !== '';
    return { status: response.status, headers: response.headers, text, json: isJson ? JSON.parse(text) : undefined };
  };
  return {
    folder,
    file: join(folder, 'drawer.json'),
    faults,
    drawer,
    ask,
    add: (body: unknown) => ask('POST', '/api/parts', { body }),
    put: (id: string, body: unknown, ifMatch?: string) =>
      ask('PUT', `/api/parts/${id}`, ifMatch === undefined ? { body } : { body, ifMatch }),
    remove: (id: string, ifMatch?: string) => ask('DELETE', `/api/parts/${id}`, ifMatch === undefined ? {} : { ifMatch }),
    parts: async () => (await ask('GET', '/api/parts')).json,
    takeIn: (body: unknown, type = 'application/json', query = '') => ask('POST', `/api/parts/drawer${query}`, { body, type }),
  };
}

export const RELAY = {
  kind: 'relay',
  owned: true,
  price: 120,
  notes: 'from the fair',
  part: {
    name: 'My +5 D',
    kind: 'supplementary',
    focalLengthMm: { value: 203.5, plusMinus: 0.4, origin: 'measured', marked: 200 },
    clearApertureMm: 54,
  },
};
export const SENSOR = { kind: 'sensor', owned: true, part: { name: 'My camera', widthMm: 36, heightMm: 24, columns: 6000, rows: 4000 } };
export const OBJECTIVE = {
  kind: 'objective',
  owned: false,
  part: { name: 'A 10x', magnification: 10, na: 0.25, referenceFocalLengthMm: 200 },
};
