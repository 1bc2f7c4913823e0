import { useState } from 'preact/hooks';
import { type Answer, type FigureId, figureById, nameOf, short, type Working, workingOf } from '../../core/index.ts';
import { Lead } from '../fields/lead.tsx';
import { fieldAt, lower } from '../fields/names.ts';
import { answered, report } from '../state/draft.ts';
import { FIGURE_NAMES } from './names.ts';
import { toldAs } from './value.ts';
import { WorkingLines } from './working.tsx';

/** One figure of the pairing. */
export const Figure = ({ id }: { id: FigureId }) => (
  <FigureRow id={id} name={FIGURE_NAMES[id]} answer={report.value.figures[id]} working={() => workingOf(answered.value, figureById(id))} />
);

interface Row {
  id: string;
  name: string;
  answer: Answer;
  /** That it is told in per cent, where its id does not say so. */
  share?: boolean | undefined;
  working: () => Working;
}

/** One figure: its name, its value with what it may be, and its working on demand. */
export function FigureRow({ id, name, answer, share, working }: Row) {
  const [open, setOpen] = useState(false);
  const panel = `working-${id}`;
  return (
    <li class={`figure${answer.state === 'known' && answer.origin === 'assumed' ? ' assumed' : ''}`} data-figure={id}>
      <span class="name">{name}</span>
      <Value id={id} answer={answer} share={share} />
      <button
        type="button"
        class="show"
        aria-expanded={open}
        aria-controls={panel}
        aria-label={`${open ? 'Hide' : 'Show'} the working of: ${name}`}
        onClick={() => setOpen(!open)}
      >
        {open ? 'hide' : 'how'}
      </button>
      <div id={panel} class="panel" hidden={!open}>
        {open && <WorkingLines working={working()} />}
      </div>
    </li>
  );
}

function Value({ id, answer, share }: Pick<Row, 'id' | 'answer' | 'share'>) {
  switch (answer.state) {
    case 'known': {
      const { text, unit, range } = toldAs(id, answer, share);
      return (
        <span class="value">
          <span class="amount">
            <span class="number">{text}</span>
            {unit === '' || unit === '×' || unit === '°' ? unit : ` ${unit}`}
          </span>
          <small>{range}</small>
        </span>
      );
    }
    case 'unlimited':
      return <span class="value">without limit{answer.low !== undefined && <small>at least {short(answer.low)}</small>}</span>;
    case 'none':
      return (
        <span class="value words">
          none<small>{answer.why}</small>
        </span>
      );
    case 'unknown':
      return (
        <span class="value words">
          not known
          <small>
            {answer.missing.map((path, i) => (
              <span key={path}>
                {i > 0 ? ', ' : 'needs '}
                <Lead path={path}>{neededAt(path)}</Lead>
              </span>
            ))}
          </small>
        </span>
      );
  }
}

/** What an answer needs, in words: inputs of a view of their own are called by their labels. */
const neededAt = (path: string): string => {
  const field = fieldAt(path);
  return field?.brought ? lower(field.label) : nameOf(path);
};
