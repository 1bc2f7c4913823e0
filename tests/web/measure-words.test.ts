import { expect, it } from 'vitest';
import { evaluate, minutesFor, type Pairing, PairingError, reportOf, type Swing, swingOf } from '../../core/index.ts';
import { inputsOf } from '../../core/pairing/inputs.ts';
import { fieldAt } from '../../web/fields/names.ts';
import { howTo } from '../../web/measure/how.ts';
import { swingInWords as inWords } from '../../web/measure/words.ts';
import { fullPairing } from '../core/support/full-pairing.ts';
import { random } from '../support/random.ts';

/** What to measure first, in words; numbers are kept with their units by spaces that do not break. */
const swingInWords = (...given: Parameters<typeof inWords>): string => inWords(...given).replaceAll('\u00a0', ' ');

/** The same pairing with every quantity taken as a guess. */
const guessed = (value: unknown, key = ''): unknown => {
  if (Array.isArray(value)) return value.map((item) => guessed(item, key));
  if (typeof value === 'number')
    return /^(columns|rows|index|litThreshold|wavelengthNm|blurUm)$/.test(key)
      ? value
      : { value, plusMinus: 0.02 * Math.abs(value), origin: 'assumed' };
  if (typeof value !== 'object' || value === null) return value;
  if ('value' in value) return { ...value, origin: 'assumed' };
  return Object.fromEntries(Object.entries(value).map(([name, inner]) => [name, guessed(inner, name)]));
};

it('has words for everything that can be a guess, and a way to its input', () => {
  const draw = random(31_007);
  const found = new Set<string>();
  for (let i = 0; i < 60; i++) {
    const pairing = guessed(fullPairing(draw)) as Pairing;
    const { fieldNumberMm: _, exitPupilFromShoulderMm: __, ...objective } = pairing.objective;
    const { frontPrincipalPlaneFromRimMm: ___, clearApertureMm: ____, ...relay } = pairing.relay;
    for (const p of [pairing, { ...pairing, objective, relay: { ...relay, maleThread: '58 x 0.75' } }])
      for (const input of inputsOf(p as Pairing).list) if (input.guess !== undefined) found.add(input.path);
  }
  const names = new Set([...found].map((path) => path.slice(path.lastIndexOf('/') + 1)));
  expect([...names].sort()).toEqual(
    [
      'clearApertureMm coverGlassMm diameterMm entrancePupilDepthMm entrancePupilDiameterMm exitPupilFromShoulderMm fNumber fieldNumberMm focalLengthMm',
      'fromSensorMm fromShoulderMm frontPrincipalPlaneFromRimMm heightMm imageCircleMm infinitySpaceMm magnification na noseDiameterMm',
      'parfocalDistanceMm pixelPitchUm rimToSensorMm workingDistanceMm',
      'powerDioptre referenceFocalLengthMm registerMm sensorOffsetMm testedFieldMm throatDiameterMm widthMm',
    ]
      .join(' ')
      .split(' ')
      .sort(),
  );
  for (const path of found) {
    const told = howTo(path);
    expect(told?.how, path).toMatch(/^[A-Z].{20,}\.$/);
    expect(told?.takes, path).toMatch(/^[a-z].{5,}[^.]$/);
    expect(minutesFor(path)).toMatch(/^(two|five|ten) minutes$/);
    expect(fieldAt(path)?.label, path).toBeTruthy();
  }
});

it('tells of measuring only what the model means, and how far off a shorter way is', () => {
  const how = (name: string): string => howTo(`/relay/${name}`)?.how ?? '';
  const numberBefore = (text: string, word: string): number => Number(text.match(new RegExp(`([\\d.]+) ${word}`))?.[1]);

  // A disc behind the rim, read on the rim: smaller in the ratio of the distances from the eye.
  const pupil = how('entrancePupilDiameterMm');
  const [eye, deep] = [Number(pupil.match(/at (\d+) mm/)?.[1]), numberBefore(pupil, 'mm deep')];
  const read = eye / (eye + deep);
  expect(numberBefore(pupil, '%')).toBe(Math.round(100 * (1 - read)));
  expect((read * (eye + deep)) / eye).toBeCloseTo(1, 12);
  expect(pupil).toContain('multiply by (distance + depth) / distance');
  expect(pupil).toContain('from 5 m or more');
  expect(pupil).not.toContain("arm's length");

  // Lens of P dioptres, thing at u mm, picture at v mm: 1000/v = P - 1000/u.
  const power = how('powerDioptre');
  const u = 1000 * numberBefore(power, 'm that');
  const picture = 1000 / (1 - 1000 / u);
  expect(numberBefore(power, 'dioptres')).toBeCloseTo(1 - 1000 / picture, 2);
  expect(numberBefore(power, '%')).toBe(Math.round(100 * (1 - 1000 / picture)));
  expect(1000 / picture + 1000 / u).toBeCloseTo(1, 12);
  expect(power).toContain('nearer add 1000 over its distance in mm');
  expect(power).toContain('at least 100 m away');

  const field = how('fieldNumberMm');
  expect(field).toMatch(/diameter on the sensor.*times the tube-lens focal length that the engraving is for, over the relay's/);
  expect(field).not.toMatch(/how far from the middle/);

  expect(how('clearApertureMm')).toMatch(
    /toward the objective: of a camera lens that alone counts.*close-up lens or a tube lens.*narrower/,
  );
});

it('warns wherever one looks through a lens or lets a far light in', () => {
  for (const path of [
    '/objective/exitPupilFromShoulderMm',
    '/objective/na',
    '/relay/powerDioptre',
    '/relay/frontPrincipalPlaneFromRimMm',
    '/sensorOffsetMm',
  ])
    expect(howTo(path)?.how, path).toMatch(/Never the sun/);
});

const swing = (
  figure: Swing['figure'],
  a: number | undefined,
  b: number | undefined,
  least = Math.min(a ?? 0, b ?? 0),
  greatest = Math.max(a ?? 0, b ?? 0),
): Swing => ({
  figure,
  ends: [
    { input: 20, figure: a },
    { input: 24, figure: b },
  ],
  least,
  greatest,
});

it('tells what the answer is at either end, and what it comes to in between', () => {
  expect(swingInWords(swing('coveredShare', 0.742, 0.96), 'mm')).toBe(
    'Between 20 and 24 mm the part of the picture that is covered goes from 74 to 96 %.',
  );
  expect(swingInWords(swing('systemMagnification', 9.5, 10.5), '×')).toBe('Between 20 and 24× the magnification goes from 9.5 to 10.5×.');
  expect(swingInWords(swing('systemNa', 0.25, 0.2), '')).toBe('Between 20 and 24 the aperture of the whole rig goes from 0.25 to 0.2.');
  expect(swingInWords(swing('systemMagnification', 10.001, 10.004))).toBe('Between 20 and 24 the magnification is 10× at either end.');
  expect(swingInWords(swing('cornerIllumination', 0.3, 0.5, 0.3, 0.9), 'mm')).toBe(
    'Between 20 and 24 mm the light in the corners goes from 30 to 50 %, in between up to 90 %.',
  );
  expect(swingInWords(swing('cornerIllumination', 0.3, 0.3, 0.1, 0.9), 'mm')).toBe(
    'Between 20 and 24 mm the light in the corners is 30 % at either end, in between down to 10 % and up to 90 %.',
  );
  expect(swingInWords(swing('shortestCoveringFocalLengthMm', undefined, 257), 'mm')).toBe(
    'At 20 mm no relay would cover; at 24 mm the shortest relay that covers is 257 mm.',
  );
  expect(swingInWords(swing('shortestCoveringFocalLengthMm', undefined, undefined, 200, 300), 'mm')).toBe(
    'At either end, 20 and 24 mm, no relay would cover.',
  );
});

it('is finite and in the figures of the page over whatever is paired', () => {
  const draw = random(11_903);
  let said = 0;
  for (let i = 0; i < 12; i++) {
    try {
      const evaluation = evaluate(guessed(fullPairing(draw)) as Pairing);
      for (const { path } of reportOf(evaluation).assumptions) {
        const moved = swingOf(evaluation, path);
        if (!moved) continue;
        expect(swingInWords(moved, fieldAt(path)?.unit)).toMatch(/^(Between|At) [^NI]*\.$/);
        said++;
      }
    } catch (error) {
      if (!(error instanceof PairingError)) throw error;
    }
  }
  expect(said).toBeGreaterThan(40);
});
