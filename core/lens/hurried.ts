import type { GlassRelay, Glassworks, SharpQuestion } from '../pairing/glassworks.ts';

/** Two ways of working with the same glass, which learn from each other. */
export interface Hurrying {
  readonly exact: Glassworks;
  /**
   * For while a hand moves something. All but the sharp circle is exact; that takes a hundredth of a second to
   * trace and an evaluation with ± asks for a dozen. Where no stop cuts a beam that matters it is read between
   * places of the pupil where it has been traced, which errs by about a per cent. Where one cuts, the circle may
   * jump from place to place: there it is traced, and the hand waits.
   */
  readonly hurried: Glassworks;
}

/** A radius that was traced with the exit pupil so far before the relay, nothing cutting, mm. */
interface Traced {
  readonly at: number;
  readonly radius: number;
}

type Sharp = GlassRelay['sharpRadiusMm'];

/** Between traced places no farther apart than this the radius is read off a straight line, mm. */
const APART = 20;
/** Lenses whose traced places are kept. */
const MOST_KEPT = 40;

export function hurrying(works: Glassworks): Hurrying {
  const kept = new Map<string, Traced[]>();
  // A draft that is moved is a new object at every step: its relay is known by what it says.
  const glasses = new Map<string, ReturnType<Glassworks['relay']>>();
  const wrapped = (sharp: (glass: GlassRelay, placesFor: (question: SharpQuestion) => Traced[]) => Sharp): Glassworks => ({
    relay(relay, wavelengthNm) {
      const told = JSON.stringify([relay, wavelengthNm]);
      const glass = glasses.get(told) ?? works.relay(relay, wavelengthNm);
      keep(glasses, told, glass);
      if (!('focalLengthMm' in glass)) return glass;
      return { ...glass, sharpRadiusMm: sharp(glass, (question) => placesFor(kept, told, question)) };
    },
  });
  return {
    exact: wrapped((glass, places) => (question) => {
      const radius = glass.sharpRadiusMm(question);
      if (!isCut(question)) learn(places(question), question.pupilDistanceMm, radius);
      return radius;
    }),
    hurried: wrapped(
      (glass, places) => (question) => (isCut(question) ? glass.sharpRadiusMm(question) : between(glass, places(question), question)),
    ),
  };
}

/** Whether a stop takes part of any beam out to the limit: of the discs in the pupil the smallest passes whole where all others hold it. */
function isCut({ discs, limitMm, scaleMm }: SharpQuestion): boolean {
  const { radius, walk } = discs;
  const slope = limitMm / scaleMm;
  const least = radius.indexOf(Math.min(...radius));
  return radius.some(
    (r, i) => Math.abs((walk[i] as number) - (walk[least] as number)) * slope + (radius[least] as number) > r * (1 + 1e-9),
  );
}

/** The places traced for what a question asks, the stops and the pupil's distance left aside. */
function placesFor(kept: Map<string, Traced[]>, relay: string, { discs, pupilDistanceMm: _, ...rest }: SharpQuestion): Traced[] {
  const key = `${relay}${JSON.stringify([Math.min(...discs.radius), rest])}`;
  const places = kept.get(key) ?? [];
  keep(kept, key, places);
  return places;
}

/** Keeps the latest few. */
function keep<V>(map: Map<string, V>, key: string, value: V): void {
  map.delete(key);
  map.set(key, value);
  if (map.size > MOST_KEPT) map.delete(map.keys().next().value as string);
}

function learn(traced: Traced[], at: number, radius: number): void {
  const after = traced.findIndex((place) => place.at >= at);
  if (after < 0) traced.push({ at, radius });
  else traced.splice(after, traced[after]?.at === at ? 1 : 0, { at, radius });
}

/** The traced places to either side. */
function beside(traced: readonly Traced[], d: number): readonly [below: Traced | undefined, above: Traced | undefined] {
  const after = traced.findIndex((place) => place.at >= d);
  if (after < 0) return [traced.at(-1), undefined];
  return [traced[after]?.at === d ? traced[after] : traced[after - 1], traced[after]];
}

/** Read off the straight line between them; undefined where they are not to be had, or too far apart. */
function read(traced: readonly Traced[], d: number): number | undefined {
  const [below, above] = beside(traced, d);
  if (!below || !above || above.at - below.at > APART) return undefined;
  return above.at === below.at ? above.radius : below.radius + ((d - below.at) / (above.at - below.at)) * (above.radius - below.radius);
}

/** The same, with the places traced first where there are none near. */
function between(glass: GlassRelay, traced: Traced[], question: SharpQuestion): number {
  const d = question.pupilDistanceMm;
  const known = read(traced, d);
  if (known !== undefined) return known;
  const [below, above] = beside(traced, d);
  const [left, right] = [Math.floor(d / APART) * APART, Math.ceil(d / APART) * APART];
  const at = (place: number): void => learn(traced, place, glass.sharpRadiusMm({ ...question, pupilDistanceMm: place }));
  if (below === undefined || below.at < left) at(left);
  if (right !== left && (above === undefined || above.at > right)) at(right);
  return read(traced, d) ?? glass.sharpRadiusMm(question);
}
