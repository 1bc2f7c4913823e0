import { amount } from '../parts/quantity.ts';
import type { Evaluation } from './evaluate.ts';

/** Visible light, nm (ISO 20473 begins it at 380 and ends it at 780). */
const VIOLET = 380;
const RED = 780;
/** Above this aperture a wrong or missing cover glass is seen (common practice, without source). */
const COVER_GLASS_MATTERS = 0.3;
/** How the general word on cover glass begins: where the cover glass is told, what it does stands in its place. */
export const COVER_GLASS_CAUTION = 'Engraved for a cover glass';
/** Closer than this a nudge of the focus puts the front lens into the subject, mm. */
const CLOSE = 3;

/** Short cautions for this pairing: what can hurt eyes, parts or the picture, and what no figure here sees. */
export function cautionsOf({ pairing }: Evaluation): string[] {
  const { objective, relay, wavelengthNm: nm } = pairing;
  const when = (holds: boolean | undefined, text: string): string[] => (holds ? [text] : []);
  return [
    ...when(
      nm !== undefined && nm < VIOLET,
      'Ultraviolet light harms eyes and skin and cannot be seen: shield the lamp and follow its maker and local safety rules.',
    ),
    ...when(
      nm !== undefined && nm > RED,
      'Infrared light cannot be seen and can harm eyes: follow the maker of the lamp and local safety rules.',
    ),
    ...when(
      objective.tubeLensCorrectsColour,
      "This objective is free of colour fringes only with its maker's own tube lens: with a neutral relay they show toward the corners.",
    ),
    ...when(
      objective.coverGlassMm !== undefined && amount(objective.coverGlassMm) > 0 && amount(objective.na) > COVER_GLASS_MATTERS,
      `${COVER_GLASS_CAUTION} of ${amount(objective.coverGlassMm ?? 0)} mm: without it the picture is softer than these figures.`,
    ),
    ...when(
      objective.workingDistanceMm !== undefined && amount(objective.workingDistanceMm) < CLOSE,
      'The front lens stands within 3 mm of the subject: approach from below the focus and watch from the side.',
    ),
    ...when(
      relay.glass !== undefined,
      "How sharp the picture is counts the relay's glass alone: the objective is taken as perfect, and its own colours and curved field come on top.",
    ),
    ...when(
      relay.glass !== undefined && amount(pairing.sensorOffsetMm ?? 0) !== 0,
      "The glass is traced with the relay set to infinity, whatever the sensor's distance from its focus.",
    ),
    ...when(
      objective.flatField === false,
      "The objective's own field is curved, which no figure here counts: the corners need frames of their own.",
    ),
  ];
}
