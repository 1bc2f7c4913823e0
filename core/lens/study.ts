import { bestFocus, type FieldPoint, fieldPoint, spreadOf } from '../contrast/field.ts';
import { contrastAt } from '../contrast/through-focus.ts';
import { framesOf, stepOf, USUAL_OVERLAP } from '../pairing/frames.ts';
import { relativeIllumination } from '../pupil/illumination.ts';
import { cardinal } from '../trace/cardinal.ts';
import { mappingFactor } from '../trace/mapping.ts';
import { MM_PER_NM, UM_PER_MM } from '../units.ts';
import { blurOf, worstBlur } from './blur.ts';
import { type Judging, settingAt, type WayRound } from './judging.ts';
import { FIELD_POINTS, type SpacingPoint, spacingPoint } from './spacing.ts';
import { type SpotDiagram, spotDiagram } from './spots.ts';

/**
 * A point of the picture. Contrasts are at the judged detail, over that of the same beam without aberrations,
 * at the focus that is best for them; the spot is at the focus of least blur, which is another one where a
 * spot has a core and a faint halo.
 */
export interface Focused {
  readonly sagittal: number;
  readonly tangential: number;
  readonly spot: SpotDiagram;
}

/** A point of the picture that gets light. */
export interface SeenPoint {
  /** At the one flat focus of the picture, and at the point's own best. */
  readonly oneFrame: Focused;
  readonly stack: Focused;
  /** The point's own best focus from the paraxial one, mm; positive: farther from the relay. */
  readonly focusMm: number;
  readonly light: number;
  /** What the way in which the relay maps angles does to the light besides. */
  readonly mappingFactor: number;
}

/** The relay's glass where it stands. */
export interface Study {
  readonly way: WayRound;
  /** The whole picture's worst contrast and blur, and its corner's light. */
  readonly worst: SpacingPoint;
  readonly pupilDistanceMm: number;
  /** The detail judged, lp/mm on the sensor. */
  readonly frequency: number;
  /** From the middle to the corner. */
  readonly points: readonly { readonly radiusMm: number; readonly slope: number; readonly seen?: SeenPoint }[];
  /** The flat focus that serves the worst point best, mm from the paraxial focus. */
  readonly flatFocusMm: number;
  /** From the nearest to the farthest of the points' own best foci: on the sensor's side, mm, and as depth at the subject, µm. */
  readonly fieldCurvatureMm: number;
  readonly curvatureAtSubjectUm: number;
  /** Frames that this depth adds to the one that a flat subject needs. */
  readonly extraFrames: number;
  /** Paraxial focus of each wavelength of the light from that of the pairing's wavelength, mm; positive: farther from the relay. */
  readonly axialColour: readonly { readonly wavelengthNm: number; readonly shiftMm: number }[];
  /** Greatest lateral colour over the picture, µm on the sensor, and in pixels. */
  readonly lateralColourUm: number;
  readonly lateralColourPixels: number;
}

/** The lens as it stands at an infinity space. */
export function studyOf(judging: Judging, infinitySpaceMm: number): Study {
  const way = judging.ways[judging.reversed ? 1 : 0];
  const setting = settingAt(judging, way, infinitySpaceMm);
  const near = way.cardinal.backFocalLengthMm;
  const fields = Array.from({ length: FIELD_POINTS }, (_, i) => {
    const radiusMm = (judging.cornerMm * i) / (FIELD_POINTS - 1);
    return { radiusMm, slope: radiusMm / setting.scaleMm, point: fieldPoint(setting, radiusMm / setting.scaleMm) };
  });
  const known = fields.flatMap(({ point }) => point ?? []);
  const flat = bestFocus(known).focusMm;
  const own = new Map(known.map((point) => [point, bestFocus([point]).focusMm]));
  const squares = fields.map(({ slope }) => blurOf(setting, slope));
  const leastBlur = worstBlur(squares.flatMap((square) => square ?? []))?.planeMm ?? near;
  const focused = (point: FieldPoint, focus: number, planeMm: number): Focused => ({
    sagittal: contrastAt(point.sagittal, focus),
    tangential: contrastAt(point.tangential, focus),
    // There is one wherever there is a blur.
    spot: spotDiagram(setting, point.slope, planeMm) as SpotDiagram,
  });
  const points = fields.map(({ radiusMm, slope, point }, i): Study['points'][number] => {
    const square = squares[i];
    if (!point || !square) return { radiusMm, slope };
    const focusMm = own.get(point) as number;
    const seen: SeenPoint = {
      oneFrame: focused(point, flat, leastBlur),
      stack: focused(point, focusMm, square.at),
      focusMm,
      light: relativeIllumination(setting.discs, slope),
      mappingFactor: mappingFactor(way.prescribed, setting.pupilDistanceMm, slope, way.cardinal.effectiveFocalLengthMm),
    };
    return { radiusMm, slope, seen };
  });
  const fieldCurvatureMm = spreadOf([...own.values()]);
  const curvatureAtSubjectUm = (UM_PER_MM * judging.subjectIndex * fieldCurvatureMm) / judging.magnification ** 2;
  const T = judging.depthOfFieldUm;
  const lateralColourUm = Math.max(0, ...points.map(({ seen }) => seen?.oneFrame.spot.lateralColourUm ?? 0));
  return {
    way,
    worst: spacingPoint(judging, way, infinitySpaceMm),
    pupilDistanceMm: setting.pupilDistanceMm,
    frequency: judging.frequency,
    points,
    flatFocusMm: flat,
    fieldCurvatureMm,
    curvatureAtSubjectUm,
    extraFrames: framesOf(curvatureAtSubjectUm, T, stepOf(T, USUAL_OVERLAP, 0)) - 1,
    axialColour: way.colours.prescriptions.map((lens, c) => ({
      wavelengthNm: (way.colours.wavelengthsMm[c] as number) / MM_PER_NM,
      shiftMm: cardinal(lens).backFocalLengthMm - near,
    })),
    lateralColourUm,
    lateralColourPixels: lateralColourUm / judging.pixelUm,
  };
}
