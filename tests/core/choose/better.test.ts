import { describe, expect, it } from 'vitest';
import { BETTER, FIGURE_IDS, type FigureId } from '../../../core/index.ts';

describe('which way is better', () => {
  it('is told of figures of the registry alone, and of none that is a matter of choice', () => {
    for (const [id, way] of Object.entries(BETTER)) {
      expect(FIGURE_IDS, id).toContain(id);
      expect(way === 'more' || way === 'less', id).toBe(true);
    }
    for (const id of ['systemMagnification', 'samplingRatio', 'contrastAtNyquist', 'relayFocalLengthMm'] as const)
      expect(BETTER[id], id).toBeUndefined();
  });
  it('turns with what is told the other way about', () => {
    const pairs: [FigureId, FigureId][] = [
      ['cornerIllumination', 'cornerLossEv'],
      ['cutoffObjectLpPerMm', 'rayleighUm'],
      ['systemNa', 'workingFNumber'],
    ];
    for (const [a, b] of pairs) expect([BETTER[a], BETTER[b]]).toEqual(['more', 'less']);
  });
});
