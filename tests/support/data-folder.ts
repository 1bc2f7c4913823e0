import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll } from 'vitest';

/** Before each file of tests: the folder of the user's own data is a new, empty one, never the one of whoever runs them. */
const folder = mkdtempSync(join(tmpdir(), 'pupilwalk-data-'));
process.env.PUPILWALK_DATA = folder;
afterAll(() => rmSync(folder, { recursive: true, force: true }));
