import { setting } from './setting.ts';

/** Asked for by the stack's time and by how still it must stand. */
export const exposure = setting({
  key: 'exposureS',
  symbol: 't_e',
  unit: 's',
  words: 'exposure time of one frame',
  bounds: [1e-6, 3600],
  usual: 0.01,
});
