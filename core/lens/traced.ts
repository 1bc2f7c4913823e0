import type { Problem } from '../errors.ts';
import { problem } from '../pairing/contradict/statement.ts';
import { BOUNDS } from '../parts/quantity.ts';
import type { Relay } from '../parts/relay.ts';
import { cardinal } from '../trace/cardinal.ts';
import type { Lens } from '../trace/lens.ts';
import { prescription } from '../trace/prescription.ts';
import { type ImageQuality, imageQuality, type QualityAsked } from '../trace/quality.ts';
import { short } from '../words.ts';
import { lensOfRelay } from './relay-lens.ts';

/** What is asked of a relay's glass: as of a lens, the field by slopes, or by the radii that stand for them (the slope times the focal length). */
export type TraceQuestion = Omit<QualityAsked, 'slopes'> & {
  readonly slopes?: readonly number[] | undefined;
  readonly fieldRadiiMm?: readonly number[] | undefined;
};

export type Traced =
  | { readonly quality: ImageQuality; readonly problems?: undefined }
  | { readonly problems: Problem[]; readonly quality?: undefined };

/** Image quality of a relay over the field, or what is wrong with the question; the relay has passed its schema. */
export function tracedRelay(relay: Relay, asked: TraceQuestion): Traced {
  const problems = fieldTold(asked);
  if (!relay.glass)
    return {
      problems: [
        ...problems,
        problem('missing', '/relay/glass', undefined, 'is missing: without it there is nothing to trace', 'its surfaces, or its class'),
      ],
    };
  const { lens, problems: wrong } = lensOfRelay(relay);
  if (!lens) return { problems: [...problems, ...wrong] };
  problems.push(...unknownLight(lens, asked.wavelengthsNm));
  if (problems.length > 0) return { problems };
  const focal = asked.wavelengthsNm.map((nm) => cardinal(prescription(lens, nm)).effectiveFocalLengthMm);
  const idle = powerless(focal, relay.glass, asked.wavelengthsNm);
  if (idle.length > 0) return { problems: idle };
  const slopes = asked.slopes ?? (asked.fieldRadiiMm ?? []).map((r) => r / (focal[0] as number));
  return { quality: imageQuality(lens, { ...asked, slopes }) };
}

function fieldTold({ slopes, fieldRadiiMm }: TraceQuestion): Problem[] {
  if (!slopes && !fieldRadiiMm)
    return [
      problem('missing', '/fieldRadiiMm', undefined, 'is missing, and so is slopes', 'radii on the sensor in mm, or slopes of the beams'),
    ];
  if (slopes && fieldRadiiMm)
    return [problem('contradiction', '/slopes', slopes, 'tells the field a second time, beside fieldRadiiMm', 'only one of the two')];
  return [];
}

/** Wavelengths that a glass is not known for. */
const unknownLight = ({ media }: Lens, wavelengthsNm: readonly number[]): Problem[] =>
  wavelengthsNm.flatMap((nm, i) => {
    const blind = media.find(({ rangeNm: [least, greatest] }) => nm < least || nm > greatest);
    if (!blind) return [];
    const [least, greatest] = blind.rangeNm;
    return [
      problem(
        'outOfRange',
        `/wavelengthsNm/${i}`,
        nm,
        `lies outside what is known of ${blind.name}`,
        `${short(least, 6)} to ${short(greatest, 6)} nm`,
      ),
    ];
  });

/** Focal lengths that no relay has: the glass is to blame for the first wavelength's, a wavelength for its own. */
function powerless(focal: readonly number[], glass: unknown, wavelengthsNm: readonly number[]): Problem[] {
  const [least, greatest] = BOUNDS.focalLengthMm;
  const strange = (f: number): boolean => !(f >= least && f <= greatest);
  const expected = `a focal length from ${least} to ${greatest} mm`;
  const comes = (f: number): string =>
    Number.isFinite(f) ? `comes to a focal length of ${short(f, 4)} mm` : 'has no power: it focuses nothing';
  const [first] = focal as [number];
  if (strange(first)) return [problem('noPower', '/relay/glass', glass, comes(first), expected)];
  return focal.flatMap((f, i) =>
    strange(f) ? [problem('noPower', `/wavelengthsNm/${i}`, wavelengthsNm[i], `is light in which the glass ${comes(f)}`, expected)] : [],
  );
}
