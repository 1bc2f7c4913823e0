import { expect, it } from 'vitest';
import { evaluate, numberIn, type Pairing, PairingError, reportOf, swingOf } from '../../../core/index.ts';
import { randomPairing } from '../../support/pairings.ts';
import { random } from '../../support/random.ts';

const base: Pairing = {
  objective: {
    magnification: 10,
    na: 0.25,
    referenceFocalLengthMm: 200,
    fieldNumberMm: { value: 22, plusMinus: 2, origin: 'assumed' },
    exitPupilFromShoulderMm: { value: -10, plusMinus: 20, origin: 'assumed' },
  },
  relay: { kind: 'supplementary', powerDioptre: 5, clearApertureMm: 20, frontPrincipalPlaneFromRimMm: 0 },
  sensor: { widthMm: 36, heightMm: 24, pixelPitchUm: 4.35 },
  infinitySpaceMm: 90,
};

it('is plain arithmetic where that is possible', () => {
  const swing = swingOf(evaluate(base), '/objective/fieldNumberMm');
  const diagonal = Math.hypot(36, 24);
  // The relay that covers is the diagonal over the field, at the reference focal length.
  expect(swing?.figure).toBe('shortestCoveringFocalLengthMm');
  expect(swing?.ends.map((e) => e.input)).toEqual([20, 24]);
  expect(swing?.ends[0].figure).toBeCloseTo((diagonal * 200) / 20, 6);
  expect(swing?.ends[1].figure).toBeCloseTo((diagonal * 200) / 24, 6);
  expect([swing?.least, swing?.greatest]).toEqual([swing?.ends[1].figure, swing?.ends[0].figure]);
});

it('has nothing to say of what is sure, or of no input', () => {
  expect(swingOf(evaluate(base), '/objective/na')).toBeUndefined();
  expect(swingOf(evaluate(base), '/nowhere')).toBeUndefined();
});

/** The pairing with a number at a path taken for sure. */
function sure(pairing: Pairing, path: string, value: number): Pairing {
  const copy = structuredClone(pairing) as unknown as Record<string, Record<string, unknown>>;
  const [, part = '', key = '', inner] = path.split('/');
  const exact = { value, plusMinus: 0, origin: 'measured' };
  if (part === 'stops')
    (copy.stops as unknown as Record<string, unknown>[])[Number(key)] = {
      ...((copy.stops as never)[Number(key)] as object),
      [inner as string]: exact,
    };
  else if (key === '') copy[part] = exact as never;
  else (copy[part] as Record<string, unknown>)[key] = exact;
  return copy as unknown as Pairing;
}

it('is what a whole new answer says at either end, whatever is paired', () => {
  const draw = random(4_207);
  let ends = 0;
  const figures = new Set<string>();
  for (let i = 0; i < 24; i++) {
    const pairing = randomPairing(draw);
    let evaluation: ReturnType<typeof evaluate>;
    try {
      evaluation = evaluate(pairing);
    } catch (error) {
      if (error instanceof PairingError) continue;
      throw error;
    }
    for (const { path, plusMinus } of reportOf(evaluation).assumptions) {
      const swing = swingOf(evaluation, path);
      if (!swing || plusMinus === 0) continue;
      const here = numberIn(evaluation.answers[swing.figure]) as number;
      expect(swing.least).toBeLessThanOrEqual(here);
      expect(swing.greatest).toBeGreaterThanOrEqual(here);
      figures.add(swing.figure);
      for (const end of swing.ends) {
        let again: number | undefined;
        try {
          again = numberIn(evaluate(sure(pairing, path, end.input)).answers[swing.figure]);
        } catch (error) {
          if (error instanceof PairingError) continue;
          throw error;
        }
        // A guess elsewhere may itself follow from this number (a rim from an aperture): those change along.
        if (/entrancePupil|fNumber|focalLengthMm|powerDioptre/.test(path)) continue;
        ends++;
        if (end.figure === undefined) expect(again === undefined || again === Number.POSITIVE_INFINITY, path).toBe(true);
        else {
          expect(Math.abs((again as number) - end.figure), `${path} ${swing.figure}`).toBeLessThan(1e-9 * Math.max(1, end.figure));
          expect(end.figure).toBeGreaterThanOrEqual(swing.least - 1e-9);
          expect(end.figure).toBeLessThanOrEqual(swing.greatest + 1e-9 * Math.max(1, end.figure));
        }
      }
    }
  }
  expect(ends).toBeGreaterThan(60);
  expect(figures.size).toBeGreaterThan(2);
});
