import { type Answer, short } from '../../../core/index.ts';
import type { TableFigureId } from '../../../core/table.ts';
import { Scroll } from '../../charts/scroll.tsx';
import { toldAs } from '../../figures/value.ts';
import { tabled } from '../tabled.ts';

type Id = TableFigureId<'closeUp'>;
/** A figure, or words that need none. */
type Cell = Id | { readonly words: string };

interface Part {
  readonly size: Id;
  readonly at: string;
  readonly rows: readonly (readonly [name: string, closeUp: Cell, tubes: Cell])[];
}

/** Close-up lens and extension tubes for the same magnification, at both ends. */
export function AgainstTubes() {
  const { inputs, answers, settings } = tabled.value;
  const lens = { words: settings.secondPowerDioptre === undefined ? 'the close-up lens' : 'both close-up lenses' };
  const set = inputs.find(({ path }) => path === '/cameraFNumber')?.value;
  if (answers.closeUpFarMagnification.state !== 'known') return null;
  const far: Part = {
    size: 'closeUpFarMagnification',
    at: '· camera lens at infinity',
    rows: [
      ['what goes on', lens, 'tubesFarExtensionMm'],
      ['free distance', 'closeUpFarthestMm', 'tubesFarDistanceMm'],
      ['working f-number', { words: set === undefined ? '' : `${short(set)}, as set` }, 'tubesFarFNumber'],
      ['light lost', { words: 'none' }, 'tubesFarCostEv'],
      ['diffraction takes over when set to', 'closeUpDiffractionFNumber', 'tubesDiffractionFNumber'],
    ],
  };
  const near: Part = {
    size: 'closeUpNearMagnification',
    at: '· close-up lens: camera lens at its nearest; tubes: at infinity',
    rows: [
      ['what goes on', lens, 'tubesNearExtensionMm'],
      ['free distance', 'closeUpNearestMm', 'tubesNearDistanceMm'],
      ['working f-number', 'closeUpNearFNumber', 'tubesNearFNumber'],
      ['light lost against it', { words: 'none' }, 'tubesNearCostEv'],
      ['diffraction takes over when set to', 'closeUpNearDiffractionFNumber', 'tubesNearDiffractionFNumber'],
    ],
  };
  return (
    <Scroll title="At the same magnification">
      <table class="against-tubes">
        <caption>At the same magnification</caption>
        <thead>
          <tr>
            <td />
            <th scope="col">close-up lens</th>
            <th scope="col">extension tubes</th>
          </tr>
        </thead>
        {[far, ...(answers.closeUpNearMagnification.state === 'known' ? [near] : [])].map((part) => (
          <Rows key={part.size} part={part} />
        ))}
      </table>
    </Scroll>
  );
}

function Rows({ part: { size, at, rows } }: { part: Part }) {
  const { answers } = tabled.value;
  return (
    <tbody>
      <tr class="size">
        <th scope="rowgroup" colSpan={3}>
          <Told id={size} answer={answers[size]} /> <small>{at}</small>
        </th>
      </tr>
      {rows.map(([name, closeUp, tubes]) => (
        <tr key={name}>
          <th scope="row">{name}</th>
          {[closeUp, tubes].map((cell, i) => (
            <td key={i === 0 ? 'lens' : 'tubes'}>{typeof cell === 'string' ? <Told id={cell} answer={answers[cell]} /> : cell.words}</td>
          ))}
        </tr>
      ))}
    </tbody>
  );
}

function Told({ id, answer }: { id: Id; answer: Answer }) {
  if (answer.state === 'none') return <small>{answer.why}</small>;
  if (answer.state !== 'known') return <small>not known</small>;
  const { text, unit, range } = toldAs(id, answer);
  return (
    <>
      <span class={answer.origin === 'assumed' ? 'number assumed' : 'number'}>{text}</span>
      {unit === '×' ? unit : unit && ` ${unit}`}
      {range && <small class="range"> {range}</small>}
    </>
  );
}
