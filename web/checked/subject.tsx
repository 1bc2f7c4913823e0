import { type Answers, type Entry, EXACT, USUAL } from '../../core/checked.ts';
import { capital, listed } from '../../core/index.ts';
import { Indices } from './indices.tsx';
import { Numbers } from './numbers.tsx';

/** So many of a check's numbers stand at once, the others on demand. */
const MOST = 6;
const MOST_OF_LAW = 2;

const KNOWN = {
  read: 'read there',
  'formula read': 'its formula read there, the number worked out by hand',
  'from memory': 'from memory',
} as const;

/** All checks of a subject, behind a fold. */
export const SubjectFold = ({ subject: { title, published, entries }, open }: { subject: Answers; open: boolean }) => (
  <details class="checked-subject" open={open}>
    <summary>
      <h3>{title}</h3>{' '}
      <span>
        {counted(entries.length, published ? 'check' : 'law')},{' '}
        {counted(
          entries.reduce((sum, { values }) => sum + values.length, 0),
          published ? 'number' : 'equality',
        )}
      </span>
    </summary>
    {entries.map((entry, i) => (
      <Check key={entry.id + entry.claim} entry={entry} headed={i === 0} />
    ))}
  </details>
);

const counted = (count: number, of: string): string => `${count} ${count === 1 ? of : `${of}s`.replace('ys', 'ies')}`;

/** What is claimed and by whom, how it is worked out here, and the numbers. */
export function Check({ entry, headed }: { entry: Entry; headed: boolean }) {
  const { claim, source, known, how, values } = entry;
  const whys = [...new Set(values.map(({ why }) => why))].filter((why) => why !== USUAL && why !== EXACT);
  const law = known === 'by definition';
  return (
    <article class={values.every(({ holds }) => holds) ? 'check' : 'check bites'}>
      <div class="claim">
        <p>
          <Indices text={`${capital(claim)}.`} />
        </p>
        {known !== 'by definition' && (
          <p class="from">
            {`${capital(source)}, ${KNOWN[known]}. `}
            <Indices text={`Here: ${how}.`} />
          </p>
        )}
      </div>
      <div>
        <Numbers name={claim} due={law ? 'must be' : 'printed'} values={values} most={law ? MOST_OF_LAW : MOST} headed={headed} />
        {whys.length > 0 && <p class="from">May be off by {listed(whys)}.</p>}
      </div>
    </article>
  );
}
