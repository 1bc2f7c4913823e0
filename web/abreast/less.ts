import { letter, type Row } from '../../core/index.ts';
import { toldAs } from '../figures/value.ts';

/** What a pairing has more or less than another, in words: `1.25 mm more (1.13 to 1.37)`; a tie is told as one. */
export function lessOf({ id, differences, stands }: Row, base: number, place: number): string {
  const stand = stands[base]?.[place];
  // Told as a size: what is less by so much is what the other has more.
  const size = stand === 'less' ? differences[place]?.[base] : differences[base]?.[place];
  if (stand === 'level') return `level with ${letter(base)}`;
  if (stand === 'not known' || size?.state !== 'known') return `against ${letter(base)}: not known`;
  const { text, unit, range } = toldAs(id, size);
  // `2.5× more` would be read as a factor.
  const behind =
    id === 'systemMagnification' ? '' : unit === '%' ? ' points' : unit === '' || unit === '×' || unit === '°' ? unit : ` ${unit}`;
  return `${text}${behind} ${stand}${range ? ` (${range})` : ''}`;
}
