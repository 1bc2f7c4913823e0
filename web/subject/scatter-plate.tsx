import { useState } from 'preact/hooks';
import type { Choice } from '../../core/choosing.ts';
import { BETTER, type FigureId, numberIn, short } from '../../core/index.ts';
import { Table } from '../charts/table.tsx';
import { lower } from '../fields/names.ts';
import { toldAs } from '../figures/value.ts';
import { useWidth } from '../plates/width.ts';
import { AXES } from '../state/wish.ts';
import { choose, wish } from '../state/wishing.ts';
import { type Entry, placeOf, spaceOf } from './entries.ts';
import { givesUp, told } from './gives-up.ts';
import { inWords } from './parts-line.tsx';
import { type Scatter, scatterOf } from './scatter.ts';
import { figureName } from './told.ts';

interface Props {
  choices: readonly Choice[];
  entries: readonly Entry<Choice>[];
  axes: readonly FigureId[];
  /** How many stand on the frontier. */
  frontier: number;
  /** The entry that is pointed to in the list. */
  pointed: number | undefined;
}

const unitOf = (choices: readonly Choice[], id: FigureId): string => {
  const answer = choices.map(({ figures }) => figures[id]).find(({ state }) => state === 'known');
  const unit = answer?.state === 'known' ? toldAs(id, answer).unit : '';
  return unit ? `, ${unit}` : '';
};

const titleOf = (choices: readonly Choice[], id: FigureId): string => `${lower(figureName(id))}${unitOf(choices, id)}`;
const betterTo = (id: FigureId, ends: readonly [string, string]): string => (BETTER[id] === 'less' ? ends[0] : ends[1]);

/** The choices over two figures, the line through those that none beats in both, what that costs, and the same in a table. */
export function Traded(props: Props) {
  const { choices, entries, axes, frontier } = props;
  const [box, width] = useWidth(900);
  const [x, y, third] = axes as [FigureId, FigureId, FigureId?];
  const shown = choices.filter(({ onFrontier }) => onFrontier).length;
  const height = Math.round(Math.min(460, Math.max(300, width * 0.46)));
  const frame = { left: 52, top: 26, right: width - 40, bottom: height - 42 };
  const scatter = scatterOf(choices, entries, [x, y], frame, third && ((places) => besides(entries, places, third)));
  const says = [
    third ? `Each dot is a pairing of the list; beside the numbers stands ${lower(figureName(third))}.` : '',
    frontier > 0 ? frontierSaid(frontier, third !== undefined) : '',
    third ? '' : givesUp(choices, entries, [x, y]),
    shown < frontier ? `${shown} of them are drawn, from end to end.` : '',
    scatter && scatter.left > 0 ? `${scatter.left} of the list are left out: one of the figures is not known.` : '',
  ].filter((text) => text !== '');
  return (
    <section aria-labelledby="traded-title">
      <h2 id="traded-title">What is given up for what</h2>
      <Pickers axes={axes} />
      <figure class="plate traded" aria-labelledby="traded-caption" ref={box}>
        {scatter && <Drawn {...props} scatter={scatter} width={width} height={height} frame={frame} says={says.join(' ')} />}
        <figcaption id="traded-caption">
          {scatter ? says.join(' ') : 'One of these figures is not known of any pairing in the list: nothing can be drawn.'}
        </figcaption>
        {scatter && (
          <Table
            title="The same dots in numbers"
            columns={['no.', 'pairing', ...axes.map((id) => titleOf(choices, id)), third ? 'drawn open' : 'on the line']}
            rows={() =>
              choices.map((choice) => [
                `${placeOf(entries, choice) + 1} at ${short(spaceOf(choice), 4)} mm`,
                inWords(choice.pairing),
                ...axes.map((id) => told(choice, id)),
                choice.onFrontier ? 'yes' : '',
              ])
            }
          />
        )}
      </figure>
    </section>
  );
}

/** What stands open in the drawing, or on its line. */
function frontierSaid(count: number, three: boolean): string {
  const stand = three ? 'drawn open' : 'on the line';
  const who = count === 1 ? `One pairing is ${stand}` : `${count} pairings are ${stand}`;
  return `${who}: nothing found is better in one figure and no worse in the other${three ? 's' : ''}.`;
}

/** A third figure of what stands at one place: from the least to the greatest. */
function besides(entries: readonly Entry<Choice>[], places: readonly number[], id: FigureId): string {
  const value = ({ figures }: Choice): number => numberIn(figures[id]) ?? 0;
  const heads = places.flatMap((place) => entries[place]?.head ?? []).filter(({ figures }) => figures[id].state === 'known');
  const sorted = heads.toSorted((a, b) => value(a) - value(b));
  const [least, greatest] = [sorted[0], sorted.at(-1)];
  if (!least || !greatest) return '';
  const [from, to] = [told(least, id), told(greatest, id)];
  return `: ${from === to ? from : `${from} to ${to}`}`;
}

interface DrawnProps extends Props {
  scatter: Scatter;
  width: number;
  height: number;
  frame: { left: number; top: number; right: number; bottom: number };
  says: string;
}

function Drawn({ scatter, choices, axes, pointed, width, height, frame, says }: DrawnProps) {
  const [x, y, third] = axes as [FigureId, FigureId, FigureId?];
  return (
    <svg width={width} height={height} viewBox={`0 0 ${width} ${height}`} role="img" aria-label={says}>
      <path class="axis" d={`M${frame.left} ${frame.top}V${frame.bottom}H${frame.right}`} />
      {scatter.x.ticks.map(({ at, text }) => (
        <g key={text}>
          <path class="axis" d={`M${at.toFixed(1)} ${frame.bottom}v5`} />
          <text x={at} y={frame.bottom + 18} text-anchor="middle">
            {text}
          </text>
        </g>
      ))}
      {scatter.y.ticks.map(({ at, text }) => (
        <g key={text}>
          <path class="axis" d={`M${frame.left} ${at.toFixed(1)}h-5`} />
          <text x={frame.left - 8} y={at + 4} text-anchor="end">
            {text}
          </text>
        </g>
      ))}
      <text class="title" x={frame.right} y={height - 6} text-anchor="end">
        {`${titleOf(choices, x)}; better to the ${betterTo(x, ['left', 'right'])}${scatter.x.stepped === 'by ratio' ? '; stepped by ratio' : ''}`}
      </text>
      <text class="title" x={4} y={14}>
        {`${titleOf(choices, y)}; better ${betterTo(y, ['down', 'up'])}${scatter.y.stepped === 'by ratio' ? '; stepped by ratio' : ''}`}
      </text>
      {!third && scatter.line && <path class="steps" d={scatter.line} />}
      {scatter.points.map(({ x, y, onFrontier, places }) => (
        <g key={`${x} ${y}`}>
          <circle class={onFrontier ? 'dot first' : 'dot'} cx={x} cy={y} r={onFrontier ? 3.6 : 1.8} />
          {pointed !== undefined && places.includes(pointed) && <circle class="ring" cx={x} cy={y} r={8} />}
        </g>
      ))}
      {scatter.labels.map(({ x, y, text, anchor }) => (
        <text key={`${x} ${y}`} x={x} y={y + 4} text-anchor={anchor}>
          {text}
        </text>
      ))}
    </svg>
  );
}

/** The two or three figures that are held against each other. */
function Pickers({ axes }: { axes: readonly FigureId[] }) {
  const names = ['across', 'upward', 'beside the dots'];
  const [third, setThird] = useState(axes.length > 2);
  const shown = third || axes.length > 2 ? 3 : 2;
  return (
    <p class="pickers">
      {names.slice(0, shown).map((name, i) => (
        <label key={name}>
          {name}{' '}
          <select
            value={axes[i] ?? ''}
            onChange={({ currentTarget: { value } }) => {
              const picked = AXES.find((id) => id === value);
              const kept = wish.peek().frontier;
              // Picked where it stands already in another place: the two change places.
              const next = kept.map((id, j) => (j === i ? picked : id === picked ? kept[i] : id));
              if (i === 2) next[2] = picked;
              choose({ frontier: next.flatMap((id) => id ?? []) });
              if (i === 2 && !picked) setThird(false);
            }}
          >
            {i === 2 && <option value="">nothing more</option>}
            {AXES.map((id) => (
              <option key={id} value={id} disabled={i === 2 && axes.slice(0, 2).includes(id)}>
                {figureName(id)}
              </option>
            ))}
          </select>
        </label>
      ))}
      {shown === 2 && (
        <button type="button" class="lead" onClick={() => setThird(true)}>
          hold a third figure against them
        </button>
      )}
    </p>
  );
}
