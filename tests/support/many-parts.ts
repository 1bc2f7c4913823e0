import type { Objective, Relay } from '../../core/index.ts';
import { random } from './random.ts';

/** As many different objectives and relays without glass as are asked for, such as could be made. */
export function manyParts(count: number, seed = 7_001): { objectives: { part: Objective }[]; relays: { part: Relay }[] } {
  const r = random(seed);
  const objectives = Array.from({ length: count }, (): { part: Objective } => {
    const magnification = r.oneOf([2, 4, 5, 7.5, 10, 20, 40]) * r.between(0.98, 1.02);
    return {
      part: {
        magnification,
        na: Math.min(0.9, magnification * r.between(0.012, 0.03)),
        referenceFocalLengthMm: r.oneOf([200, 180, 165, 164.5]),
        fieldNumberMm: r.between(18, 30),
        workingDistanceMm: r.between(2, 40),
        parfocalDistanceMm: r.oneOf([45, 60, 95]),
      },
    };
  });
  const relays = Array.from({ length: count }, (): { part: Relay } => {
    const kind = r.oneOf(['supplementary', 'tube-lens', 'camera-lens'] as const);
    const focalLengthMm = r.between(85, 400);
    return {
      part: {
        kind,
        focalLengthMm,
        clearApertureMm: r.between(20, 70),
        ...(kind === 'camera-lens' ? { fNumber: r.between(2, 8) } : {}),
        ...(r.chance(0.3) ? { imageCircleMm: r.between(25, 60) } : {}),
      },
    };
  });
  return { objectives, relays };
}
