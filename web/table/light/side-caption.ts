import { earned } from '../../../core/index.ts';
import type { SideView } from '../../../core/table.ts';
import { tabled } from '../tabled.ts';
import type { Side } from './side-geometry.ts';

export const captionOf = (view: SideView, side: Side): string =>
  [
    `From the side, to scale, with the front of the subject in focus: light reaches the middle of it from the hatched part, up to ${told(side.up)}° above the stage on every side.`,
    deep(view) ? 'Farther down the subject shades itself.' : '',
    comesDown(side) ? 'The broken line is where the nose comes to for the back.' : '',
    view.byRelay ? 'The light ends at the rim of the relay, which is wider than the nose and stands above the drawing.' : '',
    'The fine lines are the light that makes the picture.',
    view.diffuser ? 'The diffuser is dashed.' : '',
  ]
    .filter(Boolean)
    .join(' ');

/** With the digits that the figure has in its own place. */
export function told(up: number): string {
  const { low, high } = tabled.value.answers.lightMiddleDeg as { low?: number; high?: number };
  return earned(up, low, high);
}

const deep = ({ depthMm }: SideView): boolean => depthMm > 0;
/** By so many px that it can be seen. */
export const comesDown = ({ nose: [end], lowest }: Side): boolean => end !== undefined && lowest - end[1] > 3;
