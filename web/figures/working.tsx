import { type FigureId, figureById, workingOf } from '../../core/index.ts';
import { Lead } from '../fields/lead.tsx';
import { answered } from '../state/draft.ts';

/** A figure in three lines: words, symbols, this pairing's numbers; then what they rest on. */
export function Working({ id }: { id: FigureId }) {
  const { words, symbols, numbers, source, terms } = workingOf(answered.value, figureById(id));
  return (
    <div class="working">
      <p>{words}</p>
      <p class="formula">{symbols}</p>
      <p class="formula">{numbers}</p>
      {terms.length > 0 && (
        <ul>
          {terms.map((term) => (
            <li key={term.symbol} class={term.origin === 'assumed' ? 'assumed' : ''}>
              <var>{term.symbol}</var> = {term.path ? <Lead path={term.path}>{term.text}</Lead> : term.text}
              <small>
                {' '}
                {term.words}
                {term.origin ? `, ${term.origin}` : ''}
                {term.working?.numbers && term.working.numbers !== `${term.symbol} = ${term.text}` ? `: ${term.working.numbers}` : ''}
              </small>
            </li>
          ))}
        </ul>
      )}
      <p class="source">Source: {source}.</p>
    </div>
  );
}
