import { earned, short } from '../../core/index.ts';
import { toldAt } from '../fields/complaint.tsx';
import { Typed } from '../fields/typed.tsx';
import { commit } from '../state/address.ts';
import { numberTyped } from '../state/json.ts';

/** A number on a plate that can be typed: its words, its value, its unit. */
export interface Entry {
  name: string;
  label: string;
  /** Its words on the plate. */
  short: string;
  unit: string;
  path: string;
  value: number;
  step: number;
  least: number;
  greatest: number;
  plusMinus: number;
  assumed: boolean;
  /** Digits that it is written with, where four are too many. */
  digits?: number;
  /** Takes what was typed: a number, or what is none. */
  type(value: number | string | undefined): void;
  set(value: number): void;
}

export const entryId = (name: string): string => `plate-${name}`;

/** A guess with the digits that its ± earns, any other number with four at most. */
const text = ({ value, plusMinus, assumed, digits = 4 }: Entry): string =>
  assumed && plusMinus > 0 ? earned(value, value - plusMinus, value + plusMinus) : short(value, digits);

/** Characters that the value needs. */
const size = (entry: Entry): number => Math.max(2, text(entry).length) + 1;

/** Rough width in px, for keeping entries apart. */
export const entryWidth = (entry: Entry): number =>
  Math.round(6.6 * (entry.short.length + entry.unit.length + (entry.plusMinus > 0 ? spreadOf(entry).length : 0)) + 7 * size(entry) + 26);

const spreadOf = ({ plusMinus }: Entry): string => `± ${short(plusMinus, 2)}`;

/** Words, number and unit in one line; beside it, for fingers, a step down and a step up. */
export function PlateInput({ entry, steps }: { entry: Entry; steps?: boolean }) {
  const { name, label, unit, path, value, step, least, greatest, plusMinus, assumed } = entry;
  const found = toldAt(path);
  const by = (n: number): void => {
    entry.set(Math.min(greatest, Math.max(least, Number((value + n).toPrecision(6)))));
    commit();
  };
  return (
    <span class={`entry${assumed ? ' assumed' : ''}`}>
      <label for={entryId(name)}>
        <span aria-hidden="true">{entry.short}</span>
        <span class="unseen">{[label, unit && `in ${unit}`].filter(Boolean).join(', ')}</span>
      </label>
      {steps && (
        <button type="button" class="step" aria-label={`${label}: ${step} ${unit} less`} onClick={() => by(-step)}>
          −
        </button>
      )}
      <span class="number">
        <Typed
          id={entryId(name)}
          value={text(entry)}
          size={size(entry)}
          wrong={found.length > 0 ? `${entryId(name)}-wrong` : undefined}
          onType={(text) => entry.type(numberTyped(text))}
        />
        {unit && <span class="unit">{unit}</span>}
        {plusMinus > 0 && <span class="spread">{spreadOf(entry)}</span>}
      </span>
      {steps && (
        <button type="button" class="step" aria-label={`${label}: ${step} ${unit} more`} onClick={() => by(step)}>
          +
        </button>
      )}
    </span>
  );
}
