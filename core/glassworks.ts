/**
 * The relay's glass, as a contents page of its own: the page fetches it when a relay with glass turns up.
 */

export { photopic, type Spectrum } from './diffraction/spectrum.ts';
export { GLASS_NAMES, glassNamed } from './glass/glasses.ts';
export { abbeNumber, indexAtLine } from './glass/lines.ts';
// Glass and light.
export { AIR, type Medium, plainIndex, WavelengthError } from './glass/medium.ts';
export { type Advice, adviceOf, type Over } from './lens/advice.ts';
export { type Band, type BandPoint, bandOf, type Candidate, type Tried, trying } from './lens/band.ts';
export { contrastAgainstDetail, type DetailPoint, type DetailQuestion } from './lens/detail.ts';
export { type ClassFamily, familyTold } from './lens/family.ts';
// A relay's glass in a pairing.
export { glassworks } from './lens/glassworks.ts';
export { type Hurrying, hurrying } from './lens/hurried.ts';
export { type Judging, judgingOf, pupilDoubtOf, SHARP_OVER, type SharpOver } from './lens/judging.ts';
export { familyOf, isMade, MADE_KINDS, type MadeKind, type MadeLens, madeLens, making, type Residuals, triedFamily } from './lens/made.ts';
export { clearDiameter, lensOfRelay, listedLens, statedFocalLength } from './lens/relay-lens.ts';
export { firstSide, standing, threadOf } from './lens/sides.ts';
export { FIELD_POINTS, type Places, type SpacingPoint, spacings } from './lens/spacing.ts';
export { type Focused, type SeenPoint, type Study, studyOf } from './lens/study.ts';
export { tracedRelay } from './lens/traced.ts';
export { type Beam, beam, launch, type PupilPoints } from './trace/beam.ts';
export { type Cardinal, cardinal } from './trace/cardinal.ts';
// Aberrations by theory.
export { closeFoci, closePencil } from './trace/coddington.ts';
export { colourBySurface, colourFringes, colourSums } from './trace/colour.ts';
// A lens and its rays.
export { inRow, type Lens, lengthOf, rangeOf, reversed, scaled, widestSemiApertures } from './trace/lens.ts';
export { mappingFactor } from './trace/mapping.ts';
export { rayPair } from './trace/paraxial-rays.ts';
export { ringsAndSpokes } from './trace/points.ts';
export { type Prescription, prescription } from './trace/prescription.ts';
// A relay's glass by itself, traced over the field.
export { FOCUS_PLANES, type ImageQuality } from './trace/quality.ts';
export { CLIPPED, MISSED, type Rays, REFLECTED, rays, THROUGH, trace } from './trace/rays.ts';
export { fieldCurves, pupilShifted, seidelBySurface, seidelSums, transverse } from './trace/seidel.ts';
export { sag } from './trace/surface.ts';
