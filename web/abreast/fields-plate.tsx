import { useMemo } from 'preact/hooks';
import { letter, letters, short } from '../../core/index.ts';
import { silhouette, stipple } from '../plates/silhouette.ts';
import { useWidth } from '../plates/width.ts';
import { type Compared, question } from './compared.ts';
import { fieldOf, fits, type Layout, layout, type Placed } from './field-geometry.ts';

/** What each pairing sees of the subject, all at one scale; hatched what lies outside its good circle. */
export function FieldsPlate({ all }: { all: readonly Compared[] }) {
  const [box, width] = useWidth(900);
  const { subject } = question.value.one;
  const fields = all.flatMap((one, place) => {
    const field = fieldOf(one, subject);
    return field ? [{ field, place }] : [];
  });
  if (fields.length === 0) return null;
  const laid = layout(fields, width);
  return (
    <figure class="plate fields-abreast" ref={box} aria-labelledby="fields-caption">
      <Drawn laid={laid} width={width} />
      <figcaption id="fields-caption">{captionOf(laid)}</figcaption>
    </figure>
  );
}

function Drawn({ laid: { k, placed, height }, width }: { laid: Layout; width: number }) {
  return (
    <svg width={width} height={Math.ceil(height)} viewBox={`0 0 ${width} ${Math.ceil(height)}`} role="img" aria-labelledby="fields-caption">
      <title>The fields at one scale</title>
      <defs>
        <pattern id="outside" width="6" height="6" patternUnits="userSpaceOnUse" patternTransform="rotate(45)">
          <path d="M0 0V6" />
        </pattern>
      </defs>
      {placed.map((one) => (
        <FieldDrawn key={one.place} one={one} k={k} />
      ))}
    </svg>
  );
}

function FieldDrawn({ one: { field, place, x, y, w, h }, k }: { one: Placed; k: number }) {
  const [cx, cy] = [x + w / 2, y + h / 2];
  const radius = field.goodMm === undefined ? Number.POSITIVE_INFINITY : (field.goodMm / 2) * k;
  const cut = radius < Math.hypot(w, h) / 2;
  const [sw, sh] = field.subject ? [field.subject[0] * k, field.subject[1] * k] : [0, 0];
  const outline = useMemo(() => silhouette(sw, sh), [sw, sh]);
  const dots = useMemo(() => stipple(sw, sh, { width: Math.min(sw, w), height: Math.min(sh, h) }), [sw, sh, w, h]);
  const clip = `field-${place}`;
  const r = Math.max(0, radius);
  const foot = y + h + 10;
  return (
    <g data-field={letter(place)}>
      <clipPath id={clip}>
        <rect x={x} y={y} width={w} height={h} />
      </clipPath>
      <text class="letter" x={x} y={y - 7}>
        {letter(place)}
      </text>
      {cut && (
        <path
          class="outside"
          clip-path={`url(#${clip})`}
          fill-rule="evenodd"
          d={`M${x} ${y}h${w}v${h}h${-w}ZM${cx - r} ${cy}a${r} ${r} 0 1 0 ${2 * r} 0a${r} ${r} 0 1 0 ${-2 * r} 0Z`}
        />
      )}
      {cut && <circle class="good" clip-path={`url(#${clip})`} cx={cx} cy={cy} r={r} />}
      {field.subject && (
        <g clip-path={`url(#${clip})`}>
          <g class="seed" transform={`translate(${cx} ${cy})`}>
            <clipPath id={`${clip}-subject`}>
              <path d={outline} />
            </clipPath>
            <path class="blank" d={outline} />
            <path class="stipple" clip-path={`url(#${clip}-subject)`} d={dots} />
            <path class="outline" d={outline} />
          </g>
        </g>
      )}
      <rect class="edge" x={x} y={y} width={w} height={h} />
      <path class="dimension" d={`M${x} ${foot - 4}v8M${x} ${foot}h${w}M${x + w} ${foot - 4}v8`} />
      <text x={x} y={foot + 20}>
        {short(field.width)} × {short(field.height)} mm
      </text>
    </g>
  );
}

function captionOf({ placed }: Layout): string {
  const widest = placed.reduce((a, b) => (b.field.width > a.field.width ? b : a));
  const narrowest = placed.reduce((a, b) => (b.field.width < a.field.width ? b : a));
  const ratio = widest.field.width / narrowest.field.width;
  const size =
    ratio < 1.01
      ? `All see about ${short(widest.field.width, 2)} mm of subject across the width.`
      : `${letter(widest.place)} sees ${short(widest.field.width)} mm of subject across the width, ${letter(narrowest.place)} ${short(narrowest.field.width)} mm, all drawn at one scale.`;
  const cut = placed.filter(({ field: { goodMm, width, height } }) => goodMm !== undefined && goodMm < 0.999 * Math.hypot(width, height));
  const outside =
    cut.length > 0
      ? ` Hatched in ${letters(cut.map(({ place }) => place))}: what lies outside the smallest known circle, corrected, lit or sharp.`
      : '';
  return `${size}${fitting(placed)}${outside}`;
}

function fitting(placed: readonly Placed[]): string {
  const subject = placed[0]?.field.subject;
  if (!subject) return '';
  const out = placed.filter(({ field }) => !fits(field));
  const what = ` The subject, ${short(subject[0])} × ${short(subject[1])} mm,`;
  if (out.length === 0) return `${what} has room in ${placed.length === 2 ? 'both' : 'all'}.`;
  if (out.length === placed.length) return `${what} is larger than each of these pictures.`;
  return `${what} is larger than the picture of ${letters(out.map(({ place }) => place))}.`;
}
