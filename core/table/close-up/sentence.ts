import { type Answer, numberIn } from '../../pairing/answer.ts';
import { amount, type QuantityInput } from '../../parts/quantity.ts';
import { article, capital, earned, listed, short } from '../../words.ts';
import type { TableEvaluation } from '../evaluate.ts';
import type { TableFigureId } from '../groups.ts';

type Told = (id: TableFigureId<'closeUp'>) => Answer;

/** A known answer with the digits that it earns; undefined where it is not known. */
function digits(answer: Answer): string | undefined {
  return answer.state === 'known' ? earned(answer.value, answer.low, answer.high, 3) : undefined;
}

const distance = (answer: Answer): string => `${digits(answer)} mm`;
const times = (answer: Answer): string => `${digits(answer)}×`;

/** What the close-up lens does on the camera lens, and tubes in its place, in words. */
export function closeUpSays({ answers, settings }: Pick<TableEvaluation, 'answers' | 'settings'>): string[] {
  const told: Told = (id) => answers[id];
  const focal = told('closeUpFocalMm');
  if (focal.state !== 'known')
    return [
      focal.state === 'none'
        ? `${capital(focal.why)}.`
        : 'The focal length of the close-up lens is not known: tell it, or its power in dioptres.',
    ];
  const lens = settings.secondPowerDioptre === undefined ? 'the close-up lens' : 'the pair of close-up lenses';
  const own = numberIn(told('closeUpFarMagnification'));
  if (own === undefined) return [withoutCamera(focal.value, lens, told)];
  return [band(lens, told, settings), tubes(told), ...rim(told)];
}

/** How long a camera lens is taken as an example. */
const EXAMPLE_MM = 200;

function withoutCamera(f: number, lens: string, told: Told): string {
  const size = short(EXAMPLE_MM / f, 2);
  return `On any camera lens set to infinity ${lens} is sharp at ${distance(told('closeUpFarthestMm'))}; a lens of ${EXAMPLE_MM} mm shows that at ${size}×. Tell which lens it goes on.`;
}

function band(lens: string, told: Told, settings: TableEvaluation['settings']): string {
  const [farthest, far, nearest, near] = [
    told('closeUpFarthestMm'),
    told('closeUpFarMagnification'),
    told('closeUpNearestMm'),
    told('closeUpNearMagnification'),
  ];
  const focal = short(amount(settings.cameraFocalLengthMm as QuantityInput), 3);
  const sharp = `${capital(article(focal))} ${focal} mm lens with ${lens} is sharp`;
  const ends = `${distance(farthest)} at ${times(far)}`;
  if (nearest.state === 'unknown') return `${sharp} at no more than ${ends}. How near it comes hangs on its closest focus: tell that.`;
  if (nearest.state !== 'known') return `${sharp} at no more than ${ends}.`;
  const least = near.state === 'known' ? ` at ${times(near)}` : '';
  return `${sharp} from ${distance(nearest)}${least} to ${ends}.${toMeasure(near, settings)}`;
}

/** What would settle the nearest focus where it is not measured. */
function toMeasure(near: Answer, { cameraMagnification, cameraSubjectDistanceMm }: TableEvaluation['settings']): string {
  if (near.state !== 'known') return ' How large it shows that, a ruler photographed at its nearest focus tells.';
  const missing = [
    ...(cameraMagnification === undefined ? ['photograph a ruler there without the close-up lens'] : []),
    ...(cameraSubjectDistanceMm === undefined ? ["measure how far the subject stands from the lens's rim"] : []),
  ];
  return missing.length > 0 ? ` Its nearest focus is partly guessed: ${listed(missing)}.` : '';
}

function tubes(told: Told): string {
  const [extension, cost, room, size] = [
    told('tubesFarExtensionMm'),
    told('tubesFarCostEv'),
    told('tubesFarDistanceMm'),
    told('closeUpFarMagnification'),
  ];
  const left = room.state === 'known' ? `, leave ${distance(room)} free` : '';
  return `Tubes for the same ${times(size)} are ${distance(extension)} long${left} and cost ${digits(cost)} stops; the close-up lens costs none.`;
}

/** Only where the rim surely cuts. */
function rim(told: Told): string[] {
  const room = told('closeUpRoomMm');
  if (room.state !== 'known' || (room.high ?? Number.POSITIVE_INFINITY) >= 0) return [];
  return [`The rim of the close-up lens is ${short(-room.value, 2)} mm too narrow for the corners: they grow dark.`];
}
