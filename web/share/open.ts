import { batch, signal } from '@preact/signals';
import { arriving, commit, fault, settle } from '../state/address.ts';
import { fetchWorks } from '../state/works.ts';
import { LARGEST_BYTES, read } from './file.ts';

/** How the last file fared: what stands open by its name, or why it does not. */
export const opened = signal<{ name: string; fault: string } | undefined>(undefined);

/** The file that was asked for last: one that was slower to read does not come over it. */
let latest: File | undefined;

/**
 * Opens a file as one step of history. Where it holds no pairing everything stays as it is and `opened`
 * says why.
 */
export async function openFile(file: File): Promise<void> {
  latest = file;
  const name = file.name.slice(0, 80);
  const tell = (wrong: string): void => {
    if (latest === file) opened.value = { name, fault: wrong };
  };
  opened.value = undefined;
  if (file.size > LARGEST_BYTES) return tell(`it is larger than ${LARGEST_BYTES / 1024} kB, far too large for a pairing`);
  let bytes: Uint8Array;
  try {
    bytes = new Uint8Array(await file.arrayBuffer());
  } catch {
    return tell('the browser could not read it');
  }
  let found = read(bytes);
  if (found.waits) {
    try {
      await fetchWorks();
    } catch {
      return tell('what traces its relay’s glass could not be fetched');
    }
    found = read(bytes);
  }
  const { pairing } = found;
  if (latest !== file) return;
  if (!pairing) return tell(found.fault ?? 'what it holds is no pairing');
  // An edit under way becomes a step of its own, so that going back finds it; what stands in for a broken link is none.
  if (fault.peek() === '') commit();
  batch(() => {
    arriving.value = 'no';
    settle(pairing);
  });
  tell('');
}
