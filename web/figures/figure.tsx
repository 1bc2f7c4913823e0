import { useState } from 'preact/hooks';
import { type Answer, type FigureId, nameOf, short } from '../../core/index.ts';
import { Lead } from '../fields/lead.tsx';
import { report } from '../state/draft.ts';
import { FIGURE_NAMES } from './names.ts';
import { toldAs } from './value.ts';
import { Working } from './working.tsx';

/** One figure: its name, its value with what it may be, and its working on demand. */
export function Figure({ id }: { id: FigureId }) {
  const [open, setOpen] = useState(false);
  const answer = report.value.figures[id];
  const panel = `working-${id}`;
  return (
    <li class={`figure${answer.state === 'known' && answer.origin === 'assumed' ? ' assumed' : ''}`} data-figure={id}>
      <span class="name">{FIGURE_NAMES[id]}</span>
      <Value id={id} answer={answer} />
      <button
        type="button"
        class="show"
        aria-expanded={open}
        aria-controls={panel}
        aria-label={`${open ? 'Hide' : 'Show'} the working of: ${FIGURE_NAMES[id]}`}
        onClick={() => setOpen(!open)}
      >
        {open ? 'hide' : 'how'}
      </button>
      <div id={panel} class="panel" hidden={!open}>
        {open && <Working id={id} />}
      </div>
    </li>
  );
}

function Value({ id, answer }: { id: FigureId; answer: Answer }) {
  switch (answer.state) {
    case 'known': {
      const { text, unit, range } = toldAs(id, answer);
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
                <Lead path={path}>{nameOf(path)}</Lead>
              </span>
            ))}
          </small>
        </span>
      );
  }
}
