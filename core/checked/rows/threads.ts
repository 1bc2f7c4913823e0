import { LINES } from '../../glass/lines.ts';
import { glassworks } from '../../glassworks.ts';
import { cameraEnd } from '../../table/build/ends.ts';
import { minorDiameter, type Thread } from '../../table/threads/thread.ts';
import { readThread } from '../../table.ts';
import type { Check, OnTable, Value } from '../check.ts';
import { CATALOGUED } from '../lenses/doublets.ts';
import { ROUNDED_RADII } from '../lenses/printed-lens.ts';
import { printed } from '../printed.ts';
import { onTable, toldOn } from '../rig.ts';

const named = (text: string): Thread => (readThread(text) as { readonly thread: Thread }).thread;

const measures = (text: string, diameter: string, pitch: string): readonly Value[] => [
  { what: `${text}: major diameter`, printed: diameter, of: () => named(text).diameterMm },
  { what: `${text}: pitch`, printed: pitch, of: () => named(text).pitchMm },
];

/** Minor diameters of inside threads of fine pitch, as the table of basic dimensions prints them. */
const MINOR = [
  ['M25 x 1', '23.917'],
  ['M30 x 0.75', '29.188'],
  ['M42 x 1', '40.917'],
  ['M33 x 1.5', '31.376'],
  ['M48 x 2', '45.835'],
  ['M52 x 1.5', '50.376'],
] as const;

const C_REGISTER = cameraEnd({ camera: { thread: 'C' } }).fromSensorMm as number;

/** Nothing of a relay but its glass. */
const NO_RELAY = { focalLengthMm: undefined, frontPrincipalPlaneFromRimMm: undefined, clearApertureMm: undefined };

/** A catalogued doublet whose last surface is its seat, on a camera with the C register. */
const behind = (radiiMm: readonly number[], thicknessesMm: readonly number[], glasses: readonly string[]): OnTable =>
  onTable({
    relay: { ...NO_RELAY, glass: { radiiMm: [...radiiMm], thicknessesMm: [...thicknessesMm], glasses: [...glasses] } },
    sensor: { registerMm: C_REGISTER },
    wavelengthNm: LINES.d,
    table: { seatBehindGlassMm: 0 },
  });

const tubeOf = (rig: OnTable): number => toldOn(rig, 'tubeLengthMm', glassworks());

/** Its values wait: tracing takes its time. */
const rounded = ([id, nominal, radii, thicknesses, glasses, , back]: (typeof CATALOGUED)[number]): Check => {
  const exact = radii.map((text) => printed(text).value);
  const rig = (radiiMm: readonly number[]): OnTable => behind(radiiMm, thicknesses, glasses);
  const focus = (radiiMm: readonly number[]): number => tubeOf(rig(radiiMm)) + C_REGISTER;
  const slack = (): number =>
    radii.reduce((sum, text, k) => sum + Math.abs(focus(exact.with(k, (exact[k] as number) + printed(text).unit / 2)) - focus(exact)), 0);
  return {
    id: `TUBE-${id.slice(4)}`,
    claim: `behind a cemented doublet of ${nominal} mm the tube and a register of 17.526 mm make its back focal length, ${back}`,
    source: 'doublet-catalogue',
    known: 'read',
    how: 'the tube behind the traced glass, its seat at the last surface, and the register',
    values: [
      { printed: back, of: () => focus(exact), slack: { of: slack, why: ROUNDED_RADII }, figure: 'tubeLengthMm', rig: () => rig(exact) },
    ],
  };
};

export const THREADS: readonly Check[] = [
  {
    id: 'STD-003',
    claim: 'RMS: major diameter 20.32 mm (0.8 in), pitch 0.7056 mm (36 to the inch)',
    source: 'objective-threads',
    known: 'from memory',
    how: 'what is read from the thread’s name, in three ways of writing it',
    values: [
      ...measures('RMS', '20.32', '0.7056'),
      ...measures('W 0.8" x 1/36"', '20.32', '0.7056'),
      ...measures('20.32 x 0.706', '20.32', '0.7056'),
    ],
  },
  {
    id: 'THR-001',
    claim: 'C-mount: 1-32 UN 2A, 25.4 mm x 0.794 mm; flange 17.526 mm (0.690 in) before the sensor',
    source: 'american-threads',
    known: 'from memory',
    how: 'what is read from the thread’s name; the seat of a camera that ends in it',
    values: [...measures('1-32 UN 2A', '25.4', '0.794'), { what: 'flange', printed: '17.526', of: () => C_REGISTER }],
  },
  {
    id: 'THR-002',
    claim: 'minor diameters of inside metric threads, D1 = D - 1.0825 P',
    source: 'metric-threads',
    known: 'from memory',
    how: 'the minor diameter of the thread by its name',
    values: MINOR.map(([text, minor]) => ({ what: text, printed: minor, of: () => minorDiameter(named(text)) })),
  },
  {
    id: 'THR-003',
    claim: "Whitworth's thread is 0.640327 of its pitch deep: RMS leaves 19.416 mm by its basic profile",
    source: 'whitworth-threads',
    known: 'from memory',
    how: 'the minor diameter of 0.8 in, 36 to the inch: 0.8 - 1.280654 / 36 in',
    values: [{ printed: '19.416', of: () => minorDiameter(named('RMS')) }],
  },
  ...CATALOGUED.map(rounded),
];
