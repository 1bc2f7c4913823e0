import type { Problem } from '../../core/index.ts';
import { told } from '../state/draft.ts';
import { complaint } from '../state/words.ts';
import { inputPath } from './names.ts';

/** What is said against the input at a path. */
export const toldAt = (path: string): readonly Problem[] => told.value.filter((p) => p.path === path || inputPath(p.path) === path);

export function Complaint({ id, found }: { id: string; found: readonly Problem[] }) {
  return found.length === 0 ? null : (
    <p class="complaint" id={id}>
      {found.map(complaint).join(' ')}
    </p>
  );
}
