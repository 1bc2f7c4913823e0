import { GLASS } from '../../pairing/input.ts';
import { nameOf } from '../../pairing/phrases.ts';
import { capital, earned, listed, percent, short } from '../../words.ts';
import type { Finding, Unsolved } from './findings.ts';
import type { Inconsistent } from './inconsistent.ts';
import type { Seen } from './magnification.ts';
import { type Sighting, type WallReading, wallReading } from './sightings.ts';

/** A value with the digits that it earns and its 95 % to the same place. */
function told(value: number, half: number): string {
  const number = earned(value, value, value + half, 5);
  const even = half.toFixed(number.split('.')[1]?.length ?? 0);
  return `${number} ± ${Number(even) > 0 ? even : short(half, 2)}`;
}

const between = ({ low, high }: { low: number; high: number }): string => `${short(low)} to ${short(high)}`;

/** What a finding is, in one or two sentences. */
export function findingInWords(finding: Finding): string {
  const { value, plusMinus, path } = finding;
  const size = Math.abs(value);
  const parts = [headOf(path, value, told(size, plusMinus))];
  if (path === '/relay/focalLengthMm' && finding.asTheyStand.includes('/objective/magnification'))
    parts[0] += ", the objective's engraving taken as it stands: a magnification alone does not tell the two apart";
  if (path === '/objective/magnification')
    parts[0] += ', the relay taken as it is known: a magnification alone does not tell the two apart';
  const rest = finding.restsOn[0];
  if (rest && rest.share >= 0.5) parts.push(`${capital(percent(rest.share))} of the doubt is in ${nameOf(rest.path)}.`);
  if (finding.also.length > 0) parts.push(`${finding.also.map(between).join(', or ')} would show the same.`);
  if (finding.cut) parts.push('One end of it is not what you saw, but where the guess that stood here ended.');
  if (finding.beyond) parts.push('That lies outside the guess that stood here: look once more.');
  if (finding.clash) parts.push(clashInWords(finding.clash));
  const [first = '', ...more] = parts;
  return [`${first}.`, ...more].join(' ');
}

const clashInWords = ({ value, path }: NonNullable<Finding['clash']>): string =>
  path === GLASS
    ? `By its glass it would be ${short(value)} mm: one of the two is not this lens, and its lengths still follow the glass.`
    : `${short(value)} stood here as exact: one of the two is wrong, so look at both once more.`;

function headOf(path: string, value: number, number: string): string {
  if (path === '/objective/magnification') return `The objective's true magnification is ${number}`;
  if (path === '/objective/exitPupilFromShoulderMm')
    return `The exit pupil sits ${number} mm from the objective's shoulder, ${value < 0 ? 'inside the objective' : 'toward the relay'}`;
  return `${capital(nameOf(path))} is ${number} mm`;
}

export const seenInWords = ({ value, low, high }: Seen): string =>
  `You photograph at ${told(value, Math.max(value - low, high - value))}×.`;

const WALL_NAMES: Record<WallReading, string> = {
  cornerLossEv: "the corner's loss",
  cornerShare: "the corner's share of the light",
  onsetRadiusMm: 'the distance from the middle where the light begins to fall',
  halfRadiusMm: 'the distance from the middle where half of the light is left',
};

/** What a sighting's number is in, and how it is called. */
function readAs(s: Sighting): { name: string; unit: string } {
  switch (s.kind) {
    case 'ruler':
      return { name: 'the ruler', unit: 'mm' };
    case 'micrometer':
      return s.pixels === undefined ? { name: 'the micrometer', unit: 'divisions' } : { name: 'the micrometer', unit: 'pixels' };
    case 'wall': {
      const name = wallReading(s);
      const unit = name === 'cornerLossEv' ? 'stops' : name === 'cornerShare' ? '' : 'mm';
      return { name: WALL_NAMES[name], unit };
    }
    case 'far':
      return { name: 'the picture of the far thing', unit: 'mm' };
    case 'extensions':
      return { name: 'the ruler at the longer extension', unit: 'mm' };
  }
}

const in_ = (x: number, unit: string): string => (unit === '' ? short(x) : `${short(x, 4)} ${unit}`);

/** Why something could not be found, and what would help. */
export function unsolvedInWords({ path, why, missing = [], spans = [], message = '' }: Unsolved, sightings: readonly Sighting[]): string {
  switch (why) {
    case 'missing':
      return `${capital(nameOf(path))} cannot be found before this is told: ${listed(missing.map(nameOf))}.`;
    case 'unmet':
      return `${path === '/objective/exitPupilFromShoulderMm' ? 'Wherever the exit pupil may sit' : `Whatever is put in for ${nameOf(path)}`}, this pairing shows nothing like it: ${spans.map((span) => spanInWords(span, sightings)).join('; ')}.`;
    case 'nothing learnt': {
      const wall = path === '/objective/exitPupilFromShoulderMm' || path.endsWith('learApertureMm') || path.endsWith('iameterMm');
      return `What you saw hardly hangs on ${nameOf(path)}, and nothing was learnt of it.${wall ? ' The distance from the middle at which half of the light is left, at two spacings well apart, tells most.' : ''}`;
    }
    case 'contradicts':
      return `${capital(nameOf(path))} was found but cannot be taken: ${message}.`;
  }
}

function spanInWords({ place, least, greatest }: NonNullable<Unsolved['spans']>[number], sightings: readonly Sighting[]): string {
  const sighting = sightings[place];
  if (!sighting) return '';
  const { name, unit } = readAs(sighting);
  if (least === undefined) return `${name} shows no fall anywhere`;
  if (greatest === undefined) return `${name} can be ${in_(least, unit)} or more`;
  return `${name} can be ${in_(least, unit)} to ${in_(greatest, unit)}`;
}

export function inconsistentInWords({ sighting, reads, expected, off }: Inconsistent, sightings: readonly Sighting[]): string {
  const { name, unit } = readAs(sightings[sighting] as Sighting);
  const rest = expected === undefined ? 'the others leave no room for that' : `by the others it would be ${in_(expected, unit)}`;
  return `Sighting ${sighting + 1}, ${name}, reads ${in_(reads, unit)}; ${rest}, ${short(off, 2)} times the standard uncertainty away.`;
}
