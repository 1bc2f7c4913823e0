import { type Answer, type Evaluation, GROUPS, type GroupName, nameOf, type Report, short } from '../../core/index.ts';
import { engravedObjective, engravedRelay, engravedSensor, impliedBy } from '../fields/engrave.ts';
import { fieldAt } from '../fields/names.ts';
import { FIGURE_NAMES, GROUP_TITLES } from '../figures/names.ts';
import { toldAs } from '../figures/value.ts';

/** The whole answer as plain text, to be pasted into a letter or a notebook: each number as the page shows it. */
export function figuresAsText(evaluation: Evaluation, report: Report, link: string): string {
  const { objective, relay, sensor } = evaluation.pairing;
  const named = (name: string | undefined, engraved: string): string => (name ? `${name}: ${engraved}` : engraved);
  const blocks = [
    ['Pupilwalk: an objective, a relay, a camera, and what they do together'],
    [report.sentence],
    [
      `Objective  ${named(objective.name, engravedObjective(objective))}`,
      `Relay  ${named(relay.name, engravedRelay({ ...impliedBy(evaluation), ...relay }))}`,
      `Camera  ${named(sensor.name, engravedSensor(sensor))}`,
      `Infinity space  ${taken(evaluation, '/infinitySpaceMm')}`,
      ...(evaluation.pairing.stops ?? []).map(
        ({ label, fromShoulderMm }, i) =>
          `${label ?? `Ring ${i + 1}`}  opening ${taken(evaluation, `/stops/${i}/diameterMm`)}, ${
            fromShoulderMm === undefined
              ? `${taken(evaluation, `/stops/${i}/fromSensorMm`)} from the sensor`
              : `${taken(evaluation, `/stops/${i}/fromShoulderMm`)} from the shoulder`
          }`,
      ),
    ],
    ...(Object.keys(GROUPS) as GroupName[]).map((group) => [
      GROUP_TITLES[group],
      ...GROUPS[group].map(({ id }) => `  ${FIGURE_NAMES[id]}: ${inWords(id, report.figures[id])}`),
    ]),
    report.assumptions.length === 0
      ? ['Rests on no guess.']
      : ['Rests on these guesses', ...report.assumptions.map(({ path, why }) => `  ${nameOf(path)}, ${taken(evaluation, path)}: ${why}`)],
    ...(report.cautions.length > 0 ? [['To mind', ...report.cautions.map((caution) => `  ${caution}`)]] : []),
    [link],
  ];
  return `${blocks.map((lines) => lines.join('\n')).join('\n\n')}\n`;
}

/** A number that was put in or taken, with its ± and unit. */
export function taken({ inputs }: Pick<Evaluation, 'inputs'>, path: string): string {
  const input = inputs.find((i) => i.path === path);
  if (!input) return 'not given';
  const number = input.plusMinus > 0 ? `${short(input.value, 4)} ± ${short(input.plusMinus, 2)}` : short(input.value, 4);
  return [number, fieldAt(path)?.unit].filter(Boolean).join(' ');
}

/** One figure as the page shows it: '10× (9.5 to 10.5)'. */
export function inWords(id: string, answer: Answer, share?: boolean): string {
  switch (answer.state) {
    case 'known': {
      const { text, unit, range } = toldAs(id, answer, share);
      const behind = unit === '' || unit === '×' || unit === '°' ? unit : ` ${unit}`;
      return `${text}${behind}${range ? ` (${range})` : ''}`;
    }
    case 'unlimited':
      return `without limit${answer.low === undefined ? '' : ` (at least ${short(answer.low)})`}`;
    case 'none':
      return `none: ${answer.why}`;
    case 'unknown':
      return `not known${answer.missing.length > 0 ? `, needs ${answer.missing.map(nameOf).join(', ')}` : ''}`;
  }
}
