import { MM_PER_INCH } from '../../units.ts';
import { short } from '../../words.ts';
import { C_MOUNT, KNOWN_THREADS, M42_FINE, RMS, USUAL_THREADS } from './known.ts';
import { type Sex, sameThread, type Thread } from './thread.ts';

/** What a text says of a thread; the sex where it is said. */
export interface ReadThread {
  readonly thread: Thread;
  readonly sex?: Sex;
}

/** Why a text names no one thread, and what would. */
export interface Unread {
  readonly fault: string;
  readonly expected: string;
}

const NAMED: readonly (readonly [RegExp, Thread])[] = [
  [/^rms(?:\s*\(?\s*(?:0?\.8(?:\s*(?:"|in))?|20\.32(?:\s*mm)?)\s*x\s*(?:36\s*tpi|1\/36\s*(?:"|in)?|0?\.70\d+)\s*\)?)?$/, RMS],
  [/^c(?:[ -]?mount)?(?:\s*\(?\s*1\s*(?:"|in)\s*x\s*32\s*tpi\s*\)?)?$/, C_MOUNT],
  [/^t2?(?:[ -]?(?:mount|ring|thread))?$/, M42_FINE],
];

/** The thread of C, but its seat is not where C's is (12.5 mm before the sensor; from memory). */
const CS = /^cs(?:[ -]?mount)?$/;

const NUMBER = String.raw`(?:\d+(?:\.\d+)?|\.\d+)`;
/** Letter, diameter, its unit; then the pitch as a length, as a fraction of an inch or in turns to the inch. */
const MEASURES = new RegExp(
  String.raw`^(?<letter>[mwø⌀])?\s*(?<diameter>${NUMBER})\s*(?<unit>mm|"|in(?:ch)?)?` +
    String.raw`(?:\s*(?:x|-|\s)\s*(?:1\s*/\s*(?<fraction>\d+)\s*(?:"|in(?:ch)?)?|(?<turns>\d+)\s*(?<per>tpi|un[a-z]*(?:[ -]?[123][ab])?)|(?<pitch>${NUMBER})\s*(?:mm)?))?$`,
);

/** Between what a thread of a rig is taken to be, mm. */
const DIAMETERS = [5, 300] as const;
const PITCHES = [0.2, 4] as const;
/** No coarser than this part of the diameter. */
const COARSEST = 0.2;
/** Pitches closer than this to one of a known thread of the same width may be that, in too few digits. */
const TOO_FEW_DIGITS = 0.01;

const WAYS = 'as in M25 x 0.75, M26 x 36 TPI, 58, RMS, C or T';

const tidied = (text: string): string =>
  text
    .toLowerCase()
    .replace(/[×✕*]/g, ' x ')
    .replace(/[″”“]|''/g, '"')
    .replace(/[–−]/g, '-')
    .replace(/(\d),(\d)/g, '$1.$2')
    .replace(/\s+/g, ' ')
    .trim();

/**
 * Reads what people write: `M25`, `25 x 0.75`, `58`, `RMS`, `W 0.8" x 1/36"`, `M26-36TPI`, `C`, `T`; with `male`
 * or `female` before or behind it. Nothing is guessed between threads that do not mate: those are asked about.
 */
export function readThread(text: string): ReadThread | Unread {
  const whole = tidied(text);
  const [, before, behind] = whole.match(/^(?:(male|female) )?.*?(?: (male|female))?$/) ?? [];
  const sex = (before ?? behind) as Sex | undefined;
  const bare = whole.replace(/^(?:male|female) | (?:male|female)$/g, '').trim();
  const found = threadIn(bare);
  return 'fault' in found ? found : { thread: found, ...(sex ? { sex } : {}) };
}

function threadIn(text: string): Thread | Unread {
  if (CS.test(text)) return { fault: 'is the thread of C with the sensor 5 mm nearer', expected: 'C, and the register of the camera' };
  const named = NAMED.find(([pattern]) => pattern.test(text));
  if (named) return named[1];
  const groups = text.match(MEASURES)?.groups;
  if (!groups) return { fault: 'names no thread', expected: WAYS };
  const { letter, diameter, unit, fraction, turns, per, pitch } = groups;
  const inches = unit === undefined ? (per ?? '').startsWith('un') || (letter === 'w' && Number(diameter) < DIAMETERS[0]) : unit !== 'mm';
  const diameterMm = Number(diameter) * (inches ? MM_PER_INCH : 1);
  const perInch = fraction ?? turns;
  if (perInch === undefined && pitch === undefined) return byDiameter(diameterMm, text);
  const pitchMm = perInch === undefined ? Number(pitch) : MM_PER_INCH / Number(perInch);
  return sound(diameterMm, pitchMm, letter === 'w', text);
}

/** A diameter by itself: the one usual thread that has it. */
function byDiameter(diameterMm: number, text: string): Thread | Unread {
  const has = USUAL_THREADS.filter((t) => Math.abs(t.diameterMm - diameterMm) < 0.005);
  const [only] = has;
  if (only && has.length === 1) return only;
  if (only)
    return {
      fault: `may be ${has.map((t) => t.label).join(' or ')}, which do not screw together`,
      expected: `one of ${has.map((t) => t.label).join(', ')}`,
    };
  return { fault: 'is no usual thread by its diameter alone: its pitch is needed', expected: `diameter and pitch, as in ${text} x 0.75` };
}

function sound(diameterMm: number, pitchMm: number, whitworth: boolean, text: string): Thread | Unread {
  const [narrowest, widest] = DIAMETERS;
  const [finest, coarsest] = PITCHES;
  if (!(diameterMm >= narrowest && diameterMm <= widest))
    return { fault: `would be ${short(diameterMm)} mm wide`, expected: `a diameter from ${narrowest} to ${widest} mm` };
  if (!(pitchMm >= finest && pitchMm <= coarsest))
    return { fault: `would have a pitch of ${short(pitchMm)} mm`, expected: `a pitch from ${finest} to ${coarsest} mm` };
  if (pitchMm > diameterMm * COARSEST)
    return {
      fault: `would have a pitch of ${short(pitchMm)} mm at ${short(diameterMm)} mm`,
      expected: 'a pitch of at most a fifth of the diameter',
    };
  const wide = KNOWN_THREADS.filter((t) => Math.abs(t.diameterMm - diameterMm) < 0.005);
  const own: Thread = { label: `M${short(diameterMm, 5)} x ${short(pitchMm, 4)}`, diameterMm, pitchMm, angleDeg: whitworth ? 55 : 60 };
  const same = wide.find((t) => sameThread(whitworth ? own : { ...own, angleDeg: t.angleDeg }, t));
  if (same) return same;
  const near = whitworth ? undefined : wide.find((t) => Math.abs(t.pitchMm - pitchMm) < TOO_FEW_DIGITS);
  if (near)
    return {
      fault: `has a pitch near that of ${near.label} and not the same`,
      expected: `${near.label}, if that is meant, or ${text} with more digits`,
    };
  return whitworth ? { ...own, label: `W ${short(diameterMm, 5)} x ${short(pitchMm, 4)}` } : own;
}
