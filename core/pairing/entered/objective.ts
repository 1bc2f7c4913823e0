import type { Objective } from '../../parts/objective.ts';
import * as typical from '../../parts/typical.ts';
import type { Input } from '../input.ts';
import * as leaves from '../leaves.ts';
import type { Entries } from './entries.ts';

export function enterObjective({ list, take, takeIfGiven, assume, takeApart }: Entries, objective: Objective): void {
  take(leaves.magnification, 'magnification', '/objective/magnification', objective.magnification);
  take(leaves.numericalAperture, 'na', '/objective/na', objective.na);
  take(leaves.referenceFocalLength, 'referenceFocalLengthMm', '/objective/referenceFocalLengthMm', objective.referenceFocalLengthMm);
  takeIfGiven(leaves.fieldNumber, 'fieldNumberMm', '/objective/fieldNumberMm', objective.fieldNumberMm);
  takeIfGiven(leaves.testedField, 'testedFieldMm', '/objective/testedFieldMm', objective.testedFieldMm);
  const pupilPath = '/objective/exitPupilFromShoulderMm';
  if (objective.exitPupilFromShoulderMm === undefined)
    assume(leaves.exitPupilFromShoulder, 'exitPupilFromShoulderMm', pupilPath, typical.exitPupil(objective));
  else take(leaves.exitPupilFromShoulder, 'exitPupilFromShoulderMm', pupilPath, objective.exitPupilFromShoulderMm);

  takeApart(leaves.workingDistance, 'workingDistanceMm', '/objective/workingDistanceMm', objective.workingDistanceMm);
  takeApart(leaves.parfocalDistance, 'parfocalDistanceMm', '/objective/parfocalDistanceMm', objective.parfocalDistanceMm);
  takeApart(leaves.noseDiameter, 'noseDiameterMm', '/objective/noseDiameterMm', objective.noseDiameterMm, () => typical.nose(objective));

  takeIfGiven(leaves.coverGlass, 'coverGlassMm', '/objective/coverGlassMm', objective.coverGlassMm);
  if (objective.coverGlassMm !== undefined) list.push({ ...(list.pop() as Input), apart: 'both ways' });
}
