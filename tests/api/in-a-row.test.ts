import { setImmediate } from 'node:timers/promises';
import { describe, expect, it } from 'vitest';
import { inARow } from '../../api/in-a-row.ts';
import { unhurried } from '../../api/unhurried.ts';

/** Notes who has gone on, in order. */
function noted() {
  const gone: string[] = [];
  const wait = async (who: string): Promise<void> => {
    await inARow();
    gone.push(who);
  };
  return { gone, wait };
}

describe('those who wait in a row', () => {
  it('go on together and in order, once what has come in has been read', async () => {
    const { gone, wait } = noted();
    const all = [wait('a'), wait('b')];
    await Promise.resolve();
    all.push(wait('c'));
    expect(gone).toEqual([]);
    await setImmediate();
    expect(gone).toEqual(['a', 'b', 'c']);
    await Promise.all(all);
  });

  it('are sixteen at most at once; the rest keep their order, before who comes later', async () => {
    const { gone, wait } = noted();
    const names = Array.from({ length: 40 }, (_, i) => `${i}`);
    const all = names.map(wait);
    await setImmediate();
    expect(gone).toEqual(names.slice(0, 16));
    all.push(wait('late'));
    await setImmediate();
    expect(gone).toEqual(names.slice(0, 32));
    await Promise.all(all);
    expect(gone).toEqual([...names, 'late']);
  });

  it('go before what is slow and pauses for them', async () => {
    const { gone, wait } = noted();
    function* slow(): Generator<number> {
      for (let i = 0; i < 2; i++) {
        const began = performance.now();
        while (performance.now() - began < 25);
        gone.push(`slow ${i}`);
        yield i;
      }
    }
    const items = unhurried(slow());
    const quick = wait('quick');
    expect(await items).toEqual([0, 1]);
    await quick;
    expect(gone).toEqual(['slow 0', 'quick', 'slow 1']);
  });
});
