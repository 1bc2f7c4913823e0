import type { Sought } from './findings.ts';
import type { Reading } from './readings.ts';
import { chiSquare95, NINETY_FIVE } from './weigh.ts';

/** A sighting that does not agree with the others. */
export interface Inconsistent {
  readonly sighting: number;
  /** What was read and what the others foretell, in the sighting's unit; absent where they foretell none. */
  readonly reads: number;
  readonly expected?: number;
  /** How far apart, in standard uncertainties of the distance. */
  readonly off: number;
}

/** Who does not agree, where all together are too far apart: χ² beyond its 95 %. */
export function offsOf({ solved }: Sought, readings: readonly Reading[]): Inconsistent[] {
  if (!solved || solved.freedom < 1 || solved.chiSquare <= chiSquare95(solved.freedom)) return [];
  const worst = solved.standings.toSorted((a, b) => Math.abs(b.off) - Math.abs(a.off));
  const off = worst.filter((standing, i) => i === 0 || Math.abs(standing.off) > NINETY_FIVE);
  const told = off.filter(({ place }) => place >= 0);
  return told.map(({ place, off: by, expected }) => {
    const { shown: back, value } = readings.find((r) => r.place === place) as Reading;
    const foretold = back(expected);
    return {
      sighting: place,
      reads: back(value),
      ...(foretold > 0 && Number.isFinite(foretold) ? { expected: foretold } : {}),
      off: Math.abs(by),
    };
  });
}
