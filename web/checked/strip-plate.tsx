import { type Answers, type Summary, summaryOf } from '../../core/checked.ts';
import { percent } from '../../core/index.ts';
import { useWidth } from '../plates/width.ts';
import { plateOf, type Strip } from './strip-geometry.ts';

/** Where within its tolerance each number falls: a tick for each, a strip for each subject. */
export function StripPlate({ answers }: { answers: readonly Answers[] }) {
  const [box, width] = useWidth(900);
  const { height, left, right, middle, low, high, top, strips } = plateOf(answers, width);
  const bottom = height - 2;
  const wide = left > 0;
  return (
    <figure class="plate strips" aria-labelledby="strips-caption" ref={box}>
      <svg width={width} height={height} viewBox={`0 0 ${width} ${height}`} role="img" aria-labelledby="strips-caption">
        <title>Where each number falls within what its digits allow</title>
        <path class="limit" d={`M${low} ${top}V${bottom}M${high} ${top}V${bottom}`} />
        <path class="middle" d={`M${middle} ${top}V${bottom}`} />
        <text class="word" x={low} y={14} text-anchor={wide ? 'middle' : 'start'}>
          {wide ? 'as low as the digits allow' : 'lowest'}
        </text>
        <text class="word" x={middle} y={14} text-anchor="middle">
          as printed
        </text>
        <text class="word" x={wide ? right : high} y={14} text-anchor="end">
          {wide ? 'as high as they allow' : 'highest'}
        </text>
        {strips.map((strip) => (
          <Row key={strip.title} strip={strip} left={left} right={right} />
        ))}
      </svg>
      <figcaption id="strips-caption">{captionOf(summaryOf(answers))}</figcaption>
    </figure>
  );
}

const Row = ({ strip: { title, count, y, titleY, ticks, misses }, left, right }: { strip: Strip; left: number; right: number }) => (
  <g class={misses.length > 0 ? 'bites' : undefined}>
    <path class="ground" d={`M${left} ${y + 5.5}H${right}`} />
    <path class="ticks" d={ticks} />
    {misses.map((x) => (
      <path key={x} class="miss" d={`M${x - 4} ${y + 1}l8 9m0 -9l-8 9`} />
    ))}
    <text x={0} y={titleY}>
      {title} <tspan class="count">{count}</tspan>
    </text>
  </g>
);

function captionOf({ numbers, failing, median }: Summary): string {
  const out = failing.length === 0 ? 'none lies beyond' : `${failing.length} ${failing.length === 1 ? 'lies' : 'lie'} beyond, crossed`;
  return `Each tick is a number, placed within what its last digit allows: ${out}. Half of the ${numbers} printed ones lie in the middle ${percent(median)} of that; where few digits are printed they may fall anywhere. The laws have a thousand-millionth to fall in.`;
}
