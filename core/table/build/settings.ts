import { setting } from '../setting.ts';

export const relayLength = setting({
  key: 'relayLengthMm',
  symbol: 'l_m',
  unit: 'mm',
  words: "length of the relay's mount, from its front rim to the seat behind that the tube screws against",
  bounds: [0, 500],
  standing: { value: 15, plusMinus: 12, why: 'a close-up or tube lens in its mount is taken as 3 to 27 mm long' },
});

export const seatBehindGlass = setting({
  key: 'seatBehindGlassMm',
  symbol: 'l_g',
  unit: 'mm',
  words: "from the relay's last surface, where a back focal length begins, to the seat behind; positive toward the camera",
  bounds: [-100, 100],
  standing: { value: 2, plusMinus: 3, why: 'the seat is taken a little behind the glass' },
});

export const builtTube = setting({
  key: 'builtTubeMm',
  symbol: 'T_b',
  unit: 'mm',
  words: "the tube as it was built, from the relay's seat to the camera's flange",
  bounds: [0, 2000],
});

export const SETTINGS = [relayLength, seatBehindGlass, builtTube] as const;
