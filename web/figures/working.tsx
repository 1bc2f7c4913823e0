import type { Working, WorkingTerm } from '../../core/index.ts';
import { Lead } from '../fields/lead.tsx';
import { Formula } from './formula.tsx';

/** A figure in three lines: words, symbols, these numbers; then what they rest on. */
export function WorkingLines({ working: { words, symbols, numbers, source, terms } }: { working: Working }) {
  return (
    <div class="working">
      <p>{words}</p>
      <p class="formula">
        <Formula text={symbols} />
      </p>
      <p class="formula">
        <Formula text={numbers} />
      </p>
      {terms.length > 0 && (
        <ul>
          {terms.map((term) => (
            <li key={term.symbol} class={term.origin === 'assumed' ? 'assumed' : ''}>
              <Formula text={term.symbol} /> = {term.path ? <Lead path={term.path}>{term.text}</Lead> : term.text}
              <small>
                {' '}
                {term.words}
                {term.origin ? `, ${term.origin}` : ''}
                {saysMore(term) && (
                  <>
                    : <Formula text={term.working?.numbers ?? ''} />
                  </>
                )}
              </small>
            </li>
          ))}
        </ul>
      )}
      <p class="source">Source: {source}.</p>
    </div>
  );
}

/** Whether a value on the way has a formula of its own to show, and not its value once more. */
const saysMore = ({ working }: WorkingTerm): boolean => (working?.numbers.split(' = ').length ?? 0) > 2;
