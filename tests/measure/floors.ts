/** A number that a measurement must keep, and why it is where it is. */
export interface Floor {
  name: string;
  /** `least`: no less than the limit will do; `most`: no more. */
  sense: 'least' | 'most';
  limit: number;
  why: string;
}

/** A floor with what was measured; undefined where it could not be. */
export interface Held extends Floor {
  measured: number | undefined;
  holds: boolean;
}

const short = (x: number): number => Number(x.toPrecision(3));

export function held(floors: readonly Floor[], measured: Readonly<Record<string, number | undefined>>): Held[] {
  const strange = Object.keys(measured).filter((name) => !floors.some((floor) => floor.name === name));
  if (strange.length > 0) throw new Error(`measured without a floor: ${strange.join(', ')}`);
  return floors.map((floor) => {
    const value = measured[floor.name];
    const holds = value !== undefined && (floor.sense === 'least' ? value >= floor.limit : value <= floor.limit);
    return { ...floor, measured: value, holds };
  });
}

/** Prints a table, and a line for each that fell short; the process ends with 1 where any did. */
export function tell(all: readonly Held[]): void {
  console.table(
    Object.fromEntries(
      all.map(({ name, sense, limit, measured, holds }) => [
        name,
        { measured: measured === undefined ? 'not measured' : short(measured), [sense === 'least' ? 'at least' : 'at most']: limit, holds },
      ]),
    ),
  );
  for (const { name, sense, limit, measured, holds, why } of all)
    if (!holds)
      console.error(
        `FELL SHORT: ${name}: ${measured === undefined ? 'not measured' : short(measured)}, which must be at ${sense} ${limit} (${why})`,
      );
  if (all.some(({ holds }) => !holds)) process.exitCode = 1;
  else console.log(`all ${all.length} floors hold`);
}
