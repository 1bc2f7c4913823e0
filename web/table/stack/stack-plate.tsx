import { earned, numberIn, short } from '../../../core/index.ts';
import { byConvention } from '../../../core/table.ts';
import { silhouette } from '../../plates/silhouette.ts';
import { useWidth } from '../../plates/width.ts';
import { tabled } from '../tabled.ts';
import { combOf, slabsOf } from './comb.ts';

const PAD = 16;
/** Frames that are drawn closer, and the height of each, px. */
const SLABS = 4;
const SLAB = 17;
const SUBJECT = 92;
const HEAD = 26;
const HEIGHT = HEAD + SUBJECT + 52 + SLABS * SLAB + 50;

/** The subject from its front to its back with a line for each frame, and under it the first frames closer. */
export function StackPlate() {
  const [box, width] = useWidth(900);
  const { answers, pairing } = tabled.value;
  const frames = numberIn(answers.framesInAll);
  const step = numberIn(answers.frameStepUm);
  const depth = byConvention(tabled.value).find(({ chosen }) => chosen)?.depthUm;
  const subject = 1000 * (pairing.subject?.depthMm ?? 0);
  if (frames === undefined || step === undefined || depth === undefined || !(subject > 0) || frames < 2) return null;

  const { low, high } = answers.frameStepUm as { low?: number; high?: number };
  const toldStep = earned(step, low, high);
  const wide = Math.min(width, 760) - 2 * PAD;
  const reach = Math.max(subject, (frames - 1) * step + depth);
  const x = (um: number): number => PAD + (um / reach) * wide;
  const { lines, every } = combOf(frames, step, depth, subject, (subject / reach) * wide);
  const slabs = slabsOf(frames, step, depth, SLABS);
  const near = (slabs.at(-1)?.to ?? depth) * 1.02;
  const close = (um: number): number => PAD + (um / near) * wide;
  const base = HEAD + SUBJECT + 52;
  const foot = base + SLABS * SLAB;
  const drawn = subject / reach;
  const caption = `${every === 1 ? 'Each line is a frame' : `One line for every ${every} frames`}, from the front of the subject on the left to its back. Below, the first ${slabs.length} closer: each is ${short(depth)} µm deep, ${toldStep} µm after the one before, and they share ${short(Math.max(0, depth - step))} µm.`;
  return (
    <figure class="plate stack-plate" ref={box} aria-labelledby="stack-caption">
      <svg width={wide + 2 * PAD} height={HEIGHT} viewBox={`0 0 ${wide + 2 * PAD} ${HEIGHT}`} role="img" aria-labelledby="stack-caption">
        <title>The frames of the stack</title>
        <path
          class="outline"
          d={silhouette(wide * drawn, SUBJECT)}
          transform={`translate(${PAD + (wide * drawn) / 2} ${HEAD + SUBJECT / 2})`}
        />
        <path class="frames" d={lines.map((at) => `M${round(x(at * subject))} ${HEAD - 4}v${SUBJECT + 8}`).join('')} />
        <Measure from={x(0)} to={x(subject)} y={HEAD - 12} words={`${short(subject / 1000)} mm`} />
        {/* What is shown closer below. */}
        <path class="cutout" d={`M${PAD} ${HEAD + SUBJECT + 5}v4H${round(x(near))}v-4`} />
        <path
          class="leader"
          d={`M${PAD} ${HEAD + SUBJECT + 8}L${PAD} ${base - 6}M${round(x(near))} ${HEAD + SUBJECT + 8}L${PAD + wide} ${base - 6}`}
        />
        {slabs.map(({ from, to }, i) => (
          <g key={from}>
            <rect class="slab" x={round(close(from))} y={base + i * SLAB} width={round(close(to) - close(from))} height={SLAB - 4} />
            {i > 0 && (
              <rect
                class="shared"
                x={round(close(from))}
                y={base + i * SLAB - 4}
                width={round(Math.max(0, close(from + depth - step) - close(from)))}
                height={4}
              />
            )}
          </g>
        ))}
        {slabs.length > 1 && <Measure from={close(0)} to={close(step)} y={foot + 14} words={`step ${toldStep} µm`} />}
        <Measure from={close(0)} to={close(depth)} y={foot + 36} words={`depth ${short(depth)} µm`} />
      </svg>
      <figcaption id="stack-caption">{caption}</figcaption>
    </figure>
  );
}

/** A length with its words over its middle; after it where they do not fit. */
function Measure({ from, to, y, words }: { from: number; to: number; y: number; words: string }) {
  const [a, b] = [round(from), round(to)];
  const fits = b - a > 8 * words.length;
  return (
    <g class="measure">
      <path d={`M${a} ${y}H${b}M${a - 3} ${y + 3}l6 -6M${b - 3} ${y + 3}l6 -6`} />
      <text x={fits ? (a + b) / 2 : b + 8} y={fits ? y - 4 : y + 4} text-anchor={fits ? 'middle' : 'start'}>
        {words}
      </text>
    </g>
  );
}

const round = (n: number): number => Number(n.toFixed(1));
