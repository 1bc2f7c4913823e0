import { type Asked, type Choices, choosing, limitAnswers, type NearMiss, oneMore, type Progress } from '../../core/choosing.ts';
import { evaluate, type Glassworks } from '../../core/index.ts';
import type { Found, Miss, Task, Told } from './choose-task.ts';

/**
 * Searches away from the page, a little at a time: between two slices it looks whether something else is asked,
 * so that a search is let go at once and what it has fetched and made ready stays.
 */
const SLICE_MS = 25;
const TELL_MS = 80;

let current = 0;
const tell = (answer: Told): void => postMessage(answer);

/** What works with glass is fetched when a relay with glass turns up. */
let fetched: Promise<Glassworks> | undefined;
async function worksFor({ relays }: Asked): Promise<Glassworks | undefined> {
  if (relays.every(({ part }) => part.glass === undefined)) return undefined;
  fetched ??= import('../../core/glassworks.ts').then(({ glassworks }) => glassworks());
  return fetched;
}

/** Whatever waits has its turn: a message that came meanwhile among it. */
const turn = (): Promise<void> => new Promise((done) => setTimeout(done));

/** Works to the end, or answers undefined where something else was asked meanwhile. */
async function worked<T>(id: number, steps: Generator<Progress, T, undefined>): Promise<T | undefined> {
  let until = performance.now() + SLICE_MS;
  let say = performance.now() + TELL_MS;
  let told = 0;
  for (;;) {
    const step = steps.next();
    if (step.done) return step.value;
    const { done, of } = step.value;
    if (done === of) told++;
    const now = performance.now();
    if (now < until) continue;
    if (now > say) {
      tell({ id, done, of, told });
      say = now + TELL_MS;
    }
    await turn();
    if (id !== current) return undefined;
    until = performance.now() + SLICE_MS;
  }
}

function* found(asked: Asked, works: Glassworks | undefined): Generator<Progress, Found, undefined> {
  const choices: Choices = yield* choosing(asked, works);
  const nearMisses: Miss[] = [];
  for (const near of choices.nearMisses) {
    nearMisses.push({ ...near, limits: limitsOfMiss(asked, near, works) });
    yield { done: choices.considered, of: choices.considered };
  }
  return { ...choices, nearMisses };
}

const limitsOfMiss = ({ want }: Asked, { pairing, price = 0, priceMissing = [] }: NearMiss, works: Glassworks | undefined) =>
  limitAnswers(want, evaluate(pairing, works).answers, { known: price, missing: priceMissing });

addEventListener('message', async ({ data: { id, asked, more } }: MessageEvent<Task>) => {
  current = id;
  if (!asked) return;
  try {
    const works = await worksFor(more ?? asked);
    // A message that came while glass was fetched has taken this one's place.
    if (id !== current) return;
    const choices = await worked(id, found(asked, works));
    if (choices) tell({ id, found: choices });
    const opened = choices && more && (await worked(id, oneMore(more, works)));
    if (opened) tell({ id, more: opened });
  } catch (error) {
    if (id === current) tell({ id, failed: error instanceof Error ? error.message : String(error) });
  }
});
