import type { GlassRelay, Glassworks, SharpQuestion } from '../pairing/glassworks.ts';

/** Two ways of working with the same glass, which learn from each other. */
export interface Hurrying {
  readonly exact: Glassworks;
  /**
   * For while a hand moves something. All but the sharp circle is exact; that takes a hundredth of a second to
   * trace and an evaluation with ± asks for a dozen: it is read between places of the pupil where it has been
   * traced, which for real lenses errs by some per mille, and takes the stops to cut as they did there.
   */
  readonly hurried: Glassworks;
}

/** A radius that was traced with the exit pupil so far before the relay, mm. */
interface Traced {
  readonly at: number;
  readonly radius: number;
}

/** Between traced places no farther apart than this the radius is read off a straight line, mm. */
const APART = 20;
/** Lenses whose traced places are kept. */
const MOST_KEPT = 40;

export function hurrying(works: Glassworks): Hurrying {
  const kept = new Map<string, Traced[]>();
  // A draft that is moved is a new object at every step: its relay is known by what it says.
  const glasses = new Map<string, ReturnType<Glassworks['relay']>>();
  const glassOf = (key: string, ...asked: Parameters<Glassworks['relay']>): ReturnType<Glassworks['relay']> => {
    const glass = glasses.get(key) ?? works.relay(...asked);
    keep(glasses, key, glass);
    return glass;
  };
  const wrapped = (sharp: (glass: GlassRelay, traced: Traced[], question: SharpQuestion) => number): Glassworks => ({
    relay(relay, wavelengthNm) {
      const told = JSON.stringify([relay, wavelengthNm]);
      const glass = glassOf(told, relay, wavelengthNm);
      if (!('focalLengthMm' in glass)) return glass;
      return {
        ...glass,
        sharpRadiusMm: (question) => sharp(glass, placesFor(kept, told, question), question),
      };
    },
  });
  return {
    exact: wrapped((glass, traced, question) => learnt(glass, traced, question, question.pupilDistanceMm)),
    hurried: wrapped(between),
  };
}

/** The places traced for what a question asks, the stops and the pupil's distance left aside. */
function placesFor(kept: Map<string, Traced[]>, relay: string, { discs: _, pupilDistanceMm: __, ...rest }: SharpQuestion): Traced[] {
  const key = `${relay}${JSON.stringify(rest)}`;
  const places = kept.get(key) ?? [];
  keep(kept, key, places);
  return places;
}

/** Keeps the latest few. */
function keep<V>(map: Map<string, V>, key: string, value: V): void {
  map.delete(key);
  map.set(key, value);
  const oldest = map.keys().next().value;
  if (map.size > MOST_KEPT && oldest !== undefined) map.delete(oldest);
}

/** Traces one place, and keeps it. */
function learnt(glass: GlassRelay, traced: Traced[], question: SharpQuestion, at: number): number {
  const radius = glass.sharpRadiusMm(at === question.pupilDistanceMm ? question : { ...question, pupilDistanceMm: at });
  const after = traced.findIndex((place) => place.at >= at);
  if (after < 0) traced.push({ at, radius });
  else traced.splice(after, traced[after]?.at === at ? 1 : 0, { at, radius });
  return radius;
}

/** Read between the traced places to either side, which are traced first where there are none near. */
function between(glass: GlassRelay, traced: Traced[], question: SharpQuestion): number {
  const d = question.pupilDistanceMm;
  const neighbours = () => {
    const after = traced.findIndex((place) => place.at >= d);
    return { below: after < 0 ? traced.at(-1) : traced[after]?.at === d ? traced[after] : traced[after - 1], above: traced[after] };
  };
  let { below, above } = neighbours();
  const near = (): boolean => below !== undefined && above !== undefined && above.at - below.at <= APART;
  if (!near()) {
    if (below === undefined || below.at < d - APART) learnt(glass, traced, question, Math.floor(d / APART) * APART);
    if (above === undefined || above.at > d + APART) learnt(glass, traced, question, Math.ceil(d / APART) * APART);
    ({ below, above } = neighbours());
  }
  if (below === undefined || above === undefined) return learnt(glass, traced, question, d);
  if (above.at === below.at) return above.radius;
  return below.radius + ((d - below.at) / (above.at - below.at)) * (above.radius - below.radius);
}
