import type { Floor } from '../measure/floors.ts';

/** What speed must keep, as ratios within one run; where a floor is a time or a size, the page's own promise says so. */
export const BENCH_FLOORS: readonly Floor[] = [
  {
    name: 'figures / straight line',
    sense: 'least',
    limit: 0.4,
    why: 'a graph that can be asked about, moved and explained may cost two and a half times the sums alone',
  },
  {
    name: 'corner light / sampled at 1e-4',
    sense: 'least',
    limit: 100,
    why: 'the closed form earns its keep; it is good to twelve digits besides, so at equal accuracy it is more',
  },
  {
    name: 'rays × surfaces / by hand',
    sense: 'least',
    limit: 0.7,
    why: 'any lens, stops and lost rays may cost a third over one lens written out',
  },
  {
    name: 'POST report / POST bare',
    sense: 'least',
    limit: 0.4,
    why: 'a whole report may cost one and a half times what it takes to ask for it',
  },
  { name: 'search through the API, µs each, 100k / 10k', sense: 'most', limit: 1.5, why: 'work in proportion to what is considered' },
  { name: 'search in core, µs each, 1M / 10k', sense: 'most', limit: 1.5, why: 'the same, beyond what the API takes' },
  { name: 'search, heap bytes a pairing more', sense: 'most', limit: 8, why: 'what is not kept is let go: less than a number each' },
  {
    name: 'start to first answer / bare',
    sense: 'most',
    limit: 8,
    why: 'a bare server of Node answers in a few hundredths of a second; ours reads its page and parts first',
  },
  { name: 'first script, kB gzip', sense: 'most', limit: 70, why: 'the first answer does not wait for more' },
  {
    name: 'first answer in Chromium / bare page',
    sense: 'most',
    limit: 8,
    why: 'script, fonts and a whole report, against one sentence of HTML',
  },
  { name: 'dragging, worst p95, ms', sense: 'most', limit: 50, why: 'three frames: a hand does not see it lag' },
];
