import type { Random } from '../../support/random.ts';
import type { Ring, Train } from './train.ts';

/** A train of 2 to 8 stops, its openings about as wide as the beam, so that most of them cut something. */
export function randomTrain(r: Random, offset = 0, stops = r.integer(2, 8)): Train {
  const pupilRadius = r.between(2, 8);
  const space = r.between(20, 250);
  const focalLength = r.between(80, 450);
  const withLens = stops > 2 && r.chance(0.4);
  const around = (least: number, most: number): number => pupilRadius * r.between(least, most);
  const rings = Array.from({ length: stops - 2 - (withLens ? 1 : 0) }, (): Ring => {
    if (r.chance(0.5)) return { radius: around(0.85, 2.5), from: 'shoulder', at: r.between(0, space) };
    const at = r.between(8, 0.85 * focalLength);
    const share = at / focalLength;
    return { radius: around(0.9, 2.5) * share + r.between(3, 22) * (1 - share), from: 'sensor', at };
  });
  return {
    objectiveFocalLength: r.between(1.3, 5) * pupilRadius,
    pupilRadius,
    exitPupil: r.between(-40, 40),
    space,
    rimRadius: around(0.9, 2.5),
    plane: r.between(-20, 60),
    focalLength,
    offset,
    ...(withLens ? { entrancePupil: { radius: around(0.9, 2.2), depth: r.between(5, 120) } } : {}),
    rings,
  };
}

/**
 * A pupil, a rim far from it and one or two rings between them that are a little narrower than both: the
 * middle discs cut where the outer ones cross, so that three or four of them form the border.
 */
export function snugTrain(r: Random, offset = 0): Train {
  const train = randomTrain(r, offset, 2);
  const distance = train.space - train.exitPupil;
  const between = (share: number): Ring => ({
    radius: train.pupilRadius * r.between(0.8, 1.02),
    from: 'shoulder',
    at: train.exitPupil + share * distance,
  });
  const shares = r.chance(0.5) ? [r.between(0.3, 0.7)] : [r.between(0.25, 0.45), r.between(0.55, 0.75)];
  return { ...train, rimRadius: train.pupilRadius * r.between(0.95, 1.2), rings: shares.map(between) };
}

/** An offset that a helicoid or a wrong tube could make; never 0. */
export const randomOffset = (r: Random): number => (r.chance(0.5) ? r.between(0.5, 12) : -r.between(0.5, 8));
