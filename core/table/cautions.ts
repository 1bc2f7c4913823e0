import { buildCautions } from './build/cautions.ts';
import { closeUpCautions } from './close-up/cautions.ts';
import type { TableEvaluation } from './evaluate.ts';
import type { TableGroup } from './groups.ts';
import { infinityCautions } from './infinity/cautions.ts';
import { lightCautions } from './light/cautions.ts';
import { stackCautions } from './stack/cautions.ts';
import { stillnessCautions } from './stillness/cautions.ts';

type Cautions = (evaluation: TableEvaluation) => readonly string[];

/** Short cautions of each group: what can hurt eyes, parts, subject or picture while that is done. */
const CAUTIONS: Record<TableGroup, Cautions> = {
  build: buildCautions,
  infinity: infinityCautions,
  stack: stackCautions,
  stillness: stillnessCautions,
  light: lightCautions,
  closeUp: closeUpCautions,
};

export const tableCautions = (evaluation: TableEvaluation, group: TableGroup): readonly string[] => CAUTIONS[group](evaluation);
