import type { Reading } from '../../core/engravings.ts';
import { RELAY_KINDS } from '../../core/index.ts';
import type { Listed } from '../state/catalogue.ts';
import { matches, wordsOf } from './matching.ts';
import { readAs } from './read-as.ts';

/** One thing to take: a part, or a text that settles what is asked. */
export interface Option {
  id: string;
  words: string;
  /** The part's engraving. */
  small?: string;
  part?: object;
  text?: string;
  /** The part that stands there now. */
  present: boolean;
}

export interface Offer {
  /** What the typed text means; '' where nothing was typed or read. */
  read: string;
  groups: { label: string; asks: boolean; options: Option[] }[];
}

export interface Named {
  name?: string | undefined;
  kind?: string | undefined;
}

interface From {
  /** What was typed, undefined while the line is untouched. */
  typed: string | undefined;
  reading: Reading<object> | undefined;
  parts: readonly Listed<Named>[];
  present: object;
  engraved(part: never): string;
}

const GROUPS: Record<string, string> = {
  own: 'Yours',
  supplementary: 'Close-up lenses',
  'camera-lens': 'Camera lenses',
  'tube-lens': 'Tube lenses',
};

/** What is offered beside a line: what is asked first, then the parts that the text may mean: one's own, then relays by their kind. */
export function offerFor({ typed, reading, parts, present, engraved }: From): Offer {
  const pieces = wordsOf(typed ?? '');
  const now = sorted(present);
  const fitting = parts.flatMap((entry): (Option & { kind: string })[] => {
    const { id, part, own } = entry;
    const small = engraved(part as never);
    if (
      pieces.length > 0 &&
      !matches(pieces, [...wordsOf(`${part.name ?? ''} ${small}`), ...wordsOf(`${GROUPS[part.kind ?? ''] ?? ''} ${own ? GROUPS.own : ''}`)])
    )
      return [];
    const kind = own ? 'own' : (part.kind ?? '');
    const told = own && !own.owned ? `${small}, thought of` : small;
    return [{ id, words: part.name ?? id, small: told, part, present: sorted(part) === now, kind }];
  });
  const asks = (reading?.asks ?? []).map(({ question, answers }) => ({
    label: `Tell ${question.split(':')[0]}`,
    asks: true,
    options: answers.map(({ words, text }, i) => ({ id: `${question}${i}`, words, text, present: false })),
  }));
  const catalogue = ['own', ...RELAY_KINDS, ''].map((kind) => ({
    label: GROUPS[kind] ?? 'From the catalogue',
    asks: false,
    options: fitting.filter((option) => option.kind === kind),
  }));
  return { read: reading ? readAs(reading.part) : '', groups: [...asks, ...catalogue].filter(({ options }) => options.length > 0) };
}

export const optionsIn = ({ groups }: Offer): Option[] => groups.flatMap(({ options }) => options);

/** Equal parts as equal text, whatever the order of their names. */
const sorted = (x: unknown): string =>
  JSON.stringify(x, (_, value) =>
    typeof value === 'object' && value !== null && !Array.isArray(value)
      ? Object.fromEntries(Object.entries(value).toSorted(([a], [b]) => a.localeCompare(b)))
      : value,
  );
