import { z } from 'zod';
import { C_MOUNT, filterThread, M25, M26, M27, M32, M42, M42_FINE, RMS, STEP_SIZES } from './known.ts';
import { readThread } from './read.ts';
import { type End, endWords, minorDiameter, SEXES, type Sex, type Thread } from './thread.ts';

/** A thread in a request: text that names one thread. */
export const threadText = z
  .string()
  .min(1)
  .max(60)
  .superRefine((text, context) => {
    const read = readThread(text);
    if ('fault' in read) context.addIssue({ code: 'custom', message: read.fault, params: { code: 'notAThread', expected: read.expected } });
  });

export const endSchema = z.strictObject({ thread: threadText, sex: z.enum(SEXES) }).superRefine(({ thread, sex }, context) => {
  const read = readThread(thread);
  if ('fault' in read || read.sex === undefined || read.sex === sex) return;
  context.addIssue({
    code: 'custom',
    path: ['sex'],
    message: `is ${sex}, and the thread is written as ${read.sex}`,
    params: { code: 'contradicts', expected: read.sex },
  });
});

const lengthMm = z.number().min(0).max(500);
const clearMm = z.number().min(0.1).max(300);
const partName = z.string().min(1).max(120);

/** A ring with a thread on each side, usable either way round. */
export const adapterSchema = z.strictObject({
  name: partName.optional(),
  ends: z.tuple([endSchema, endSchema]),
  lengthMm: lengthMm.optional(),
  clearMm: clearMm.optional(),
  owned: z.boolean().optional(),
});

/** A tube that is female on one side and male on the other, in one thread; `reachMm` is how much longer it can be turned. */
export const tubeSchema = z.strictObject({
  name: partName.optional(),
  thread: threadText,
  lengthMm,
  reachMm: z.number().min(0).max(300).optional(),
  clearMm: clearMm.optional(),
});

/** Something with an end on each side that is screwed between others. */
export interface Piece {
  readonly name: string;
  readonly ends: readonly [End, End];
  /** From seat to seat. */
  readonly lengthMm: number;
  /** False where the length is taken as usual. */
  readonly lengthKnown: boolean;
  readonly clearMm: number;
  readonly clearKnown: boolean;
  readonly owned: boolean;
}

/** A piece whose length can be turned from `lengthMm` to `lengthMm + reachMm`, 0 of a plain tube. */
export interface Tube extends Piece {
  readonly reachMm: number;
}

/** From seat to seat of a ring whose length is not told, mm (common practice, without source). */
const USUAL_RING = 3;
/** A male thread's wall takes so much of what is open within its root, mm (common practice, without source). */
const WALL = 2;

/** What the narrower end leaves open, where no opening is told, mm. */
const openingOf = (ends: readonly End[]): number =>
  Math.min(...ends.map(({ thread, sex }) => Math.max(minorDiameter(thread) / 2, minorDiameter(thread) - (sex === 'male' ? WALL : 0))));

const threadOf = (text: string): Thread => {
  const read = readThread(text);
  if ('fault' in read) throw new RangeError(`${text} ${read.fault}`);
  return read.thread;
};

export const endOf = ({ thread, sex }: z.infer<typeof endSchema>): End => ({ thread: threadOf(thread), sex });

type Told = { name?: string | undefined; lengthMm?: number | undefined; clearMm?: number | undefined };
const piece = (ends: readonly [End, End], owned: boolean, told: Told): Piece => ({
  name: told.name ?? `ring, ${endWords(ends[0])} to ${endWords(ends[1])}`,
  ends,
  lengthMm: told.lengthMm ?? USUAL_RING,
  lengthKnown: told.lengthMm !== undefined,
  clearMm: told.clearMm ?? openingOf(ends),
  clearKnown: told.clearMm !== undefined,
  owned,
});

export const adapterOf = ({ ends: [a, b], owned = true, ...told }: z.infer<typeof adapterSchema>): Piece =>
  piece([endOf(a), endOf(b)], owned, told);

const tube = (thread: Thread, owned: boolean, reachMm: number, told: Told): Tube => ({
  ...piece(
    [
      { thread, sex: 'female' },
      { thread, sex: 'male' },
    ],
    owned,
    { ...told, name: told.name ?? `${reachMm > 0 ? 'focusing tube' : 'tube'} ${thread.label}` },
  ),
  reachMm,
});

export const tubeOf = ({ thread, reachMm = 0, ...told }: z.infer<typeof tubeSchema>): Tube => tube(threadOf(thread), true, reachMm, told);

const OBJECTIVE_THREADS = [RMS, M25, M26, M27, M32];
const ring = (a: Thread, sexA: Sex, b: Thread, sexB: Sex, name?: string): Piece =>
  piece(
    [
      { thread: a, sex: sexA },
      { thread: b, sex: sexB },
    ],
    false,
    { name },
  );

/** Step rings are made for sizes this many places apart in their row. */
const STEPS_APART = 5;
const REVERSING = [49, 52, 55, 58].map(filterThread);
const COUPLED = [49, 52, 55, 58, 62, 67, 72, 77].map(filterThread);

/** Rings that can be bought: common practice, without source. */
export const COMMON_RINGS: readonly Piece[] = [
  ...OBJECTIVE_THREADS.flatMap((thread) => [M42, ...[49, 52, 58].map(filterThread)].map((to) => ring(thread, 'female', to, 'male'))),
  ...[M25, M26, M27].map((to) => ring(RMS, 'female', to, 'male')),
  ...STEP_SIZES.flatMap((male, i) =>
    STEP_SIZES.flatMap((female, j) =>
      i === j || Math.abs(i - j) > STEPS_APART
        ? []
        : [ring(male, 'male', female, 'female', `step ring, ${male.diameterMm} male to ${female.diameterMm} female`)],
    ),
  ),
  ...COUPLED.map((size) => ring(size, 'male', size, 'male', `coupling ring, ${size.diameterMm} male to ${size.diameterMm} male`)),
  ...COUPLED.map((size) => ring(size, 'female', size, 'female', `coupling ring, ${size.diameterMm} female to ${size.diameterMm} female`)),
  ...REVERSING.map((size) => ring(M42, 'male', size, 'male', `reversing ring, male M42 x 1 to male ${size.diameterMm}`)),
  ...REVERSING.flatMap((size) => [ring(M42, 'male', size, 'female'), ring(M42, 'female', size, 'male')]),
  ring(M42, 'female', M42_FINE, 'male'),
  ring(M42_FINE, 'female', M42, 'male'),
  ring(M42_FINE, 'female', C_MOUNT, 'male'),
];

/** Tubes that can be bought, by thread: lengths, mm, and focusing tubes from and to (common practice, without source). */
const COMMON_LENGTHS = [
  [
    M42,
    [7, 14, 28],
    [
      [17, 31],
      [25, 55],
      [36, 90],
    ],
  ],
  [M42_FINE, [5, 10, 15, 20, 30, 40], []],
] as const;

export const COMMON_TUBES: readonly Tube[] = COMMON_LENGTHS.flatMap(([thread, lengths, focusing]) => [
  ...lengths.map((length) => tube(thread, false, 0, { lengthMm: length })),
  ...focusing.map(([from, to]) => tube(thread, false, to - from, { lengthMm: from })),
]);
