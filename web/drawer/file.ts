import { signal } from '@preact/signals';
import type { Problem } from '../../core/index.ts';
import { askForCatalogue } from '../state/catalogue.ts';
import { ask, problemsIn } from './server.ts';

/** Files of parts: opened, sent to the server, and what came of it. */

/** A part that did not come in, by its line in a table or its place in a list. */
export interface Refused {
  line: number;
  id?: string;
  problems: readonly Problem[];
}

/** What came of a file. */
export interface Came {
  added: number;
  replaced: number;
  unchanged: number;
  refused: readonly Refused[];
}

export type Opened =
  | { state: 'reading'; name: string }
  | { state: 'came'; name: string; table: boolean; came: Came }
  /** As a whole, with the reason, to follow 'could not be opened: '. */
  | { state: 'fault'; name: string; why: string };

export const opened = signal<Opened | undefined>(undefined);

/** Larger files hold more than a drawer does. */
const LARGEST_BYTES = 8 * 1024 * 1024;

let last: File | undefined;

/** A table ends in .csv; of other names what does not begin as JSON is one. */
const isTable = (name: string, text: string): boolean => /\.csv$/i.test(name) || (!/\.json$/i.test(name) && !/^\s*[{[]/.test(text));

/**
 * Puts the parts of a file into the drawer: the good ones, and those that differ only where that was asked for.
 * @param replace whether what lies there under the same id gives way
 */
export async function openParts(file: File, replace = false): Promise<void> {
  last = file;
  const name = file.name.slice(0, 80);
  const tell = (next: Opened): void => {
    if (last === file) opened.value = next;
  };
  const fault = (why: string): void => tell({ state: 'fault', name, why });
  tell({ state: 'reading', name });
  if (file.size > LARGEST_BYTES) return fault('it is larger than 8 MB, more than a drawer holds');
  let text: string;
  try {
    text = new TextDecoder('utf-8', { fatal: true, ignoreBOM: true }).decode(await file.arrayBuffer());
  } catch {
    return fault('it is not text in UTF-8; a table program asks for the encoding when it saves');
  }
  const table = isTable(name, text);
  const answer = await ask('POST', `/api/parts/drawer${replace ? '?replace=true' : ''}`, {
    headers: { 'content-type': table ? 'text/csv' : 'application/json' },
    body: text,
  });
  if (!answer) return fault('the server does not answer; open it again when it does');
  if (!answer.ok)
    return fault(
      (await problemsIn(answer))
        .map(({ message, expected }) => `it ${message}${expected ? `; what would do: ${expected}` : ''}`)
        .join('; '),
    );
  tell({ state: 'came', name, table, came: (await answer.json()) as Came });
  await askForCatalogue();
}

/** The last file once more, so that its parts take the place of those that differ. */
export const replaceFromLast = (): Promise<void> | undefined => last && openParts(last, true);
