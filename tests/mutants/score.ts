import { dirname } from 'node:path';

/** How many mutants are noticed, by folder. One that nothing was tried on counts as not noticed. */

const FLOORS = { each: 0.85, all: 0.9 };

interface Score {
  mutants: number;
  noticed: number;
  equivalent: number;
  share: number;
}

export function scores(tried: readonly { file: string; state: string }[]) {
  const folders: Record<string, Score> = {};
  for (const { file, state } of tried) {
    const score = folders[dirname(file)] ?? { mutants: 0, noticed: 0, equivalent: 0, share: 0 };
    folders[dirname(file)] = score;
    score.mutants++;
    if (state === 'noticed') score.noticed++;
    if (state === 'equivalent') score.equivalent++;
  }
  let [good, count] = [0, 0];
  for (const score of Object.values(folders)) {
    good += score.noticed + score.equivalent;
    count += score.mutants;
    score.share = Number(((score.noticed + score.equivalent) / score.mutants).toFixed(3));
  }
  const share = good / count;
  const low = Object.entries(folders)
    .filter(([, score]) => score.share < FLOORS.each)
    .map(([folder, score]) => `${folder}: ${(100 * score.share).toFixed(1)} % noticed, less than ${100 * FLOORS.each} %`);
  if (share < FLOORS.all) low.push(`all: ${(100 * share).toFixed(1)} % noticed, less than ${100 * FLOORS.all} %`);
  return { folders, low, sentence: `${good} of ${count} mutants are noticed or equivalent: ${(100 * share).toFixed(1)} %` };
}
