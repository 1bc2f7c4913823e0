import type { Floor } from '../measure/floors.ts';

/** What the server must keep under load. Ratios are to the bare route of the same app in the same process. */
export const LOAD_FLOORS: readonly Floor[] = [
  { name: 'errors', sense: 'most', limit: 0, why: 'load is no reason to fail' },
  {
    name: 'throughput, mixed over bare',
    sense: 'least',
    limit: 0.04,
    why: 'of a thousand requests 60 are 20 pairings and 4 are 500: two and a half times the work of as many reports, themselves a fifth of the bare rate',
  },
  {
    name: 'p99 of reports, mixed over bare',
    sense: 'most',
    limit: 25,
    why: 'of 32 that wait at once two or three are sweeps, whose turns are of 20 ms',
  },
  {
    name: 'heap, bytes a request',
    sense: 'most',
    limit: 16,
    why: 'a leak holds at least an object a request; the line is drawn through eleven points',
  },
  {
    name: 'resident memory, second half over first',
    sense: 'most',
    limit: 1.1,
    why: 'what the allocator keeps settles within the first half',
  },
  {
    name: 'p99 of reports, during a search over without',
    sense: 'most',
    limit: 4,
    why: 'a search has a thread of its own: on two cores a report shares them with it and with what measures',
  },
  { name: 'searches that lasted', sense: 'least', limit: 4, why: 'else nothing was measured beside them' },
];
