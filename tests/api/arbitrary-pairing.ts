import fc from 'fast-check';
import { BOUNDS, contradictions, DEPTH_CONVENTIONS, type Pairing, pairingSchema } from '../../core/index.ts';

/** Pairings that the contract allows: anything inside the bounds, ends included, that does not contradict itself. */

type Name = keyof typeof BOUNDS;
type Range = readonly [low: number, high: number];

const number = ([low, high]: Range) =>
  fc.oneof(
    { weight: 8, arbitrary: fc.double({ min: low, max: high, noNaN: true }) },
    { weight: 1, arbitrary: fc.constantFrom(low, high) },
    {
      weight: 2,
      arbitrary: fc.double({ min: low, max: high, noNaN: true }).map((x) => Math.min(high, Math.max(low, Number(x.toPrecision(2))))),
    },
  );

/** A quantity in any of its spellings, its interval inside the bounds. */
export const quantity = (name: Name, range: Range) =>
  number(range).chain((value) => {
    const [low, high] = BOUNDS[name];
    const most = Math.min(value - low, high - value, 0.3 * Math.abs(value) + 1);
    return fc.oneof(
      fc.constant(value),
      fc.record(
        {
          value: fc.constant(value),
          plusMinus: fc.double({ min: 0, max: Math.max(0, most), noNaN: true }),
          origin: fc.constantFrom('assumed', 'marked', 'measured'),
          marked: number(range),
        },
        { requiredKeys: ['value'] },
      ),
    );
  });

/** What such parts are on a bench; `undefined` leaves the bounds themselves. */
type Bench = Partial<Record<Name, Range>>;
export const BENCH: Bench = {
  magnification: [1, 60],
  na: [0.02, 0.9],
  referenceFocalLengthMm: [100, 250],
  fieldNumberMm: [10, 30],
  testedFieldMm: [10, 40],
  workingDistanceMm: [0.1, 40],
  parfocalDistanceMm: [30, 100],
  exitPupilFromShoulderMm: [-60, 20],
  focalLengthMm: [50, 500],
  powerDioptre: [1, 20],
  clearApertureMm: [10, 80],
  entrancePupilDiameterMm: [5, 80],
  fNumber: [1.4, 22],
  entrancePupilDepthMm: [0, 150],
  imageCircleMm: [10, 60],
  frontPrincipalPlaneFromRimMm: [-50, 50],
  widthMm: [5, 60],
  heightMm: [4, 50],
  pixelPitchUm: [1, 12],
  registerMm: [10, 50],
  throatDiameterMm: [20, 70],
  infinitySpaceMm: [0, 250],
  diameterMm: [3, 60],
  fromShoulderMm: [0, 100],
  fromSensorMm: [0, 100],
  sensorOffsetMm: [-5, 5],
};

export const optional = <T>(arbitrary: fc.Arbitrary<T>) => fc.option(arbitrary, { nil: undefined });

function pairings(bench: Bench): fc.Arbitrary<unknown> {
  const q = (name: Name) => quantity(name, bench[name] ?? BOUNDS[name]);
  const plain = (name: Name) => number(bench[name] ?? BOUNDS[name]);
  const objective = fc.record({
    magnification: q('magnification'),
    na: q('na'),
    referenceFocalLengthMm: q('referenceFocalLengthMm'),
    fieldNumberMm: optional(q('fieldNumberMm')),
    testedFieldMm: optional(q('testedFieldMm')),
    workingDistanceMm: optional(q('workingDistanceMm')),
    parfocalDistanceMm: optional(q('parfocalDistanceMm')),
    coverGlassMm: optional(fc.constantFrom(0, 0.17)),
    immersionIndex: optional(fc.constantFrom(1, 1.33, 1.518)),
    exitPupilFromShoulderMm: optional(q('exitPupilFromShoulderMm')),
  });
  const strength = fc.oneof(fc.record({ focalLengthMm: q('focalLengthMm') }), fc.record({ powerDioptre: q('powerDioptre') }));
  const opening = fc.oneof(
    fc.record({ fNumber: q('fNumber') }),
    fc.record({ entrancePupilDiameterMm: q('entrancePupilDiameterMm') }),
    fc.constant({}),
  );
  const relay = fc
    .tuple(
      fc.record({
        kind: fc.constantFrom('supplementary', 'camera-lens', 'tube-lens'),
        maleThread: optional(fc.constantFrom('58 x 0.75', 'M42 x 1', 'no thread at all')),
        clearApertureMm: optional(q('clearApertureMm')),
        entrancePupilDepthMm: optional(q('entrancePupilDepthMm')),
        imageCircleMm: optional(q('imageCircleMm')),
        frontPrincipalPlaneFromRimMm: optional(q('frontPrincipalPlaneFromRimMm')),
      }),
      strength,
      opening,
    )
    .map((parts) => Object.assign({}, ...parts) as object);
  const sensor = fc
    .record({
      widthMm: q('widthMm'),
      heightMm: q('heightMm'),
      pixelPitchUm: q('pixelPitchUm'),
      colourFilter: optional(fc.boolean()),
      mount: optional(fc.record({ registerMm: q('registerMm'), throatDiameterMm: q('throatDiameterMm') })),
    })
    .map(({ mount, ...rest }) => ({ ...rest, ...mount }));
  const stop = fc.oneof(
    fc.record({ diameterMm: q('diameterMm'), fromShoulderMm: q('fromShoulderMm') }),
    fc.record({ label: fc.constant('a tube'), diameterMm: q('diameterMm'), fromSensorMm: q('fromSensorMm') }),
  );
  const subject = fc.record(
    { widthMm: plain('subjectWidthMm'), heightMm: plain('subjectHeightMm'), depthMm: plain('subjectDepthMm'), index: plain('index') },
    { requiredKeys: [] },
  );
  return fc
    .record({
      objective,
      relay,
      sensor,
      infinitySpaceMm: q('infinitySpaceMm'),
      stops: optional(fc.array(stop, { maxLength: 3 })),
      subject: optional(subject),
      wavelengthNm: optional(plain('wavelengthNm')),
      sensorOffsetMm: optional(q('sensorOffsetMm')),
      litThreshold: optional(plain('litThreshold')),
      depth: optional(fc.record({ convention: fc.constantFrom(...DEPTH_CONVENTIONS), blurUm: plain('blurUm') }, { requiredKeys: [] })),
      radiiMm: optional(fc.array(plain('radiusMm'), { minLength: 1, maxLength: 9 })),
    })
    .map((pairing) => JSON.parse(JSON.stringify(pairing)));
}

/** Shape and bounds hold, and nothing contradicts anything. */
const valid = (given: unknown): given is Pairing => {
  const read = pairingSchema.safeParse(given);
  return read.success && contradictions(read.data).length === 0;
};

/** On a bench, and anywhere inside the contract's bounds. */
export const benchPairing = pairings(BENCH).filter(valid) as fc.Arbitrary<Pairing>;
export const boundsPairing = pairings({}).filter(valid) as fc.Arbitrary<Pairing>;
