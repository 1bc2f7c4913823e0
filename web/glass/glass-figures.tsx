import { percent, short } from '../../core/index.ts';
import type { Studied } from './studied.ts';

interface Row {
  name: string;
  value: string;
  unit: string;
  note: string;
}

/** The glass in figures. */
export function GlassFigures({ studied }: { studied: Studied }) {
  return (
    <section aria-labelledby="glass-figures-title">
      <h2 id="glass-figures-title">The glass in figures</h2>
      <table class="glass-figures">
        <tbody>
          {rowsOf(studied).map(({ name, value, unit, note }) => (
            <tr key={name}>
              <th scope="row">{name}</th>
              <td>
                <span class="number">{value}</span> {unit}
              </td>
              <td class="note">{note}</td>
            </tr>
          ))}
        </tbody>
      </table>
    </section>
  );
}

const UM_PER_MM = 1000;
const NONE = { value: '–', unit: '', note: 'judged in one wavelength' };

function rowsOf({ study, judging }: Studied): Row[] {
  const { way, points, axialColour, lateralColourUm, lateralColourPixels, curvatureAtSubjectUm, extraFrames } = study;
  const corner = points.at(-1)?.seen;
  const waves = axialColour.map((c) => c.wavelengthNm);
  const span = `from ${short(Math.min(...waves))} to ${short(Math.max(...waves))} nm`;
  const shifts = axialColour.map((c) => c.shiftMm);
  const white = waves.length > 1;
  return [
    {
      name: 'Focal length',
      value: short(way.cardinal.effectiveFocalLengthMm, 4),
      unit: 'mm',
      note: `at ${short(judging.wavelengthNm, 5)} nm`,
    },
    { name: 'Back focal length', value: short(way.cardinal.backFocalLengthMm, 4), unit: 'mm', note: 'from the last surface to the focus' },
    {
      name: 'Axial colour',
      ...(white
        ? {
            value: short(UM_PER_MM * (Math.max(...shifts) - Math.min(...shifts))),
            unit: 'µm',
            note: `along the axis at the sensor, ${span}`,
          }
        : NONE),
    },
    {
      name: 'Lateral colour',
      ...(white
        ? {
            value: short(lateralColourUm),
            unit: 'µm',
            note: `${short(lateralColourPixels, 2)} pixels; where it is greatest, ${span}`,
          }
        : NONE),
    },
    {
      name: 'Field curvature at the subject',
      value: short(curvatureAtSubjectUm),
      unit: 'µm deep',
      note: framesFor(extraFrames),
    },
    {
      name: 'Light by the way it maps angles',
      value: corner ? percent(corner.mappingFactor).replace(' %', '') : '–',
      unit: corner ? '%' : '',
      note: corner ? 'in the corner, besides what the stops leave' : 'the corner gets no light',
    },
  ];
}

/** What the curvature costs a stack; less than half the depth of field is lost in it. */
function framesFor(extra: number): string {
  if (extra === 0) return 'within the depth of one frame';
  return extra === 1 ? 'one more frame of a stack' : `${extra} more frames of a stack`;
}
