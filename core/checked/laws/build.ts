import type { Law } from '../check.ts';
import { type Changes, told } from '../rig.ts';

/** Parfocal at 45 mm, a relay of 200 mm whose mount is 20 mm long, a camera with a register of 18 mm, a tube of 167 mm. */
const BUILT: Changes = {
  objective: { parfocalDistanceMm: 45, workingDistanceMm: 11 },
  sensor: { registerMm: 18 },
  table: { relayLengthMm: 20, seatBehindGlassMm: 3, builtTubeMm: 167 },
};

export const BUILD_LAWS: readonly Law[] = [
  {
    law: 'a tube is what a relay of 200 mm leaves behind its mount and before the camera: 200 - 20 - 18, and 5 built over',
    figures: ['focusBehindRelayMm', 'tubeLengthMm', 'builtTooLongMm'],
    pairs: () => [
      [told(BUILT, 'focusBehindRelayMm'), 180],
      [told(BUILT, 'tubeLengthMm'), 162],
      [told({ ...BUILT, sensorOffsetMm: -2 }, 'tubeLengthMm'), 160],
      [told(BUILT, 'builtTooLongMm'), 5],
      [told({ ...BUILT, relay: { backFocalLengthMm: 190 } }, 'focusBehindRelayMm'), 187],
    ],
  },
  {
    law: 'places count from the flange or from the sensor, and lie a register apart',
    figures: ['rimFromFlangeMm', 'shoulderFromFlangeMm', 'subjectFromFlangeMm', 'subjectToSensorMm', 'barrelLengthMm'],
    pairs: () => [
      [told(BUILT, 'rimFromFlangeMm'), 182],
      [told(BUILT, 'shoulderFromFlangeMm'), 232],
      [told(BUILT, 'subjectFromFlangeMm'), 277],
      [told(BUILT, 'subjectToSensorMm'), 277 + 18],
      [told(BUILT, 'barrelLengthMm'), 34],
      [told(BUILT, 'subjectToSensorMm') - told(BUILT, 'totalLengthMm'), 45],
    ],
  },
];
