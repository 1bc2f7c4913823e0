import { expect, test } from 'vitest';
import { Gap } from '../../../../core/figure.ts';
import { stackCautions } from '../../../../core/table/stack/cautions.ts';

const cautions = (curvature: 'known' | 'unknown' | 'none', glass?: object, fieldCurvatureUm?: number): string =>
  stackCautions({
    answers: { framesInAll: { state: 'unknown' }, curvatureFrames: { state: curvature, value: 2 } },
    settings: { fieldCurvatureUm },
    pairing: { relay: { glass } },
    graph: { place: { get: () => 0 } },
    sheet: [Gap.unknown('/relay/clearApertureMm')],
  } as never).join(' ');

test('that the objective has a curved field of its own is said where only the glass of the relay has told of one', () => {
  const SAID = "Of the curved field only the relay's part is known";
  expect(cautions('known', {})).toContain(SAID);
  expect(cautions('known', {}, 3)).not.toContain(SAID);
  expect(cautions('known')).not.toContain(SAID);
  for (const other of ['unknown', 'none'] as const) expect(cautions(other, {})).not.toContain(SAID);
});

test('where the aperture and the frames are not known, nothing is said of either', () => {
  expect(cautions('none')).toBe('');
});
