import { describe, expect, it } from 'vitest';
import { readObjective, readRelay, readSensor } from '../../core/engravings.ts';
import { amount, type Objective, objectiveSchema, type Relay, relaySchema, type Sensor, sensorSchema } from '../../core/index.ts';
import objectives from '../../data/objectives.json';
import relays from '../../data/relays.json';
import sensors from '../../data/sensors.json';
import { engravedObjective, engravedRelay, engravedSensor } from '../../web/fields/engrave.ts';
import { matches, wordsOf } from '../../web/lines/matching.ts';
import { offerFor, optionsIn } from '../../web/lines/offer.ts';
import { readAs } from '../../web/lines/read-as.ts';
import { understood } from '../../web/lines/understood.ts';

/** The lines without a page: what they show reads back, what is typed over them, what they offer. */

const OBJECTIVES = objectives.parts.map(({ id, part }) => ({ id, part: objectiveSchema.parse(part) }));
const RELAYS = relays.parts.map(({ id, part }) => ({ id, part: relaySchema.parse(part) }));
const SENSORS = sensors.parts.map(({ id, part }) => ({ id, part: sensorSchema.parse(part) }));

describe('what a line shows', () => {
  const settled = { unread: [], needs: [], asks: [] };

  it('reads back as the part, whatever a part is engraved with', () => {
    const written: Objective[] = [
      { magnification: 10, na: 0.25, referenceFocalLengthMm: 165, coverGlassMm: 0.17, fieldNumberMm: 22, workingDistanceMm: 10.5 },
      { magnification: 100, na: 1.25, referenceFocalLengthMm: 160, immersionIndex: 1.518 },
      { magnification: 63, na: 1.3, referenceFocalLengthMm: 164.5, immersionIndex: 1.47, coverGlassMm: 0 },
    ];
    for (const part of written) expect(readObjective(engravedObjective(part))).toEqual({ part, ...settled });
    const made: Relay[] = [
      { kind: 'supplementary', powerDioptre: 5, maleThread: '58 x 0.75', clearApertureMm: 54 },
      { kind: 'supplementary', powerDioptre: 5, clearApertureMm: 58 },
      { kind: 'supplementary', powerDioptre: 40, maleThread: '20 x 0.75' },
      { kind: 'supplementary', focalLengthMm: 250, clearApertureMm: 46 },
      { kind: 'supplementary', focalLengthMm: 58 },
      { kind: 'supplementary', focalLengthMm: 12.5, maleThread: '42 x 1' },
      { kind: 'camera-lens', focalLengthMm: 200, fNumber: 4 },
      { kind: 'camera-lens', focalLengthMm: 58, clearApertureMm: 52, femaleThread: '77 x 0.75' },
      { kind: 'camera-lens', focalLengthMm: 135, focalLengthRangeMm: [70, 200], fNumber: 4, clearApertureMm: 77 },
      { kind: 'camera-lens', focalLengthMm: 20, fNumber: 1.8 },
      { kind: 'tube-lens', focalLengthMm: 180, clearApertureMm: 52 },
      { kind: 'tube-lens', powerDioptre: 5, fNumber: 8 },
    ];
    for (const part of made) expect(readRelay(engravedRelay(part)), engravedRelay(part)).toEqual({ part, ...settled });
    const cameras: Sensor[] = [
      { widthMm: 36, heightMm: 24, pixelPitchUm: 4 },
      { widthMm: 23.5, heightMm: 15.6, columns: 6000, rows: 4000 },
    ];
    for (const part of cameras) expect(readSensor(engravedSensor(part))).toEqual({ part, ...settled });
  });

  it.each([
    ['objective', OBJECTIVES, engravedObjective],
    ['relay', RELAYS, engravedRelay],
    ['sensor', SENSORS, engravedSensor],
  ] as const)('of every %s in the catalogue asks nothing, and means the same part', (name, entries, engraved) => {
    for (const { part } of entries) {
      const line = (engraved as (part: object) => string)(part);
      const { reading, part: meant, complaint } = understood(name, line, { part, line });
      expect([reading.unread, reading.needs, reading.asks, complaint], line).toEqual([[], [], [], '']);
      expect(meant).toEqual(part);
    }
  });
});

describe('what is typed over a line', () => {
  const part = {
    name: 'Mine',
    magnification: 10,
    na: 0.25,
    referenceFocalLengthMm: 200,
    exitPupilFromShoulderMm: -20,
    workingDistanceMm: { value: 10, plusMinus: 2 },
  };
  const ground = { part, line: engravedObjective(part) };
  const meant = (text: string) => understood('objective', text, ground).part;

  it('keeps what cannot be engraved as long as the part stays the same part', () => {
    expect(meant('10x/0.25 200 WD 12')).toEqual({ ...part, workingDistanceMm: 12 });
    expect(meant(ground.line)).toEqual(part);
    const { workingDistanceMm: _, ...without } = part;
    expect(meant('10x/0.25 f 200')).toEqual(without);
    expect(meant('10x/0.3 200 WD 12')).toEqual({ magnification: 10, na: 0.3, referenceFocalLengthMm: 200, workingDistanceMm: 12 });
    expect(meant('10x/0.25 180')).not.toHaveProperty('exitPupilFromShoulderMm');
  });

  it('is no part while anything is open, and says so', () => {
    expect(understood('objective', '10x/0.25 frog', ground)).toMatchObject({
      part: undefined,
      complaint:
        'Could not read ‘frog’. Still needed: the tube lens that the engraving is for: 200, 180, 165 or 164.5. The list has the choices.',
    });
    expect(understood('relay', '58', { part: {}, line: '' })).toMatchObject({
      part: undefined,
      complaint: 'Still needed: what ‘58’ is. The list has the choices.',
    });
    expect(understood('relay', '5 D frog', { part: {}, line: '' })).toMatchObject({
      part: { powerDioptre: 5 },
      complaint: 'Could not read ‘frog’.',
    });
  });
});

describe('what is offered', () => {
  const relaysFor = (typed: string | undefined, present: object = {}) =>
    offerFor({ typed, reading: typed ? readRelay(typed) : undefined, parts: RELAYS, present, engraved: engravedRelay });
  const ids = (typed: string | undefined) => optionsIn(relaysFor(typed)).flatMap(({ id, part }) => (part ? [id] : []));

  it('matches by how words begin, whatever way numbers are written', () => {
    const words = wordsOf('Plan achromat 10x/0.25, 200 mm reference 10x/0.25 ∞/0.17 f 200');
    for (const text of ['10x', '10×/.25', '0,25 plan', '∞/0.17', 'ACHRO 200mm', '10x/0.2', ''])
      expect(matches(wordsOf(text), words), text).toBe(true);
    for (const text of ['20x', '25', 'omat', '10x/0.28', '00 mm']) expect(matches(wordsOf(text), words), text).toBe(false);
  });

  it('is the whole catalogue by kind where nothing was typed, the present part told apart', () => {
    const { groups, read } = relaysFor(undefined, { ...RELAYS[3]?.part });
    expect(read).toBe('');
    expect(groups.map(({ label, options }) => [label, options.length])).toEqual([
      ['Close-up lenses', 11],
      ['Camera lenses', 9],
      ['Tube lenses', 3],
    ]);
    expect(groups.flatMap(({ options }) => options.filter(({ present }) => present).map(({ id }) => id))).toEqual(['close-up-5d-58']);
    const flat = offerFor({ typed: undefined, reading: undefined, parts: SENSORS, present: {}, engraved: engravedSensor });
    expect(flat.groups.map(({ label, options }) => [label, options.length])).toEqual([['From the catalogue', 14]]);
  });

  it('is first what is one’s own, whatever its kind, and says what is only thought of', () => {
    const { part } = RELAYS.find(({ id }) => id === 'tele-200-f4') ?? { part: {} };
    const mine = { id: 'mine', part: { ...part, name: 'Mine' }, own: { owned: true, version: 1 } };
    const wanted = { id: 'wanted', part: { kind: 'tube-lens', focalLengthMm: 200, name: 'Wanted' }, own: { owned: false, version: 4 } };
    const parts = [mine, wanted, ...RELAYS];
    const offered = (typed: string | undefined) =>
      offerFor({ typed, reading: undefined, parts, present: {}, engraved: engravedRelay }).groups;
    expect(offered(undefined).map(({ label }) => label)).toEqual(['Yours', 'Close-up lenses', 'Camera lenses', 'Tube lenses']);
    expect(offered(undefined)[0]?.options.map(({ words, small }) => [words, small])).toEqual([
      ['Mine', engravedRelay(mine.part as Relay)],
      ['Wanted', 'tube lens 200 mm, thought of'],
    ]);
    expect(offered('yours').map(({ label, options }) => [label, options.length])).toEqual([['Yours', 2]]);
    expect(offered('tube').map(({ label }) => label)).toEqual(['Yours', 'Tube lenses']);
  });

  it('is what the typed pieces name', () => {
    expect(ids('5D')).toEqual(['close-up-5d-58', 'close-up-5d-58-glass']);
    expect(ids('+8 43')).toEqual(['close-up-8d-43', 'close-up-8d-43-glass']);
    expect(ids('200 f/4')).toEqual(['tele-200-f4', 'zoom-70-200-f4']);
    expect(ids('tube')).toEqual(['tube-lens-165', 'tube-lens-180', 'tube-lens-200']);
    expect(ids('zoom')).toEqual(['zoom-70-200-f4']);
    expect(ids('frog')).toEqual([]);
  });

  it('asks first, and says how the text is read', () => {
    const { groups, read } = relaysFor('58');
    expect(read).toBe('');
    expect(groups[0]).toMatchObject({ label: 'Tell what ‘58’ is', asks: true });
    expect(groups[0]?.options.map(({ words }) => words)).toContain('58 mm: the thread of a close-up lens');
    expect(groups[1]?.options.length).toBeGreaterThan(0);
    expect(relaysFor('5 D 58').read).toBe('close-up lens, 5 dioptres, thread 58 x 0.75');
    expect(readAs(readRelay('70-200 at 135 f/4 clear 52').part)).toBe(
      'camera lens, focal length 135 mm, f/4, 52 mm clear, zoom 70 to 200 mm',
    );
    expect(readAs(readObjective('Plan Apo 20x/0.42 ∞/0 200').part)).toBe(
      '20×, aperture 0.42, for a tube lens of 200 mm, no cover glass, apochromat, flat field',
    );
    const pitch = readSensor('full frame 24 MP').part;
    expect(readAs(pitch)).toBe(`36 mm wide, 24 mm high, pixels of ${amount(pitch.pixelPitchUm ?? 0)} µm`);
  });

  it('takes a thousand parts in its stride', () => {
    const many = Array.from({ length: 50 }, (_, i) => RELAYS.map(({ id, part }) => ({ id: `${id}-${i}`, part }))).flat();
    const start = performance.now();
    expect(optionsIn(offerFor({ typed: '5 D', reading: readRelay('5 D'), parts: many, present: {}, engraved: engravedRelay })).length).toBe(
      100,
    );
    // One keystroke over the catalogue's sixty is to stay far below a frame.
    expect(performance.now() - start).toBeLessThan(200);
  });
});
