import fc from 'fast-check';
import { judge } from '../../api/drawer/judge.ts';
import { BOUNDS, type OwnPart } from '../../core/index.ts';
import { BENCH, optional, quantity } from './arbitrary-pairing.ts';

/** Own parts of all three kinds with anything that the contract lets stand in them, and text that is hard on tables. */

const q = (name: keyof typeof BOUNDS) => optional(quantity(name, BENCH[name] ?? BOUNDS[name]));
const needed = (name: keyof typeof BOUNDS) => quantity(name, BENCH[name] ?? BOUNDS[name]);
const flag = optional(fc.boolean());

/** Signs that tables and spreadsheets read as more than text. */
const SIGN = fc.constantFrom(
  ...'\'"=+-@,;|\t\r\n ＝\\{}[]:',
  "''",
  '\r\n',
  '=1+1',
  "'=",
  ',=',
  ';-1',
  '#',
  '\uFEFF',
  '\0',
  'NULL',
  '1e5',
  '007',
  'ü',
  '𝔸',
);
const letters = fc.string({ unit: 'binary', maxLength: 12 }).filter((text) => !/\p{Surrogate}/u.test(text));
const text = (most: number, least = 1) =>
  fc
    .array(fc.oneof({ weight: 3, arbitrary: SIGN }, { weight: 1, arbitrary: letters }), { maxLength: 14 })
    .map((pieces) => [...pieces.join('')].slice(0, most / 2).join(''))
    .filter((joined) => joined.length >= least);

const objective = fc.record({
  name: text(120),
  magnification: needed('magnification'),
  na: needed('na'),
  referenceFocalLengthMm: needed('referenceFocalLengthMm'),
  fieldNumberMm: q('fieldNumberMm'),
  testedFieldMm: q('testedFieldMm'),
  workingDistanceMm: q('workingDistanceMm'),
  parfocalDistanceMm: q('parfocalDistanceMm'),
  noseDiameterMm: q('noseDiameterMm'),
  mountThread: optional(text(120)),
  coverGlassMm: q('coverGlassMm'),
  immersionIndex: q('immersionIndex'),
  correction: optional(fc.constantFrom('achromat', 'semi-apochromat', 'apochromat')),
  flatField: flag,
  tubeLensCorrectsColour: flag,
  exitPupilFromShoulderMm: q('exitPupilFromShoulderMm'),
});

const listing = fc.record({
  radiiMm: fc.constantFrom([120.5, -60.25, -200], [92.1, 'plane', -140]),
  thicknessesMm: fc.constant([8, 2.5]),
  glasses: fc.constantFrom([1.5168, 1.6727], [1.49, 1.62]),
  semiAperturesMm: optional(fc.constant([22, 22, 22.5])),
});
const glass = fc.oneof(
  listing,
  fc.record({ class: fc.constantFrom('cemented-achromat', 'singlet'), leading: optional(fc.constantFrom('crown', 'flint')) }),
);
const relay = fc
  .tuple(
    fc.record({
      name: text(120),
      kind: fc.constantFrom('supplementary', 'camera-lens', 'tube-lens'),
      focalLengthRangeMm: optional(fc.tuple(fc.integer({ min: 5, max: 49 }), fc.double({ min: 500, max: 5000, noNaN: true }))),
      maleThread: optional(text(120)),
      femaleThread: optional(text(120)),
      clearApertureMm: q('clearApertureMm'),
      entrancePupilDepthMm: q('entrancePupilDepthMm'),
      imageCircleMm: q('imageCircleMm'),
      frontPrincipalPlaneFromRimMm: q('frontPrincipalPlaneFromRimMm'),
      backFocalLengthMm: q('backFocalLengthMm'),
      glass: fc.option(glass, { nil: undefined, freq: 8 }),
      reversed: flag,
    }),
    fc.oneof(fc.record({ focalLengthMm: needed('focalLengthMm') }), fc.record({ powerDioptre: needed('powerDioptre') })),
    fc.oneof(
      fc.record({ fNumber: needed('fNumber') }),
      fc.record({ entrancePupilDiameterMm: needed('entrancePupilDiameterMm') }),
      fc.constant({}),
    ),
  )
  .map((pieces) => Object.assign({}, ...pieces) as object);

const sensor = fc
  .tuple(
    fc.record({ name: text(120), heightMm: needed('heightMm'), colourFilter: flag, registerMm: q('registerMm') }),
    fc.oneof(
      fc.record({ widthMm: needed('widthMm'), pixelPitchUm: needed('pixelPitchUm') }),
      fc.integer({ min: 10, max: 9000 }).map((n) => ({ widthMm: 36, heightMm: 24, columns: 3 * n, rows: 2 * n })),
    ),
  )
  .map((pieces) => Object.assign({}, ...pieces) as object);

const kinds = [
  ['objective', objective],
  ['relay', relay],
  ['sensor', sensor],
] as const;

/** As it comes out of the drawer's own judgement: what would be refused is left out. */
export const ownPart: fc.Arbitrary<OwnPart> = fc
  .oneof(
    ...kinds.map(([kind, part]) =>
      fc.record({
        kind: fc.constant(kind),
        owned: fc.boolean(),
        price: optional(fc.oneof(fc.integer({ min: 0, max: 5000 }), fc.double({ min: 0, max: 1e7, noNaN: true }))),
        notes: optional(text(2000, 0)),
        part,
      }),
    ),
  )
  .map((own) => judge(JSON.parse(JSON.stringify(own))).part)
  .filter((own) => own !== undefined);
