import { steps } from '../../core/index.ts';

/**
 * How each number that may be a guess is found out at the kitchen table. Common practice of the trade,
 * from memory, without a source; makers' papers outrank all of it.
 *
 * These words are needed only when someone asks: they stand here, in a piece of the page that is fetched
 * then, and not beside the names in `core/pairing/phrases.ts`, which every first answer carries.
 */
export interface HowTo {
  /** What it takes. */
  readonly takes: string;
  /** One to three short sentences. */
  readonly how: string;
}

const NEVER = 'Never the sun, a bright lamp or a laser.';

/** By the last step of the path: the same name means the same thing in every part. */
const HOW: Readonly<Record<string, HowTo>> = {
  magnification: {
    takes: 'a relay whose focal length you know, a ruler in the picture',
    how: "Photograph a ruler; from about 5× up the rows of a phone's screen, which are 25.4 mm divided by its pixels per inch apart. The width of the sensor over the width seen is the magnification of the pairing: times the tube-lens focal length, over the relay's, it is the objective's own.",
  },
  na: {
    takes: 'the barrel; to check it a window and a caliper',
    how: `It is engraved after the magnification: 0.25 in 10x/0.25. To check it hold the front close to a bright overcast window, look into the back from arm's length and measure the bright disc across: that, over twice the objective's focal length, is the aperture, good to about 5 %. ${NEVER}`,
  },
  referenceFocalLengthMm: {
    takes: "the barrel or the maker's papers",
    how: 'The ∞ on the barrel does not say it: look for the tube-lens focal length that the magnification is told for, mostly 200, 180, 165 or 164.5 mm.',
  },
  fieldNumberMm: {
    takes: "the maker's papers, or the eyepiece that the objective was sold with",
    how: "It is listed for the objective, or engraved on its eyepiece as FN 22 or after a slash, 10x/22. Without either, photograph a flat print and find the diameter on the sensor within which it stays crisp: that, times the tube-lens focal length that the engraving is for, over the relay's, goes in as the field that you tested good.",
  },
  testedFieldMm: {
    takes: 'a printed page or a ruler, flat and square to the axis',
    how: "Focus on the middle, photograph it, and find the diameter on the sensor within which it stays crisp and free of colour. Times the engraving's tube-lens focal length, over the relay's, it is the number.",
  },
  exitPupilFromShoulderMm: {
    takes: 'a window, and a loupe or a camera close up, its focus left alone',
    how: `Point the front at a bright overcast window and look into the back: the bright disc is the exit pupil. Slide the camera along a ruler until the disc's rim is sharp, then until the shoulder is: the slide between is the number, with a plus where the disc stands out toward the camera. ${NEVER} Or photograph an even surface at two spacings: the light in the corners shows it too.`,
  },
  focalLengthMm: {
    takes: 'the objective, and a ruler in the picture',
    how: "Set the relay to infinity and photograph a ruler; from about 5× up the rows of a phone's screen, which are 25.4 mm divided by its pixels per inch apart. The width of the sensor over the width seen is the magnification, and the relay's focal length is that times the objective's.",
  },
  powerDioptre: {
    takes: 'a sheet of paper, a ruler, and a building at least 100 m away',
    how: "Let the lens alone cast the sharp picture of a building at least 100 m away onto paper, and measure lens to paper: 1000 over those mm are the dioptres, a few mm in doubt for where in the glass they count from. Of anything nearer add 1000 over its distance in mm: across a street of 15 m that is 0.07 dioptres, 7 % of a lens of 1. Surer is a ruler photographed through the whole pairing: its magnification times the objective's focal length is that of the lens. Never the sun: it burns.",
  },
  workingDistanceMm: {
    takes: 'a ruler or a depth rod, and a subject that can take a knock',
    how: 'It is listed for the objective, often engraved as WD. To check it focus on something flat and measure from it to the foremost part of the nose, metal included. Come from far away and watch from the side: the nose crashes easily.',
  },
  parfocalDistanceMm: {
    takes: 'a ruler',
    how: 'Focus on something flat and measure from it to the shoulder on which the objective seats, where its thread begins: mostly 45, 60 or 95 mm.',
  },
  coverGlassMm: {
    takes: 'the barrel',
    how: 'It is engraved after the stroke: ∞/0.17 is made for a cover glass of 0.17 mm, ∞/0 for none, ∞/– for either.',
  },
  noseDiameterMm: {
    takes: 'a caliper',
    how: 'Measure across the foremost part of the barrel, the one that ends nearest to the subject. Do not touch the glass with the jaws.',
  },
  rimToSensorMm: {
    takes: 'a ruler',
    how: 'Set the lens to infinity and measure from its front rim, hood and filters off, to the mark of the sensor on top of the camera, a line through a circle.',
  },
  clearApertureMm: {
    takes: 'a caliper or a ruler',
    how: 'Measure across the glass inside its ring on the side toward the objective: of a camera lens that alone counts, as its aperture is told by itself. Of a close-up lens or a tube lens measure inside the ring on the other side too, and take the narrower. Do not touch the glass with the jaws.',
  },
  entrancePupilDiameterMm: {
    takes: 'a ruler, a sheet of white paper, and a camera with a long lens or a tape',
    how: "With the aperture as it will be set, let daylight on paper shine in from the camera's side, lay the ruler across the front rim and read the bright disc on it: that is the entrance pupil. It lies behind the rim and so reads too small from near by, at 600 mm by 13 % where it is 90 mm deep: photograph disc and ruler with a long lens from 5 m or more, or multiply by (distance + depth) / distance, both from the rim.",
  },
  fNumber: {
    takes: 'the lens as it will be used',
    how: 'Read it where it is set, on the ring or on the camera. At its widest it is the number engraved on the front; of a zoom, the one for the length as set.',
  },
  entrancePupilDepthMm: {
    takes: 'a camera close up, its focus left alone, and a ruler',
    how: 'Close the aperture by a stop or two so that its edge shows, and look into the front. Slide the camera along the ruler until the front rim is sharp, then until the edge of the aperture is: the slide between is its depth.',
  },
  imageCircleMm: {
    takes: "the maker's papers, or the name of the widest format that the lens is made for",
    how: "A lens is good to the corners of its format at least: take the format's diagonal, 43.3 mm for 36 × 24. A close-up lens has no rating: test it with a flat print at two places in the picture.",
  },
  frontPrincipalPlaneFromRimMm: {
    takes: 'a sheet of paper, a ruler, and something far away',
    how: "Turn the relay round, its front toward the paper, and let it cast the picture of something very far away. Measure from the front rim to the paper: the relay's focal length less that is how far the plane lies behind the rim. Never the sun: it burns.",
  },
  infinitySpaceMm: {
    takes: 'a ruler or a caliper',
    how: "With everything screwed together measure from the objective's shoulder, where it seats and its thread begins, to the front rim of the relay.",
  },
  sensorOffsetMm: {
    takes: 'something far away, and the rig without the objective',
    how: 'Photograph something a hundred metres off or more through the relay alone. If it is sharp the number is 0; else change the tubes until it is: what had to be taken out is a plus, what had to be put in a minus. Never the sun.',
  },
  widthMm: { takes: "the camera's papers", how: "Take the sensor's size in mm from the table of data, not from the name of the format." },
  heightMm: { takes: "the camera's papers", how: "Take the sensor's size in mm from the table of data, not from the name of the format." },
  pixelPitchUm: {
    takes: "the camera's papers",
    how: "The sensor's width in mm over the pixels in a row of its largest picture, times 1000.",
  },
  diameterMm: { takes: 'a caliper', how: 'Measure the narrowest place inside the ring or tube, threads and glare stops included.' },
  fromShoulderMm: {
    takes: 'a ruler or the depth rod of a caliper',
    how: "Measure along the axis from the objective's shoulder to the narrowest place of the ring, with a plus toward the relay.",
  },
  fromSensorMm: {
    takes: "a ruler, and the mount's register",
    how: 'Measure along the axis from the narrowest place of the tube to the face of the mount and add the register. Many cameras mark the plane of the sensor on top with a line through a circle.',
  },
  throatDiameterMm: {
    takes: 'a caliper, gently',
    how: "Measure across the mount's opening at its narrowest, bayonet tabs left out. Stay in front of it: never reach toward the shutter or the sensor.",
  },
  registerMm: {
    takes: "the camera's papers or any table of mounts",
    how: 'It is a fixed number of each mount, from its face to the sensor; a camera that has left its maker is good to some hundredths of a mm.',
  },
};

/** How what stands at a path is found out; undefined where nothing is written about it. */
export const howTo = (path: string): HowTo | undefined => HOW[steps(path).at(-1) ?? ''];
