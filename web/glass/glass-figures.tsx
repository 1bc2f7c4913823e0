import { cardinal } from '../../core/glassworks.ts';
import { amount, numberIn, percent, short } from '../../core/index.ts';
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

function rowsOf({ for: { pairing, answers }, study, judging }: Studied): Row[] {
  const { way, points } = study;
  const { effectiveFocalLengthMm: f, backFocalLengthMm: bfl } = way.cardinal;
  const foci = way.colours.prescriptions.map((p) => cardinal(p).backFocalLengthMm);
  const axial = UM_PER_MM * (Math.max(...foci) - Math.min(...foci));
  const colours = way.colours.wavelengthsMm.map((mm) => Math.round(mm * 1e6));
  const white = colours.length > 1;
  const span = `${Math.min(...colours)} to ${Math.max(...colours)} nm`;
  const corner = points.at(-1)?.seen;
  const pitch = pairing.sensor.pixelPitchUm;
  const lateral = corner?.oneFrame.spot.lateralColourUm;
  const m = numberIn(answers.systemMagnification) ?? 1;
  const depth = numberIn(answers.depthOfFieldUm);
  const curvature = (UM_PER_MM * study.fieldCurvatureMm) / (m * m);
  const oneColour = 'judged in one wavelength';
  return [
    { name: 'Focal length', value: short(f, 4), unit: 'mm', note: `at ${short(judging.wavelengthNm, 5)} nm` },
    { name: 'Back focal length', value: short(bfl, 4), unit: 'mm', note: 'last surface to the focus' },
    {
      name: 'Axial colour',
      value: white ? short(axial) : '–',
      unit: white ? 'µm' : '',
      note: white ? `along the axis, ${span}` : oneColour,
    },
    {
      name: 'Lateral colour in the corner',
      value: white && lateral !== undefined ? short(lateral) : '–',
      unit: white && lateral !== undefined ? 'µm' : '',
      note: !white
        ? oneColour
        : lateral === undefined
          ? 'no light there'
          : pitch === undefined
            ? `across, ${span}`
            : `${short(lateral / amount(pitch), 2)} pixels, ${span}`,
    },
    {
      name: 'Field curvature at the subject',
      value: short(curvature),
      unit: 'µm deep',
      note: framesFor(curvature, depth),
    },
    {
      name: 'Light by the way it maps angles',
      value: corner ? percent(corner.mappingFactor).replace(' %', '') : '–',
      unit: corner ? '%' : '',
      note: 'in the corner, besides what the stops leave',
    },
  ];
}

/** What the curvature costs a stack: nothing as long as it stays well inside the depth of field. */
function framesFor(curvature: number, depth: number | undefined): string {
  if (depth === undefined) return 'from the nearest best focus to the farthest';
  if (curvature < depth / 2) return 'well within the depth of one frame';
  const frames = Math.ceil(curvature / depth);
  return frames === 1 ? 'one more frame of a stack' : `${frames} more frames of a stack`;
}
