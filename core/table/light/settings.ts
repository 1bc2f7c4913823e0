import { setting } from '../setting.ts';

export const noseFront = setting({
  key: 'noseFrontDiameterMm',
  symbol: 'D_v',
  unit: 'mm',
  words: "width of the nose's very end; without a taper's length the whole nose is taken to be as wide",
  bounds: [0.1, 200],
});

export const noseTaper = setting({
  key: 'noseTaperLengthMm',
  symbol: 'l_v',
  unit: 'mm',
  words: 'from the end of the nose up to where it has its whole width',
  bounds: [0, 200],
  usual: 0,
});

export const inTheWay = setting({
  key: 'inTheWayMm',
  symbol: 'w_c',
  unit: 'mm',
  words: 'what stands up before the front of the subject: a cover glass, the rim of a dish, a pin',
  bounds: [0, 200],
  usual: 0,
});

export const diffuserDiameter = setting({
  key: 'diffuserDiameterMm',
  symbol: 'D_d',
  unit: 'mm',
  words: 'outer width of the diffuser where it stands',
  bounds: [0.1, 500],
});

export const diffuserTop = setting({
  key: 'diffuserTopDiameterMm',
  symbol: 'D_t',
  unit: 'mm',
  words: 'outer width of the diffuser at its top, if it is a cone',
  bounds: [0.1, 500],
});

export const diffuserHeight = setting({
  key: 'diffuserHeightMm',
  symbol: 'H_d',
  unit: 'mm',
  words: "height of the diffuser above the plane of the subject's back",
  bounds: [0.1, 500],
});

export const diffuserThickness = setting({
  key: 'diffuserThicknessMm',
  symbol: 'b_d',
  unit: 'mm',
  words: "thickness of the diffuser's wall: next to nothing for paper",
  bounds: [0, 50],
  usual: 0,
});

export const SETTINGS = [noseFront, noseTaper, inTheWay, diffuserDiameter, diffuserTop, diffuserHeight, diffuserThickness] as const;
