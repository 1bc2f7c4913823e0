import { useState } from 'preact/hooks';
import { type Assumption, type Circle, earned, minutesFor, nameOf, short } from '../core/index.ts';
import { Lead } from './fields/lead.tsx';
import { fieldAt } from './fields/names.ts';
import { Later } from './later.tsx';
import { answered, report } from './state/draft.ts';

const measure = () => import('./measure/measure.tsx').then((piece) => piece.Measure);

const MATTERS = 0.001;

/** What tells a circle that is not known; how sharp a relay is few can tell, and it is asked for at the sensor's drawing. */
const WANTED: Partial<Record<Circle, string>> = { corrected: '/objective/fieldNumberMm', lit: '/relay/clearApertureMm' };

/** How many guesses the answer rests on and which matters most; what to measure first opens below. */
export function Rests({ assumptions }: { assumptions: readonly Assumption[] }) {
  const [open, setOpen] = useState(false);
  // Some guesses only tell how long and how roomy the rig is: the answer does not rest on them.
  const n = assumptions.filter((a) => !answered.value.inputs.find(({ path }) => path === a.path)?.apart).length;
  const wanting = report.value.coverage.unknown.flatMap((circle) => WANTED[circle] ?? []);
  const most = assumptions.find((a) => a.matters >= MATTERS && fieldAt(a.path));
  if (n === 0) return <p class="rests">Rests on no guess: every number was marked or measured.</p>;
  return (
    <>
      <p class="rests">
        Rests on {n === 1 ? 'one guess' : `${n} guesses`}
        {most ? '; ' : n === 1 ? ', which hardly moves the answer: ' : ', none of which moves the answer much: '}
        {most && (
          <>
            <Lead path={most.path}>{nameOf(most.path)}</Lead>
            {most.plusMinus > 0 && (
              <>
                {' '}
                <span class="guess">
                  (
                  {[
                    `${earned(most.value, most.value - most.plusMinus, most.value + most.plusMinus)} ± ${short(most.plusMinus, 2)}`,
                    fieldAt(most.path)?.unit,
                  ]
                    .filter(Boolean)
                    .join(' ')}
                  )
                </span>
              </>
            )}
            {n > 1 ? ' matters most: ' : ': '}
          </>
        )}
        <button type="button" class="lead" aria-expanded={open} aria-controls="measure" onClick={() => setOpen(!open)}>
          {most ? `find it out in ${minutesFor(most.path)}` : 'see which'}
        </button>
        .{wanting.length > 0 && ' Still to be given: '}
        {wanting.map((path, i) => (
          <span key={path}>
            {i > 0 && ' and '}
            <Lead path={path}>{nameOf(path)}</Lead>
          </span>
        ))}
        {wanting.length > 0 && '.'}
      </p>
      <div id="measure" class="panel" hidden={!open}>
        {open && <Later load={measure} what="What to measure first" />}
      </div>
    </>
  );
}
