/** A wish with every limit but the covered share, which stands in the place of the subject's. */
export const WISH = {
  subject: { widthMm: 1.2, shareOfFrame: 0.5 },
  fieldWidthMm: [1, 3],
  magnification: [5, 12],
  finestDetailUm: 2,
  minWorkingDistanceMm: 10,
  lightingClearance: { depthMm: 12, minConeDeg: 30 },
  minCornerIllumination: 0.5,
  samplingRatio: [1, 2.5],
  maxLengthMm: 400,
} as const;
