import type { Pairing } from '../../../../core/index.ts';
import type { Sighting } from '../../../../core/table/saw/sightings.ts';
import type { Random } from '../../../support/random.ts';
import { figureOf, q, readWith, type Simulated, table, trueOf } from './simulated.ts';

/** Every kind of sighting as it would be made of a table whose truth is known. */

const FOCAL = '/relay/focalLengthMm';
const PUPIL = '/objective/exitPupilFromShoulderMm';
const RIM = '/relay/clearApertureMm';

/** The truth of a pairing, with some of its unknowns where they are said to be. */
function truly(given: Pairing, draw: Random, put: { f?: number; e?: number; rim?: number; M?: number }): Pairing {
  const truth = trueOf(given, draw);
  if (put.f !== undefined) truth.relay.focalLengthMm = put.f;
  if (put.rim !== undefined) truth.relay.clearApertureMm = put.rim;
  if (put.e !== undefined) truth.objective.exitPupilFromShoulderMm = put.e;
  if (put.M !== undefined) truth.objective.magnification = put.M;
  return truth;
}

const wide = { f: q(200, 20), e: { ...q(-15, 25), origin: 'assumed' as const }, rim: q(20, 0.2) };
const ruler = (draw: Random, truth: Pairing, share = 0.004): Sighting => {
  const w = figureOf(truth, 'objectFieldWidthMm');
  return { kind: 'ruler', acrossMm: readWith(draw, w, share * w) };
};
const atSpace = (truth: Pairing, infinitySpaceMm: number): Pairing => ({ ...truth, infinitySpaceMm });

export const LENSES: Record<string, (draw: Random) => Simulated> = {
  'a ruler, the marking in doubt': (draw) => {
    const given = table({ ...wide, M: q(10, 0.1) });
    const f = draw.between(185, 215);
    const truth = truly(given, draw, { f });
    return { given, asked: { sightings: [{ ...ruler(draw, truth), gives: 'relay' } as Sighting] }, truth: { [FOCAL]: f } };
  },
  'a ruler off the focus': (draw) => {
    const given: Pairing = { ...table(wide), sensorOffsetMm: q(20, 0.5) };
    const f = draw.between(185, 215);
    const truth = truly(given, draw, { f });
    return { given, asked: { sightings: [ruler(draw, truth)] }, truth: { [FOCAL]: f } };
  },
  'a ruler for the objective': (draw) => {
    const given = table({ ...wide, f: q(200, 1), M: q(10, 0.5) });
    const M = draw.between(9.5, 10.5);
    const truth = truly(given, draw, { M });
    return { given, asked: { sightings: [ruler(draw, truth)] }, truth: { '/objective/magnification': M } };
  },
  'a stage micrometer and two rulers': (draw) => {
    const given = table({ ...wide, M: q(10, 0.05) });
    const f = draw.between(185, 215);
    const truth = truly(given, draw, { f });
    const divisionUm = readWith(draw, 10, 0.02);
    const pixels = (100 * 10) / figureOf(truth, 'pixelAtSubjectUm');
    const micrometer: Sighting = { kind: 'micrometer', divisions: 100, divisionUm, pixels: readWith(draw, pixels, 6) };
    return { given, asked: { sightings: [ruler(draw, truth), micrometer, ruler(draw, truth)] }, truth: { [FOCAL]: f } };
  },
  'a far thing': (draw) => {
    const given = table(wide);
    const f = draw.between(185, 215);
    const thing = draw.between(9_000, 11_000);
    return {
      given,
      asked: { sightings: [{ kind: 'far', imageMm: readWith(draw, 1 / (1 / f - 1 / thing), 2), thingMm: q(10_000, 1000) }] },
      truth: { [FOCAL]: f },
    };
  },
  'two extensions': (draw) => {
    const given = table(wide);
    const f = draw.between(185, 215);
    const W = trueOf(given, draw).sensor.widthMm as number;
    const apart = draw.between(49.7, 50.3);
    const m = 0.2;
    return {
      given,
      asked: {
        sightings: [
          {
            kind: 'extensions',
            firstAcrossMm: readWith(draw, W / m, 0.3),
            secondAcrossMm: readWith(draw, W / (m + apart / f), 0.2),
            apartMm: q(50, 0.3),
          },
        ],
      },
      truth: { [FOCAL]: f },
    };
  },
};

export const WALLS: Record<string, (draw: Random) => Simulated> = {
  "a corner's light": (draw) => {
    const given = table({ ...wide, f: q(200, 1), rim: q(16, 0.2) });
    const e = draw.between(-40, 5);
    const truth = truly(given, draw, { e });
    return {
      given,
      asked: { sightings: [{ kind: 'wall', cornerLossEv: readWith(draw, figureOf(truth, 'cornerLossEv'), 0.08) }] },
      truth: { [PUPIL]: e },
    };
  },
  'the radius at half light': (draw) => {
    const given = table({ ...wide, f: q(200, 1), rim: q(16, 0.2) });
    const e = draw.between(-40, 5);
    const truth = truly(given, draw, { e });
    const r = figureOf(atSpace(truth, 140), 'halfRadiusMm');
    const seen: Sighting = { kind: 'wall', halfRadiusMm: readWith(draw, r, 0.25), infinitySpaceMm: 140 };
    return { given, asked: { sightings: [seen] }, truth: { [PUPIL]: e } };
  },
  'the corner at two spacings, the rim in doubt': (draw) => {
    const { given, truth, e } = doubtfulRim(draw);
    const at = (space: number): Sighting => ({
      kind: 'wall',
      cornerLossEv: readWith(draw, figureOf(atSpace(truth, space), 'cornerLossEv'), 0.04),
      infinitySpaceMm: space,
    });
    return { given, asked: { sightings: [at(60), at(120)] }, truth: { [PUPIL]: e } };
  },
  'the radius at half light at two spacings, and the rim': (draw) => {
    const { given, truth, e, rim } = doubtfulRim(draw);
    const at = (space: number): Sighting => ({
      kind: 'wall',
      halfRadiusMm: readWith(draw, figureOf(atSpace(truth, space), 'halfRadiusMm'), 0.2),
      infinitySpaceMm: space,
    });
    return { given, asked: { sightings: [at(140), at(240)] }, truth: { [PUPIL]: e, [RIM]: rim } };
  },
};

/** A rim that is known to a few mm. */
function doubtfulRim(draw: Random) {
  const given = table({ ...wide, f: q(200, 1), rim: q(16, 2) });
  const e = draw.between(-40, 5);
  const rim = draw.between(14.2, 17.8);
  return { given, truth: truly(given, draw, { e, rim }), e, rim };
}
