import table from '../../data/glasses.json' with { type: 'json' };
import { abbeNumber, indexAtLine } from '../glass/lines.ts';
import type { Check, Value } from './check.ts';
import { CATALOGUE, named } from './rows/glass.ts';
import type { SourceId } from './sources.ts';

type Provenance = 'catalogue-2017' | 'catalogue-s';

/** Decimals to which each catalogue prints n_d and V_d; the papers print neither. */
const DIGITS: Readonly<Record<Provenance, readonly [nd: number, vd: number]>> = { 'catalogue-2017': [5, 2], 'catalogue-s': [6, 6] };

/** Copied by hand from the catalogue, apart from the table. */
const BY_HAND = new Set<string>(CATALOGUE.map(([, name]) => name));

/** n_d and V_d stand beside the coefficients in the table, which does not keep zeros at their end. */
function valuesFrom(provenance: Provenance): readonly Value[] {
  const [ndDigits, vdDigits] = DIGITS[provenance];
  return table.glasses
    .filter((glass) => glass.provenance === provenance && !BY_HAND.has(glass.name))
    .flatMap(({ name, nd, vd }) => [
      { what: `${name}, n_d`, printed: (nd as number).toFixed(ndDigits), of: () => indexAtLine(named(name), 'd') },
      { what: `${name}, V_d`, printed: (vd as number).toFixed(vdDigits), of: () => abbeNumber(named(name), 'd') },
    ]);
}

const check = (id: string, provenance: Provenance, source: SourceId, claim: string): Check => ({
  id,
  claim,
  source,
  known: 'read',
  how: "Sellmeier's formula, by the coefficients beside the printed numbers",
  values: valuesFrom(provenance),
});

/** The other glasses that a relay can be listed with. */
export const GLASS_TABLE: readonly Check[] = [
  check('GLS-150', 'catalogue-2017', 'glass-catalogue', 'n_d and V_d of the further glasses that a relay can be listed with'),
  check('GLS-151', 'catalogue-s', 'glass-catalogue-other', 'n_d and V_d of glasses of another maker'),
];
