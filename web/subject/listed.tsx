import { bitesOf, type Choice, metOf, type Want } from '../../core/choosing.ts';
import type { FigureId } from '../../core/index.ts';
import { Cautions } from '../cautions.tsx';
import { lower } from '../fields/names.ts';
import { toldAs } from '../figures/value.ts';
import { asksOf } from './blanks.ts';
import { type Entry, type Level, spaceOf, spacingsOf } from './entries.ts';
import { told } from './gives-up.ts';
import { LimitTable } from './limit-table.tsx';
import { PartsLine } from './parts-line.tsx';
import { figureName, levelSaid, priceSaid, standsOf } from './told.ts';
import { Ways } from './ways.tsx';
import { OtherRelays } from './window-of.tsx';

interface Props {
  entry: Entry<Choice>;
  place: number;
  level: Level | undefined;
  figures: readonly FigureId[];
  /** What the list is sorted by. */
  by: FigureId | 'price';
  axes: number;
  want: Want;
  onPoint(place: number | undefined): void;
}

/** One entry of the list: its parts, why it is here, what bites, its figures, what to mind, what it costs. */
export function Listed({ entry, place, level, figures, by, axes, want, onPoint }: Props) {
  const { head, members } = entry;
  const limits = head.limits.filter(asksOf);
  const bites = limits.find(({ name }) => name === head.bites);
  const first = members.find(({ onFrontier }) => onFrontier);
  const at = first && !head.onFrontier ? ` at ${spaceOf(first)} mm` : '';
  return (
    <li
      class="chosen"
      id={`chosen-${place + 1}`}
      onFocusIn={() => onPoint(place)}
      onFocusOut={() => onPoint(undefined)}
      onPointerEnter={() => onPoint(place)}
      onPointerLeave={() => onPoint(undefined)}
    >
      <span class="numeral">{place + 1}</span>
      <div>
        <PartsLine pairing={head.pairing} at={spacingsOf(entry)} />
        <p class="why">
          {limits.length > 0 && `${metOf(limits)} `}
          {bites && (bites.surely ? bitesOf(bites) : <em class="bites">{bitesOf(bites)}</em>)} {standsOf(first !== undefined, at, axes)}{' '}
          {level && levelSaid(level, by)}
        </p>
        <p class="their-figures">
          {figures.map((id, i) => (
            <span key={id}>
              {i > 0 && '; '}
              <Figure choice={head} id={id} first={i === 0} />
            </span>
          ))}
          . {priceSaid(head)}
        </p>
        <Cautions lines={head.cautions} />
        <Ways pairing={head.pairing} />
        {limits.length > 0 && (
          <details class="fold">
            <summary>How each wish fares</summary>
            <LimitTable limits={limits} bites={head.bites} title={`How each wish fares with ${place + 1}`} />
          </details>
        )}
        {limits.length > 0 && <OtherRelays pairing={head.pairing} want={want} id={`chosen-${place + 1}`} />}
      </div>
    </li>
  );
}

/** A figure with the digits that it earns, and from where to where it may be. */
function Figure({ choice, id, first }: { choice: Choice; id: FigureId; first: boolean }) {
  const answer = choice.figures[id];
  const known = answer.state === 'known' ? toldAs(id, answer) : undefined;
  const guessed = answer.state === 'known' && answer.origin === 'assumed';
  return (
    <>
      {first ? figureName(id) : lower(figureName(id))} <b class={guessed ? 'guess' : undefined}>{told(choice, id)}</b>
      {known?.range && <small> ({known.range})</small>}
    </>
  );
}
