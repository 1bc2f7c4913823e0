import { amount, earned, numberIn, short } from '../../../core/index.ts';
import type { BuildSheet, SheetPart, TableEvaluation } from '../../../core/table.ts';

/** A piece where it stands: lengths in mm from the objective's shoulder toward the sensor. */
export interface Standing {
  readonly part: SheetPart;
  readonly from: number;
  readonly to: number;
}

/** The rig on the table as it is drawn, mm from the objective's shoulder. */
export interface Rig {
  readonly subject: number;
  readonly nose: number;
  /** Whether the objective is drawn at a length of its class for want of its own. */
  readonly supposed: boolean;
  readonly rim: number;
  readonly seat: number;
  readonly flange: number;
  readonly sensor: number;
  readonly onCamera: boolean;
  readonly front: readonly Standing[];
  readonly back: readonly Standing[];
}

/** Taken for the drawing alone where the objective's length is not known, mm. */
const DRAWN = { barrel: 40, working: 5 };

/** Where everything stands; undefined where the sensor's place is not known. */
export function rigOf({ answers, pairing, inputs }: TableEvaluation, sheet: BuildSheet): Rig | undefined {
  const rim = amount(pairing.infinitySpaceMm);
  const fromFlange = numberIn(answers.rimFromFlangeMm);
  const register = inputs.find(({ path }) => path === '/sensor/registerMm')?.value;
  if (fromFlange === undefined || register === undefined) return undefined;
  const flange = rim + fromFlange;
  const barrel = numberIn(answers.barrelLengthMm);
  const onCamera = pairing.relay.kind === 'camera-lens';
  const tube = numberIn(answers.tubeLengthMm);
  const seat = onCamera ? flange : flange - (tube ?? 0);
  const whole = numberIn(answers.subjectFromFlangeMm);
  const nose = -(barrel ?? DRAWN.barrel);
  return {
    subject: whole === undefined ? nose - DRAWN.working : flange - whole,
    nose,
    supposed: barrel === undefined || whole === undefined,
    rim,
    seat,
    flange,
    sensor: flange + register,
    onCamera,
    front: inARow(sheet, 'front', 0, rim),
    back: inARow(sheet, 'back', seat, flange),
  };
}

/** What stands beyond a gap stands against the far side, as the ring on the camera does whatever the tubes leave open. */
function inARow({ parts }: BuildSheet, side: 'front' | 'back', from: number, to: number): readonly Standing[] {
  const relay = parts.findIndex(({ role }) => role === 'relay');
  const own = side === 'front' ? parts.slice(1, relay) : parts.slice(relay + 1, -1);
  const gap = own.findIndex(({ role }) => role === 'missing' || role === 'mount');
  const [near, far] = gap < 0 ? [own, []] : [own.slice(0, gap), own.slice(gap)];
  const length = far.reduce((sum, { lengthMm = 0 }) => sum + lengthMm, 0);
  return [...laid(near, from), ...laid(far, to - length)].filter(({ part }) => part.role !== 'missing');
}

function laid(parts: readonly SheetPart[], from: number): readonly Standing[] {
  let at = from;
  return parts.map((part) => {
    const standing = { part, from: at, to: at + (part.lengthMm ?? 0) };
    at = standing.to;
    return standing;
  });
}

type Length = readonly [from: number, to: number, words: string];

/** The lengths that are written under the drawing: each part by itself, or every place from the camera's flange. */
export function lengthsOf(rig: Rig, { answers }: TableEvaluation, fromFlange: boolean, narrow: boolean): readonly Length[] {
  const { subject, nose, rim, seat, flange, sensor, onCamera, supposed } = rig;
  const mm = (x: number): string => `${short(x, 4)} mm`;
  const told = (
    id: 'tubeLengthMm' | 'rimFromFlangeMm' | 'shoulderFromFlangeMm' | 'subjectFromFlangeMm' | 'subjectToSensorMm' | 'barrelLengthMm',
  ): string => {
    const answer = answers[id];
    return answer.state === 'known' ? `${earned(answer.value, answer.low, answer.high)} mm` : '';
  };
  const all: readonly (readonly [number, number, string, string])[] = fromFlange
    ? [
        ...(onCamera ? [] : [[seat, flange, narrow ? 'seat' : 'to the relay’s seat', told('tubeLengthMm')] as const]),
        [rim, flange, narrow ? 'rim' : 'to the relay’s rim', told('rimFromFlangeMm')],
        [0, flange, narrow ? 'shoulder' : 'to the objective’s shoulder', told('shoulderFromFlangeMm')],
        ...(supposed ? [] : [[subject, flange, narrow ? 'subject' : 'to the subject', told('subjectFromFlangeMm')] as const]),
        [flange, sensor, 'register', mm(sensor - flange)],
      ]
    : [
        ...(supposed
          ? []
          : [[subject, nose, 'free', mm(nose - subject)] as const, [nose, 0, 'objective', told('barrelLengthMm')] as const]),
        [0, rim, narrow ? 'space' : 'infinity space', mm(rim)],
        [rim, seat, onCamera ? 'camera lens' : 'relay', mm(seat - rim)],
        ...(onCamera ? [] : [[seat, flange, 'tube', told('tubeLengthMm')] as const]),
        [flange, sensor, 'register', mm(sensor - flange)],
        ...(supposed ? [] : [[subject, sensor, narrow ? 'in all' : 'subject to sensor', told('subjectToSensorMm')] as const]),
      ];
  return all.filter(([from, to, , text]) => to > from && text !== '').map(([from, to, words, text]) => [from, to, `${words} ${text}`]);
}
