import { bestFocus, fieldPoint } from '../contrast/field.ts';
import { relativeIllumination } from '../pupil/illumination.ts';
import { blurOf, worstBlur } from './blur.ts';
import { type Judging, settingAt, type WayRound } from './judging.ts';

/** How a picture is with the lens one way round at one infinity space. Contrasts are relative, at the judged detail. */
export interface SpacingPoint {
  readonly infinitySpaceMm: number;
  /** Worst contrast over the picture, in one frame and in a stack; 0 where part of it gets no light or no contrast. */
  readonly oneFrame: number;
  readonly stack: number;
  /** Worst rms blur, µm, focused for least blur; absent where part of the picture gets no light. */
  readonly oneFrameBlurUm?: number;
  readonly stackBlurUm?: number;
  /** Light in the corner over light in the middle. */
  readonly cornerLight: number;
}

/** Field points from the middle to the corner. */
export const FIELD_POINTS = 9;

/** The lens one way round at one place. */
export function spacingPoint(judging: Judging, way: WayRound, infinitySpaceMm: number): SpacingPoint {
  const setting = settingAt(judging, way, infinitySpaceMm);
  const { discs, scaleMm } = setting;
  const corner = judging.cornerMm / scaleMm;
  const slopes = Array.from({ length: FIELD_POINTS }, (_, i) => (corner * i) / (FIELD_POINTS - 1));
  const points = slopes.flatMap((slope) => fieldPoint(setting, slope) ?? []);
  const whole = points.length === slopes.length;
  const squares = slopes.flatMap((slope) => blurOf(setting, slope) ?? []);
  const blur = squares.length === slopes.length ? worstBlur(squares) : undefined;
  return {
    infinitySpaceMm,
    oneFrame: whole ? bestFocus(points).contrast : 0,
    stack: whole ? Math.min(...points.map((point) => bestFocus([point]).contrast)) : 0,
    ...(blur ? { oneFrameBlurUm: blur.oneFrameUm, stackBlurUm: blur.stackUm } : {}),
    cornerLight: relativeIllumination(discs, corner),
  };
}

/** Where the infinity space is looked at. */
export interface Places {
  readonly fromMm: number;
  readonly toMm: number;
  readonly count: number;
}

/** Both ways round over the infinity space, place by place, for those who have other things to do between. */
export function* spacings(
  judging: Judging,
  { fromMm, toMm, count }: Places,
): Generator<readonly [SpacingPoint, SpacingPoint], void, undefined> {
  for (let i = 0; i < count; i++) {
    const space = fromMm + ((toMm - fromMm) * i) / Math.max(1, count - 1);
    yield [spacingPoint(judging, judging.ways[0], space), spacingPoint(judging, judging.ways[1], space)];
  }
}
