import type { Problem } from '../../errors.ts';
import { amount, isMeasured, type QuantityInput } from '../../parts/quantity.ts';
import { MM_PER_M } from '../../units.ts';
import type { Pairing } from '../schema.ts';
import { disagree, problem, rounded } from './statement.ts';

export function ofRelay({ relay }: Pairing): Problem[] {
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
