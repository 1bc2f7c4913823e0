import { type Problem, shown } from '../../errors.ts';
import type { Pairing } from '../../pairing/schema.ts';
import { amount } from '../../parts/quantity.ts';
import { diagonalOf } from '../../parts/sensor.ts';
import { short } from '../../words.ts';
import { type Sighting, WALL_READINGS } from './sightings.ts';

/** What no single number of a sighting is to blame for, or the pairing speaks against. Paths below `/sightings`. */
export function sightingProblems(pairing: Pairing, sightings: readonly Sighting[]): Problem[] {
  const alone = sightings.some(({ kind }) => kind === 'far' || kind === 'extensions');
  const given = sightings.map((s) => ('gives' in s ? s.gives : undefined));
  return sightings.flatMap((s, i): Problem[] => {
    const path = `/sightings/${i}`;
    if ('gives' in s && s.gives === 'objective' && given.includes('relay') && !alone)
      return [
        problem(
          `${path}/gives`,
          s.gives,
          'is asked for beside the relay: a magnification gives only the ratio of the two',
          "one of the two for all rulers, or a sighting of the relay alone, 'far' or 'extensions'",
        ),
      ];
    switch (s.kind) {
      case 'micrometer':
        return ofMicrometer(pairing, s, path);
      case 'wall':
        return ofWall(pairing, s, path);
      case 'far':
        return amount(s.thingMm) <= s.imageMm.value
          ? [problem(`${path}/thingMm`, s.thingMm, 'is nearer than its image: that is no far thing', `more than ${s.imageMm.value}`)]
          : [];
      case 'extensions':
        return s.secondAcrossMm.value >= s.firstAcrossMm.value
          ? [
              problem(
                `${path}/secondAcrossMm`,
                s.secondAcrossMm.value,
                'is not less than firstAcrossMm: the longer extension shows less of the ruler',
                `less than ${s.firstAcrossMm.value}`,
              ),
            ]
          : [];
      default:
        return [];
    }
  });
}

type Of<K extends Sighting['kind']> = Extract<Sighting, { kind: K }>;

function ofMicrometer({ sensor }: Pairing, s: Of<'micrometer'>, path: string): Problem[] {
  if (s.pixels === undefined) {
    const { divisions } = s;
    if (typeof divisions === 'object' && (divisions.plusMinus ?? 0) > 0) return [];
    return [
      problem(
        `${path}/divisions`,
        divisions,
        'is what is read where no pixels are given, and a reading needs its ±',
        '{"value": …, "plusMinus": more than 0}, or pixels',
      ),
    ];
  }
  const { columns, rows } = sensor;
  // What nobody counted is no number, and nothing is more than that.
  const most = Math.hypot(columns ?? Number.NaN, rows ?? Number.NaN);
  return s.pixels.value > most
    ? [problem(`${path}/pixels/value`, s.pixels.value, "is more than the sensor's diagonal has", `at most ${short(most, 6)}`)]
    : [];
}

function ofWall({ sensor }: Pairing, s: Of<'wall'>, path: string): Problem[] {
  const read = WALL_READINGS.filter((name) => s[name] !== undefined);
  if (read.length !== 1)
    return [
      problem(
        read.length === 0 ? path : `${path}/${read[1]}`,
        read.length === 0 ? s : s[read[1] as 'cornerShare'],
        read.length === 0 ? 'tells nothing of the wall' : `is given beside ${read[0]}: each sighting tells one thing`,
        `one of ${WALL_READINGS.join(', ')}`,
      ),
    ];
  const half = diagonalOf(sensor) / 2;
  const name = read[0] as (typeof WALL_READINGS)[number];
  const r = s[name]?.value as number;
  return name.endsWith('RadiusMm') && r > half
    ? [
        problem(
          `${path}/${name}/value`,
          r,
          "lies outside the picture: the sensor's corner is nearer to its middle",
          `at most ${short(half, 4)}`,
        ),
      ]
    : [];
}

const problem = (path: string, given: unknown, message: string, expected: string): Problem => ({
  path,
  code: 'contradiction',
  message,
  given: shown(given),
  expected,
});
