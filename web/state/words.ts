import { BOUNDS, type Problem, short } from '../../core/index.ts';
import { calledAt, fieldAt } from '../fields/names.ts';

/** The contract's names as the page calls them: core's messages name inputs as the API does. */
const CALLED: Record<string, string> = {
  powerDioptre: 'the power',
  focalLengthMm: 'the focal length',
  fNumber: 'the f-number',
  immersionIndex: 'index of what it dips in',
  infinitySpaceMm: 'infinity space',
  fromSensorMm: 'the distance from the sensor',
  fromShoulderMm: 'the distance from the shoulder',
  columns: 'pixels in a row',
  rows: 'pixels in a column',
};

const plain = (text: string): string =>
  text
    .replace('that GET /api/glasses lists', 'from the list')
    .replace(/semiAperturesMm\/(\d+)/g, (_, i) => `a clear half-height of surface ${Number(i) + 1}`)
    .replace(/semi-aperture/g, 'clear half-height')
    .replace(/(^|\s)-(?=\d)/g, '$1−')
    .replace(/\b[a-z]+[A-Za-z]*\b/g, (name) => (Object.hasOwn(CALLED, name) ? (CALLED[name] ?? name) : name));

/** What would do in a list of the relay's glass. */
const IN_GLASS: Record<string, string> = {
  radiiMm: 'a radius of at least 0.1 mm either way, or “plane”',
  thicknessesMm: 'a thickness from 0 to 500 mm',
  glasses: 'a name from the list, “air”, or a refractive index from 1 to 4',
  semiAperturesMm: 'the height to which this surface lets light through, in mm; of every surface, or of none',
  gapMm: 'a gap from 0 to 500 mm',
};

/** The same for an entry of the glass; undefined where the problem says it well enough. */
function inGlass({ path, code, given, expected }: Problem): string | undefined {
  const list = path.match(/^\/relay\/glass.*?\/(\w+)(\/\d+)?$/)?.[1];
  const would = list && IN_GLASS[list];
  if (!would) return undefined;
  if (given === '""' || given === 'nothing') return `Is missing: give ${would}.`;
  const what = `‘${given.replace(/^"|"$/g, '').replace(/^-/, '−')}’`;
  if (code === 'unknownGlass') return `${what} is no glass that is known here. What would do: ${plain(expected)}.`;
  if (code === 'wrongType') return `${what} will not do: put in ${would}.`;
  if (code === 'tooSmall' || code === 'tooBig') return `${what} is too ${code === 'tooSmall' ? 'small' : 'large'}: put in ${would}.`;
  return undefined;
}

/** What is wrong and what would do, as one or two sentences without the field's name. */
export function complaint({ path, code, message, expected, given }: Problem): string {
  const glass = inGlass({ path, code, message, expected, given });
  if (glass) return glass;
  const field = fieldAt(path);
  const bound = field?.ends ?? (field?.bound && BOUNDS[field.bound]);
  const spread = path.endsWith('/plusMinus');
  if (bound && !spread && ['missing', 'wrongType', 'tooSmall', 'tooBig'].includes(code) && !message.includes('and so')) {
    const range = `${code === 'missing' ? '' : 'Put in '}a number from ${short(bound[0], 5)} to ${short(bound[1], 5)}${field?.unit ? ` ${field.unit}` : ''}`;
    if (code === 'missing') return `Is missing: give ${range}.`;
    return `${code === 'wrongType' ? `${given} is no number.` : `${brief(given)} is too ${code === 'tooSmall' ? 'small' : 'large'}.`} ${range}.`;
  }
  if (spread && code === 'wrongType') return `The ± ${given} is no number.`;
  const what = `${spread ? 'The ± ' : ''}${plain(message)}`;
  const would = expected && !message.includes(expected) ? ` What would do: ${plain(expected)}.` : '';
  return `${what.charAt(0).toUpperCase()}${what.slice(1)}.${would}`;
}

const brief = (given: string): string => (given.startsWith('{') ? 'This' : given.replace(/^-/, '−'));

/** With the field's name, for places away from the field. */
export const said = (problem: Problem): string => `${calledAt(problem.path)}: ${complaint(problem)}`;
