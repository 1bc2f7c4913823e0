import type { Problem } from '../../errors.ts';
import { amount } from '../../parts/quantity.ts';
import { DEFAULTS, type Pairing } from '../schema.ts';
import { problem, spread } from './statement.ts';

export function ofObjective({ objective, subject }: Pairing): Problem[] {
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
