import { options, type VNode } from 'preact';

const UNIT = '(?:[mµn]?m|lp/mm|µm/s|per mm|MP|EV|stops?|m?s|min|h|D|%|[×±])(?!\\w)';
const BEFORE_UNIT = new RegExp(`(\\d) (?=${UNIT})`, 'g');
const BEFORE_NUMBER = /([×±Ø]) (?=\d)/g;
const UNIT_FIRST = new RegExp(`^ (?=${UNIT})`);

/** A text whose lines part no number from its unit, from its ± or from what it is multiplied by. */
export const whole = (text: string): string => text.replace(BEFORE_UNIT, '$1\u00a0').replace(BEFORE_NUMBER, '$1\u00a0');

/** The same of pieces that follow one another: a unit may begin the piece behind its number. */
export const wholes = (pieces: readonly unknown[]): unknown[] =>
  pieces.map((piece, i) => {
    if (typeof piece !== 'string') return piece;
    const before = pieces[i - 1];
    const isNumber = typeof before === 'number' || (typeof before === 'string' && /\d$/.test(before));
    return whole(isNumber ? piece.replace(UNIT_FIRST, '\u00a0') : piece);
  });

/** Sets all text of the page so, here once and not at each place where a number is told. */
export function keepNumbersWhole(): void {
  const before = options.vnode;
  options.vnode = (vnode: VNode<{ children?: unknown }>) => {
    const { type, props } = vnode;
    if (typeof type === 'string') {
      if (typeof props.children === 'string') props.children = whole(props.children);
      else if (Array.isArray(props.children)) props.children = wholes(props.children);
    }
    before?.(vnode);
  };
}
