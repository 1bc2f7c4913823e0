import { describe, expect, it } from 'vitest';
import { Gap } from '../../core/figure.ts';

describe('what gaps among values come to', () => {
  const [width, height] = [Gap.unknown('/width'), Gap.unknown('/height', '/width')];
  const never = Gap.none('it is virtual');
  it('is nothing where there are none', () => {
    expect(Gap.among([])).toBeUndefined();
    expect(Gap.among([1, { state: 'none' }, undefined])).toBeUndefined();
  });
  it('is the one that is there', () => {
    expect(Gap.among([1, width, 2])).toBe(width);
    expect(Gap.among([never])).toBe(never);
  });
  it('is all that is missing, each once', () => {
    expect(Gap.among([width, 7, height])).toMatchObject({ state: 'unknown', missing: ['/width', '/height'] });
  });
  it('is that it does not exist where one says so, whatever else is missing', () => {
    expect(Gap.among([width, 7, never, height])).toBe(never);
  });
});
