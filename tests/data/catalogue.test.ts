import { describe, expect, test } from 'vitest';
import { glassworks } from '../../core/glassworks.ts';
import {
  amount,
  type Objective,
  objectiveSchema,
  type Pairing,
  pairingSchema,
  type QuantityInput,
  type Relay,
  relaySchema,
  report,
  type Sensor,
  sensorSchema,
} from '../../core/index.ts';
import objectives from '../../data/objectives.json' with { type: 'json' };
import opening from '../../data/opening.json' with { type: 'json' };
import story from '../../data/opening-story.json' with { type: 'json' };
import relays from '../../data/relays.json' with { type: 'json' };
import sensors from '../../data/sensors.json' with { type: 'json' };
import { firstUnfit } from './finite.ts';

const WORKS = glassworks();

/** The catalogue against the schema of the user's own input, and each entry against what follows from it. */

interface Entry<Part> {
  id: string;
  provenance: string;
  part: Part;
}
const objectiveEntries = objectives.parts as unknown as Entry<Objective>[];
const relayEntries = relays.parts as unknown as Entry<Relay>[];
const sensorEntries = sensors.parts as unknown as Entry<Sensor>[];
const all: Entry<unknown>[] = [...objectiveEntries, ...relayEntries, ...sensorEntries];

const setting = { infinitySpaceMm: 60 };
const [anyRelay, anySensor] = [relayEntries[3] as Entry<Relay>, sensorEntries[3] as Entry<Sensor>];
const anyObjective = objectiveEntries[7] as Entry<Objective>;
const figuresOf = (parts: Partial<Pairing>) =>
  report({ objective: anyObjective.part, relay: anyRelay.part, sensor: anySensor.part, ...setting, ...parts }, WORKS).figures;
const known = (answer: { state: string; value?: number }): number => {
  expect(answer.state).toBe('known');
  return answer.value as number;
};

describe('the files', () => {
  test('hold 19 objectives, 23 relays and 14 sensors, each with an id of its own', () => {
    expect([objectiveEntries.length, relayEntries.length, sensorEntries.length]).toEqual([19, 23, 14]);
    expect(new Set(all.map((e) => e.id)).size).toBe(all.length);
    for (const { id } of all) expect(id).toMatch(/^[a-z0-9]+(-[a-z0-9]+)*$/);
  });

  test('say that they are class-typical, as a whole and entry by entry; those with glass that it is our own', () => {
    for (const { about } of [objectives, relays, sensors]) expect(about).toMatch(/typical of their class.*No maker's data/);
    for (const { provenance, part } of all) expect(provenance).toBe((part as Relay).glass ? 'computed for the class' : 'class-typical');
    expect(relayEntries.filter(({ part }) => part.glass).length).toBe(3);
  });

  test.each(objectiveEntries)('objective $id parses unchanged', ({ part }) => expect(objectiveSchema.parse(part)).toEqual(part));
  test.each(relayEntries)('relay $id parses unchanged', ({ part }) => expect(relaySchema.parse(part)).toEqual(part));
  test.each(sensorEntries)('sensor $id parses unchanged', ({ part }) => expect(sensorSchema.parse(part)).toEqual(part));
});

/** Which numbers an engraving or a data sheet's first line states; the others are typical, with an interval. */
const STATED = new Set([
  'magnification',
  'na',
  'referenceFocalLengthMm',
  'coverGlassMm',
  'powerDioptre',
  'focalLengthMm',
  'fNumber',
  'widthMm',
  'heightMm',
  'pixelPitchUm',
]);

test.each(all)('$id: stated numbers are marked, all others assumed within an honest interval', ({ part }) => {
  let seen = 0;
  for (const [name, q] of Object.entries(part as Record<string, unknown>)) {
    if (typeof q !== 'number' && !(typeof q === 'object' && q !== null && 'value' in q)) continue;
    seen++;
    const origin = typeof q === 'number' ? 'marked' : (q as { origin?: string }).origin;
    expect(origin, name).toBe(STATED.has(name) ? 'marked' : 'assumed');
    if (origin !== 'assumed') continue;
    const { value, plusMinus } = q as { value: number; plusMinus: number };
    expect(plusMinus, name).toBeGreaterThanOrEqual(0.01 * value);
    expect(plusMinus, name).toBeLessThan(value);
  }
  expect(seen).toBeGreaterThanOrEqual(2);
});

/** Major diameters of the mount threads, mm: ISO 8038 for the 0.8 in thread, the others by their name. */
const THREADS: Record<string, number> = { 'RMS (0.8 in x 36 TPI)': 20.32, 'M25 x 0.75': 25, 'M26 x 36 TPI': 26 };

describe('objectives against what follows from them', () => {
  test.each(objectiveEntries)('$id: focal length, pupil, field and barrel belong together', ({ id, part }) => {
    const f = figuresOf({ objective: part });
    const fo = known(f.objectiveFocalLengthMm);
    expect(fo * amount(part.magnification)).toBeCloseTo(amount(part.referenceFocalLengthMm), 9);
    const pupil = known(f.pupilDiameterMm);
    expect(pupil).toBeCloseTo((2 * amount(part.na) * amount(part.referenceFocalLengthMm)) / amount(part.magnification), 9);
    const thread = THREADS[part.mountThread ?? ''] as number;
    expect(pupil, 'the beam leaves through the thread').toBeLessThan(thread - 2);
    const field = amount(part.fieldNumberMm as QuantityInput);
    expect(field / amount(part.magnification), 'the field is no wider than the thread').toBeLessThan(thread);
    if (part.parfocalDistanceMm) expect(amount(part.workingDistanceMm as QuantityInput)).toBeLessThan(amount(part.parfocalDistanceMm) - 10);
    // The id tells magnification, aperture and, among the plan achromats, the tube lens.
    const [, m, na, reference] = id.match(/-([\d-]+)x-(\d-\d+)(?:-(\d{3}))?$/) ?? [];
    expect(Number(m?.replace('-', '.'))).toBe(amount(part.magnification));
    expect(Number(na?.replace('-', '.'))).toBe(amount(part.na));
    if (reference) expect(Number(reference)).toBe(amount(part.referenceFocalLengthMm));
    expect(part.name).toContain(`${amount(part.magnification)}x/`);
  });

  test('exit pupils are left to the class-typical guess', () => {
    for (const { part } of objectiveEntries) expect(part.exitPupilFromShoulderMm).toBeUndefined();
  });
});

describe('relays against what follows from them', () => {
  test.each(relayEntries)('$id: power, focal length and openings belong together', ({ part }) => {
    const f = known(figuresOf({ relay: part }).relayFocalLengthMm);
    if (part.glass) {
      // What is engraved is round, what the glass comes to is not.
      expect(Math.abs((f * amount(part.powerDioptre as QuantityInput)) / 1000 - 1)).toBeLessThan(0.02);
      expect(part.name).toContain(`+${amount(part.powerDioptre as QuantityInput)} D`);
    } else if (part.powerDioptre !== undefined) {
      expect(part.focalLengthMm).toBeUndefined();
      expect(f * amount(part.powerDioptre)).toBeCloseTo(1000, 9);
    } else expect(f).toBe(amount(part.focalLengthMm as QuantityInput));
    const [range, rim, thread] = [part.focalLengthRangeMm, part.clearApertureMm, part.maleThread];
    if (range) expect(f >= range[0] && f <= range[1]).toBe(true);
    if (thread) {
      const reaches = amount(rim as QuantityInput) + (rim as { plusMinus: number }).plusMinus;
      expect(reaches, 'the glass fits into its thread').toBeLessThan(Number.parseFloat(thread));
    }
    if (part.kind === 'camera-lens') {
      const pupil = f / amount(part.fNumber as QuantityInput);
      expect(pupil).toBeGreaterThan(20);
      expect(pupil).toBeLessThan(80);
      // As the only narrow stop before a wide pupil the aperture's share of the beam is f / N over f_o.
      const wide = { ...anyObjective.part, magnification: 2, na: 0.9, referenceFocalLengthMm: 400 };
      const figures = figuresOf({ relay: part, objective: wide, infinitySpaceMm: 20 });
      expect(known(figures.systemNa)).toBeCloseTo(pupil / 2 / 200, 9);
    }
    if (part.kind === 'tube-lens') expect(amount(part.imageCircleMm as QuantityInput)).toBeGreaterThan(22);
  });
});

describe('sensors against what follows from them', () => {
  test.each(sensorEntries)('$id: pitch and size make the pixels that its name tells', ({ id, part }) => {
    const pitch = amount(part.pixelPitchUm as QuantityInput);
    const columns = Math.round((1000 * amount(part.widthMm)) / pitch);
    const rows = Math.round((1000 * amount(part.heightMm)) / pitch);
    expect((columns * pitch) / 1000).toBeCloseTo(amount(part.widthMm), 2);
    // The counted pixels say the same as the pitch: a contradiction would be refused.
    const counted = figuresOf({ sensor: { ...part, columns, rows } });
    expect(known(counted.nyquistLpPerMm)).toBeCloseTo(500 / pitch, 9);
    const told = Number(id.match(/(\d+)mp$/)?.[1]);
    expect(part.name).toContain(`${told} MP`);
    expect(Math.abs((columns * rows) / 1e6 / told - 1)).toBeLessThan(0.05);
  });
});

describe('all of it together', () => {
  test('every objective with every relay, each on one of the sensors, gives a finite report', () => {
    let count = 0;
    for (const [i, objective] of objectiveEntries.entries())
      for (const [j, relay] of relayEntries.entries())
        for (const [k, sensor] of sensorEntries.entries()) {
          // Tracing takes its time: glass meets every seventh objective.
          if ((i + j + k) % 14 !== 0 || (relay.part.glass && i % 7 !== 0)) continue;
          const answer = report(
            { objective: objective.part, relay: relay.part, sensor: sensor.part, infinitySpaceMm: 10 + 13 * (k % 9) },
            WORKS,
          );
          expect(firstUnfit(answer), `${objective.id}, ${relay.id}, ${sensor.id}`).toBeUndefined();
          expect(Object.values(answer.figures).filter((f) => f.state === 'known').length).toBeGreaterThan(25);
          count++;
        }
    expect(count).toBe(19 * 20 + 3 * 3);
  }, 20_000);
});

describe('the opening example', () => {
  const pairing = pairingSchema.parse(opening.pairing);
  test('has a title, a story, and parts written out', () => {
    expect(story.title.length).toBeGreaterThan(5);
    expect(story.story.length).toBeGreaterThan(100);
    expect(pairing).toEqual(opening.pairing);
  });
  test('says what its numbers say: ten times, a picture of 2.35 x 1.56 mm, lit to the corners', () => {
    const { figures } = report(pairing);
    expect(known(figures.systemMagnification)).toBeCloseTo(10, 12);
    expect(known(figures.objectFieldWidthMm)).toBeCloseTo(2.35, 12);
    expect(known(figures.objectFieldHeightMm)).toBeCloseTo(1.56, 12);
    expect(known(figures.cornerIllumination)).toBe(1);
    // The capsule lies along the picture: the camera is turned.
    expect(pairing.subject?.heightMm).toBeLessThan(known(figures.objectFieldWidthMm));
    expect(pairing.subject?.widthMm).toBeLessThan(known(figures.objectFieldHeightMm));
  });
});
