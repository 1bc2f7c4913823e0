import { Gap } from '../figure.ts';
import { amount } from '../parts/quantity.ts';
import { type Entries, entries } from './entered/entries.ts';
import { enterMapping } from './entered/mapping.ts';
import { enterObjective } from './entered/objective.ts';
import { enterRelay } from './entered/relay.ts';
import { enterRings } from './entered/rings.ts';
import { enterSensor } from './entered/sensor.ts';
import type { GlassRelay } from './glassworks.ts';
import type { Inputs } from './input.ts';
import * as leaves from './leaves.ts';
import { DEFAULTS, type Pairing } from './schema.ts';

/**
 * Every leaf's value, with guesses in the place of what is not known and why.
 *
 * @param glass the relay's glass worked out; its focal length and principal plane stand in for what is not measured
 */
export function inputsOf(pairing: Pairing, glass?: GlassRelay): Inputs {
  const entered = entries();
  enterObjective(entered, pairing.objective);
  enterRelay(entered, pairing.relay, glass);
  enterSensor(entered, pairing.sensor);
  entered.take(leaves.infinitySpace, 'infinitySpaceMm', '/infinitySpaceMm', pairing.infinitySpaceMm);
  entered.take(leaves.sensorOffset, 'sensorOffsetMm', '/sensorOffsetMm', pairing.sensorOffsetMm ?? DEFAULTS.sensorOffsetMm);
  enterRings(entered, pairing);
  settle(entered, pairing);
  enterMapping(entered, pairing, glass);
  return { values: entered.values, list: entered.list };
}

/** What is chosen and has no ±. */
function settle({ values }: Entries, pairing: Pairing): void {
  const immersion = amount(pairing.objective.immersionIndex ?? DEFAULTS.immersionIndex);
  values.set(leaves.wavelength, pairing.wavelengthNm ?? DEFAULTS.wavelengthNm);
  values.set(leaves.litThreshold, pairing.litThreshold ?? DEFAULTS.litThreshold);
  values.set(leaves.subjectWidth, pairing.subject?.widthMm ?? Gap.unknown('/subject/widthMm'));
  values.set(leaves.subjectHeight, pairing.subject?.heightMm ?? Gap.unknown('/subject/heightMm'));
  values.set(leaves.subjectDepth, pairing.subject?.depthMm ?? Gap.unknown('/subject/depthMm'));
  values.set(leaves.immersion, immersion);
  values.set(leaves.subjectIndex, pairing.subject?.index ?? immersion);
  values.set(leaves.depthConvention, pairing.depth?.convention ?? DEFAULTS.depthConvention);
  values.set(leaves.givenBlur, pairing.depth?.blurUm ?? Gap.unknown('/depth/blurUm'));
  const { relativeContrast, frequency, focus, spectrum } = pairing.sharp ?? {};
  values.set(leaves.sharpContrast, relativeContrast ?? DEFAULTS.relativeContrast);
  values.set(leaves.givenDetail, frequency ?? Gap.unknown('/sharp/frequency'));
  values.set(leaves.sharpFocus, focus ?? DEFAULTS.sharpFocus);
  values.set(leaves.sharpSpectrum, spectrum ?? DEFAULTS.sharpSpectrum);
}
