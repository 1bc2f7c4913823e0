/**
 * `npm run load`: the server under load, in a process of its own, asked by another. Prints a table and writes the
 * same as JSON to the file that LOAD names, if any; ends with 1 and a line for each floor that does not hold. Each
 * part says when it begins, because they take minutes where the machine is busy.
 */
import { writeFileSync } from 'node:fs';
import { held, tell } from '../measure/floors.ts';
import { startMeasured } from '../measure/processes.ts';
import { LOAD_FLOORS } from './floors.ts';
import { memoryOver } from './memory.ts';
import { mixed } from './mixed.ts';
import { starving } from './starving.ts';

const measured = await startMeasured();
console.log('mixed requests, for 40 s …');
const mixture = await mixed(measured);
console.log('32 connections, reports, sweeps and searches mixed', mixture);
console.log('reports beside a long search, for 30 s …');
const search = await starving(measured);
console.log('reports while a long search runs', search);
console.log('210,000 requests …');
const memory = await memoryOver(measured);
console.log('what is held, garbage collected', memory);
measured.stop();

const floors = held(LOAD_FLOORS, {
  errors: mixture.errors + search.errors + memory.errors,
  'throughput, mixed over bare': mixture.throughputOfBare,
  'p99 of reports, mixed over bare': mixture.p99OfBare,
  'heap, bytes a request': memory.heapBytesPerRequest,
  'resident memory, second half over first': memory.residentGrowth,
  'p99 of reports, during a search over without': search.p99DuringOverWithout,
  'searches that lasted': search.searchesThatLasted,
});
tell(floors);
if (process.env.LOAD) writeFileSync(process.env.LOAD, `${JSON.stringify({ mixture, search, memory, floors }, null, 2)}\n`);
