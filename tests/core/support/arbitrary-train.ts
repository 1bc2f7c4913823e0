import fc from 'fast-check';
import type { Train } from './train.ts';

/** Runs of a property; mutation runs set fewer. */
const RUNS = Number(process.env.RUNS ?? 300);

/** Every property test of the core: the same cases each time. */
export const seeded = (seed: number, numRuns = RUNS): fc.Parameters<unknown> => ({ seed, numRuns });

const STEPS = 1_000_000;

/** A number of the order that people set, in steps of a millionth of its range. */
export const between = (min: number, max: number): fc.Arbitrary<number> =>
  fc.integer({ min: 0, max: STEPS }).map((k) => min + ((max - min) * k) / STEPS);

/** Openings as multiples of the pupil, so that trains stay near the border between cutting and not. */
const ring = fc.oneof(
  fc.record({ wide: between(0.85, 2.5), from: fc.constant('shoulder' as const), share: between(0, 1) }),
  fc.record({ wide: between(0.9, 3), from: fc.constant('sensor' as const), share: between(0.03, 0.85) }),
);

const shape = {
  pupilRadius: between(1.5, 8),
  slowness: between(1.3, 6),
  exitPupil: between(-40, 40),
  space: between(20, 250),
  rim: between(0.9, 2.5),
  plane: between(-20, 60),
  focalLength: between(80, 450),
  lens: fc.option(fc.record({ wide: between(0.9, 2.2), depth: between(5, 120) }), { nil: undefined }),
  rings: fc.array(ring, { maxLength: 5 }),
};

function trainOf(offset: fc.Arbitrary<number>): fc.Arbitrary<Train> {
  return fc.record({ ...shape, offset }).map((s): Train => {
    const { pupilRadius, space, focalLength } = s;
    return {
      objectiveFocalLength: s.slowness * pupilRadius,
      pupilRadius,
      exitPupil: s.exitPupil,
      space,
      rimRadius: s.rim * pupilRadius,
      plane: s.plane,
      focalLength,
      offset: s.offset,
      ...(s.lens ? { entrancePupil: { radius: s.lens.wide * pupilRadius, depth: s.lens.depth } } : {}),
      rings: s.rings.map(({ wide, from, share }) =>
        from === 'shoulder'
          ? { radius: wide * pupilRadius, from, at: share * space }
          : { radius: wide * pupilRadius * share + 12 * (1 - share), from, at: share * focalLength },
      ),
    };
  });
}

export const inFocus = trainOf(fc.constant(0));
export const offFocus = trainOf(fc.oneof(between(0.5, 12), between(-8, -0.5)));
export const anyTrain = fc.oneof(inFocus, offFocus);
