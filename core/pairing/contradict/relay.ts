import type { Problem } from '../../errors.ts';
import { amount, isMeasured } from '../../parts/quantity.ts';
import { MM_PER_M } from '../../units.ts';
import type { GlassRelay } from '../glassworks.ts';
import type { Pairing } from '../schema.ts';
import { disagree, problem, rounded } from './statement.ts';

/** How far from its glass a close-up lens's engraved power may be: markings are loose, radii are not. */
const LOOSE_MARK = 0.06;

/** Digits of a listing are not the reason for a complaint. */
const ROUNDING = 1e-3;

export function ofRelay({ relay }: Pairing, glass?: GlassRelay): Problem[] {
  const { focalLengthMm: focal, powerDioptre: power, focalLengthRangeMm: range, fNumber, entrancePupilDiameterMm: pupil } = relay;
  const found: Problem[] = [];
  if (focal === undefined && power === undefined && !glass)
    return [
      problem(
        'missing',
        '/relay/focalLengthMm',
        focal,
        'is missing, and so is powerDioptre',
        'a focal length in mm, or a power in dioptres',
      ),
    ];
  const settled = isMeasured(focal) || isMeasured(power);
  if (glass && relay.clearApertureMm !== undefined && amount(relay.clearApertureMm) > glass.clearDiameterMm * (1 + ROUNDING))
    found.push(
      problem(
        'contradiction',
        '/relay/clearApertureMm',
        relay.clearApertureMm,
        `is wider than the glass, which ends at ${rounded(glass.clearDiameterMm)} mm across`,
        `at most ${rounded(glass.clearDiameterMm)}, or glass that is thicker or flatter`,
      ),
    );
  if (glass && !settled) found.push(...againstGlass(relay, glass.focalLengthMm));
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
  const f = focal !== undefined ? amount(focal) : power !== undefined ? MM_PER_M / amount(power) : (glass as GlassRelay).focalLengthMm;
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

/** What is engraved against what the glass comes to. */
function againstGlass({ focalLengthMm: focal, powerDioptre: power }: Pairing['relay'], f: number): Problem[] {
  const found: Problem[] = [];
  const would = (x: number): string => `${rounded(x)}, or leave it out, or give it as measured`;
  if (focal !== undefined && disagree(amount(focal), f))
    found.push(problem('contradiction', '/relay/focalLengthMm', focal, `contradicts the glass, which comes to ${rounded(f)} mm`, would(f)));
  const P = MM_PER_M / f;
  if (power !== undefined && Math.abs(amount(power) - P) > LOOSE_MARK * P)
    found.push(problem('contradiction', '/relay/powerDioptre', power, `contradicts the glass, which comes to ${rounded(P)} D`, would(P)));
  return found;
}
