import {
  adviceOf,
  bandOf,
  clearDiameter,
  familyOf,
  glassworks,
  judgingOf,
  listedLens,
  pupilDoubtOf,
  type SpacingPoint,
  spacings,
  statedFocalLength,
  type Tried,
  trying,
} from '../../core/glassworks.ts';
import { amount, DEFAULTS, evaluate } from '../../core/index.ts';
import type { Answered, Asked, Found } from './search-task.ts';

/**
 * Searches that take seconds, away from the page: a question, how far it has come, an answer. The page
 * ends one by ending the worker.
 */
const works = glassworks();
const tell = (answer: Answered): void => postMessage(answer);

addEventListener('message', ({ data }: MessageEvent<Asked>) => {
  try {
    tell({ id: data.id, found: data.class ? overClass(data, data.class) : bothWays(data) });
  } catch (error) {
    tell({ id: data.id, failed: error instanceof Error ? error.message : String(error) });
  }
});

/** The relay's own glass, both ways round over the infinity space. */
function bothWays({ id, pairing, places, over }: Asked): Found {
  const evaluation = evaluate(pairing, works);
  const { lens, problems } = listedLens(pairing.relay);
  if (!lens) throw new Error(problems[0]?.message ?? '');
  const judging = judgingOf(evaluation, lens, over);
  const points: (readonly [SpacingPoint, SpacingPoint])[] = [];
  for (const pair of spacings(judging, places)) {
    points.push(pair);
    tell({ id, done: points.length, of: places.count });
  }
  return { advice: adviceOf(judging, points, amount(pairing.infinitySpaceMm)) };
}

/** Every lens of a class, made for the relay's focal length and opening, both ways round over the infinity space. */
function overClass({ id, pairing, places, over }: Asked, kind: NonNullable<Asked['class']>): Found {
  const focalLength = statedFocalLength(pairing.relay);
  const diameter = clearDiameter(pairing.relay);
  if (focalLength === undefined || diameter === undefined)
    throw new Error("lenses of a class are made for the relay's focal length and clear opening, and these are not known");
  const family = familyOf(kind, focalLength, diameter);
  if (family.length === 0) throw new Error('no lens of this class can be made with this focal length and opening');
  const tried: Tried[] = [];
  tell({ id, done: 0, of: family.length });
  const evaluation = evaluate(pairing, works);
  for (const one of trying(evaluation, family, places, over)) {
    tried.push(one);
    tell({ id, done: tried.length, of: family.length });
  }
  return { band: bandOf(tried, pairing.sharp?.focus ?? DEFAULTS.sharpFocus, pupilDoubtOf(evaluation)) };
}
