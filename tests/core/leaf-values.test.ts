import { expect, it } from 'vitest';
import { leaf, step } from '../../core/figure.ts';
import { LeafValues } from '../../core/leaf-values.ts';

const [a, b] = [leaf('a', 'a', '', 'one'), leaf('b', 'b', '', 'another')];
const worked = step({ id: 'worked', needs: [a], of: (x) => 2 * x });

it('leaves keep a value each, told apart by what they are', () => {
  const values = new LeafValues().set(a, 3);
  expect(values.get(a)).toBe(3);
  expect(values.get(b)).toBeUndefined();
  expect(values.set(b, 0).get(b)).toBe(0);
  expect(values.get(a)).toBe(3);
});

it('a copy goes its own way', () => {
  const values = new LeafValues().set(a, 3);
  const copy = new LeafValues(values).set(a, 4);
  expect([values.get(a), copy.get(a)]).toEqual([3, 4]);
});

it('what is worked out has no value here, and takes none', () => {
  const values = new LeafValues().set(a, 3);
  expect(values.get(worked)).toBeUndefined();
  expect(() => values.set(worked, 1)).toThrow('worked is worked out');
});
