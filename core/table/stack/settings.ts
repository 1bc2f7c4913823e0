import { setting } from '../setting.ts';

/** How much of its depth a frame shares with the next one (common practice, without source). */
export const overlap = setting({
  key: 'overlap',
  symbol: 'o',
  unit: '',
  words: 'share of its depth that a frame has in common with the next one',
  bounds: [0, 0.95],
  usual: 0.2,
});

export const railError = setting({
  key: 'railErrorUm',
  symbol: 'ε',
  unit: 'µm',
  words: 'how far the rail may stand from where it was sent',
  bounds: [0, 1000],
  usual: 0,
});

export const SETTINGS = [overlap, railError] as const;
