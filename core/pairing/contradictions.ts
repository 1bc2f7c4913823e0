import { type Problem, shown } from '../errors.ts';
import { hypot2 } from '../numeric.ts';
import { imageScale } from '../paraxial/conjugates.ts';
import { amount, isMeasured, type QuantityInput } from '../parts/quantity.ts';
import { MM_PER_M, UM_PER_MM } from '../units.ts';
import { DEFAULTS, type Pairing } from './schema.ts';

/** Two statements of one thing may differ by this much before they contradict each other. */
const AGREE = 0.01;

const disagree = (a: number, b: number): boolean => Math.abs(a - b) > AGREE * Math.abs(b);
const spread = (q: QuantityInput | undefined): number => (typeof q === 'object' ? (q.plusMinus ?? 0) : 0);
const rounded = (x: number): string => String(Number(x.toPrecision(4)));

/** What no single field is to blame for: each problem still names the field to change and what would do. */
export function contradictions(pairing: Pairing): Problem[] {
  return [...ofObjective(pairing), ...ofRelay(pairing), ...ofSensor(pairing), ...ofStops(pairing), ...ofFocus(pairing)];
}

const problem = (code: string, path: string, given: unknown, message: string, expected: string): Problem => ({
  path,
  code,
  message,
  given: shown(given),
  expected,
});

function ofObjective({ objective, subject }: Pairing): Problem[] {
  const found: Problem[] = [];
  const most = amount(objective.na) + spread(objective.na);
  const immersion = amount(objective.immersionIndex ?? DEFAULTS.immersionIndex);
  if (most >= immersion)
    found.push(
      problem(
        'contradiction',
        '/objective/na',
        objective.na,
        `reaches the refractive index in front of the objective, ${immersion}: no light leaves at such an angle`,
        `less than ${immersion}, or an immersionIndex (water 1.33, oil 1.52)`,
      ),
    );
  else if (subject?.index !== undefined && most >= subject.index)
    found.push(
      problem('contradiction', '/subject/index', subject.index, `must be more than the numerical aperture ${most}`, `more than ${most}`),
    );
  const { workingDistanceMm: working, parfocalDistanceMm: parfocal } = objective;
  if (working !== undefined && parfocal !== undefined && amount(working) - spread(working) >= amount(parfocal) + spread(parfocal))
    found.push(
      problem(
        'contradiction',
        '/objective/workingDistanceMm',
        working,
        `leaves no barrel: the parfocal distance, subject to shoulder, is ${amount(parfocal)} mm`,
        `less than ${amount(parfocal)}`,
      ),
    );
  return found;
}

function ofRelay({ relay }: Pairing): Problem[] {
  const { focalLengthMm: focal, powerDioptre: power, focalLengthRangeMm: range, fNumber, entrancePupilDiameterMm: pupil } = relay;
  const found: Problem[] = [];
  if (focal === undefined && power === undefined) {
    const more = relay.glass ? '; focal lengths are not worked out from glass yet' : '';
    return [
      problem(
        'missing',
        '/relay/focalLengthMm',
        focal,
        `is missing, and so is powerDioptre${more}`,
        'a focal length in mm, or a power in dioptres',
      ),
    ];
  }
  const settled = isMeasured(focal) || isMeasured(power);
  if (focal !== undefined && power !== undefined && !settled && disagree(amount(focal), MM_PER_M / amount(power))) {
    const would = rounded(MM_PER_M / amount(power));
    found.push(
      problem(
        'contradiction',
        '/relay/focalLengthMm',
        focal,
        `contradicts powerDioptre ${amount(power)}, which is ${would} mm`,
        `${would}, or only one of the two, or one of them measured`,
      ),
    );
  }
  const f = focal === undefined ? MM_PER_M / amount(power as QuantityInput) : amount(focal);
  if (range && range[0] > range[1])
    found.push(problem('contradiction', '/relay/focalLengthRangeMm', range, 'runs backward', 'the shorter focal length first'));
  else if (range && (f < range[0] || f > range[1]))
    found.push(
      problem(
        'contradiction',
        '/relay/focalLengthMm',
        focal,
        `lies outside the zoom's range, ${range[0]} to ${range[1]} mm`,
        `between ${range[0]} and ${range[1]}`,
      ),
    );
  if (
    fNumber !== undefined &&
    pupil !== undefined &&
    !isMeasured(fNumber) &&
    !isMeasured(pupil) &&
    disagree(amount(pupil), f / amount(fNumber))
  ) {
    const would = rounded(f / amount(fNumber));
    found.push(
      problem(
        'contradiction',
        '/relay/entrancePupilDiameterMm',
        pupil,
        `contradicts fNumber ${amount(fNumber)}, which is ${would} mm`,
        `${would}, or only one of the two`,
      ),
    );
  }
  return found;
}

function ofSensor({ sensor, relay, sensorOffsetMm }: Pairing): Problem[] {
  const { columns, rows, pixelPitchUm: pitch, throatDiameterMm: throat, registerMm: register } = sensor;
  const found: Problem[] = [];
  if (throat !== undefined && register === undefined)
    found.push(
      problem('missing', '/sensor/registerMm', register, 'is missing: without it the throat has no place', "the mount's register in mm"),
    );
  const behind = relayFocalLength(relay) + amount(sensorOffsetMm ?? 0);
  if (throat !== undefined && register !== undefined && amount(register) >= behind)
    found.push(
      problem(
        'contradiction',
        '/sensor/registerMm',
        register,
        `puts the throat before the relay, which is ${rounded(behind)} mm from the sensor`,
        `less than ${rounded(behind)}, or no throatDiameterMm`,
      ),
    );
  if (columns === undefined && rows === undefined) {
    if (pitch === undefined)
      found.push(
        problem(
          'missing',
          '/sensor/pixelPitchUm',
          pitch,
          'is missing, and so are columns and rows',
          'the pixel pitch in µm, or columns and rows',
        ),
      );
    return found;
  }
  if (columns === undefined)
    return [...found, problem('missing', '/sensor/columns', columns, 'is missing beside rows', 'the pixels in a row')];
  if (rows === undefined)
    return [...found, problem('missing', '/sensor/rows', rows, 'is missing beside columns', 'the pixels in a column')];
  const across = (UM_PER_MM * amount(sensor.widthMm)) / columns;
  const down = (UM_PER_MM * amount(sensor.heightMm)) / rows;
  if (pitch !== undefined && !isMeasured(pitch) && disagree(across, amount(pitch))) {
    const would = rounded(across);
    found.push(
      problem(
        'contradiction',
        '/sensor/pixelPitchUm',
        pitch,
        `contradicts ${columns} columns on ${amount(sensor.widthMm)} mm, which is ${would} µm`,
        `${would}, or no columns and rows`,
      ),
    );
  } else if (disagree(down, across)) {
    const would = Math.round((UM_PER_MM * amount(sensor.heightMm)) / across);
    found.push(
      problem(
        'contradiction',
        '/sensor/rows',
        rows,
        `makes pixels of ${rounded(across)} by ${rounded(down)} µm, and pixels are square`,
        `about ${would}`,
      ),
    );
  }
  return found;
}

function ofStops({ stops = [], infinitySpaceMm, ...pairing }: Pairing): Problem[] {
  const space = amount(infinitySpaceMm);
  const behind = relayFocalLength(pairing.relay) + amount(pairing.sensorOffsetMm ?? 0);
  return stops.flatMap((stop, i): Problem[] => {
    const { fromShoulderMm: front, fromSensorMm: back } = stop;
    const path = `/stops/${i}`;
    if (front === undefined && back === undefined)
      return [
        problem(
          'missing',
          `${path}/fromShoulderMm`,
          front,
          'is missing, and so is fromSensorMm',
          "the distance from the objective's shoulder, or from the sensor",
        ),
      ];
    if (front !== undefined && back !== undefined)
      return [
        problem(
          'contradiction',
          `${path}/fromSensorMm`,
          back,
          'is given beside fromShoulderMm: a ring stands on one side of the relay',
          'only one of the two',
        ),
      ];
    if (front !== undefined && amount(front) > space)
      return [
        problem(
          'contradiction',
          `${path}/fromShoulderMm`,
          front,
          `lies beyond the relay's rim, which is ${space} mm from the shoulder`,
          `at most ${space}, or a longer infinitySpaceMm`,
        ),
      ];
    if (back !== undefined && amount(back) >= behind)
      return [
        problem(
          'contradiction',
          `${path}/fromSensorMm`,
          back,
          `lies before the relay, which is ${rounded(behind)} mm from the sensor`,
          `less than ${rounded(behind)}, or fromShoulderMm`,
        ),
      ];
    return [];
  });
}

const relayFocalLength = ({ focalLengthMm: f, powerDioptre: P }: Pairing['relay']): number =>
  f !== undefined ? amount(f) : P !== undefined ? MM_PER_M / amount(P) : Number.POSITIVE_INFINITY;

/** The sensor may not come near the image of the exit pupil, where all magnifications end. */
function ofFocus({ sensorOffsetMm, relay, infinitySpaceMm, objective }: Pairing): Problem[] {
  const s = amount(sensorOffsetMm ?? 0);
  const f = relayFocalLength(relay);
  if ((s === 0 && spread(sensorOffsetMm) === 0) || !Number.isFinite(f)) return [];
  const z = amount(infinitySpaceMm) - amount(objective.exitPupilFromShoulderMm ?? 0) + amount(relay.frontPrincipalPlaneFromRimMm ?? 0);
  const play = hypot2(
    spread(infinitySpaceMm),
    objective.exitPupilFromShoulderMm === undefined ? 60 : spread(objective.exitPupilFromShoulderMm),
  );
  const least = Math.min(...[-1, 1].flatMap((a) => [-1, 1].map((b) => imageScale(f, s + a * spread(sensorOffsetMm), z + b * play))));
  if (least > 0.1 * f) return [];
  return [
    problem(
      'contradiction',
      '/sensorOffsetMm',
      sensorOffsetMm,
      'puts the sensor at or beyond the image of the exit pupil: there is no picture there',
      'a smaller distance from the focus',
    ),
  ];
}
