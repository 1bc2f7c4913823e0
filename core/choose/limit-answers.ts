import { type Answer, interval } from '../pairing/answer.ts';
import type { Circle } from '../pairing/image-circles.ts';
import type { FigureId } from '../pairing/registry.ts';
import type { Price } from './asked.ts';
import { COVERING, unknownCircles } from './covering.ts';
import { type Limit, type LimitName, limitsOf, marginOf, meets } from './limits.ts';
import type { Want } from './want.ts';

/** How one limit fares. `value` and `margin` are left out where there is no number; a figure without limit meets a least one. */
export interface LimitAnswer {
  name: LimitName | 'price';
  figure?: FigureId;
  state: Answer['state'];
  value?: number;
  limit: number;
  meets: boolean;
  /** Met, or missed, wherever in its ± the figure is. */
  surely: boolean;
  /** By how much of the limit it is met; negative where it is not. */
  margin?: number;
  /** The circles that are not known and so are not counted: what is met without them is not surely met. */
  without?: Circle[];
  /** What is missing where the figure is not known. */
  missing?: string[];
}

export function limitAnswers(want: Want, answers: Readonly<Partial<Record<FigureId, Answer>>>, price: Price): LimitAnswer[] {
  const told = limitsOf(want).map((limit) => figureAnswer(limit, answers));
  return want.maxPrice === undefined ? told : [...told, priceAnswer(price, want.maxPrice)];
}

function figureAnswer(asked: Limit, answers: Readonly<Partial<Record<FigureId, Answer>>>): LimitAnswer {
  const { name, figure, limit } = asked;
  const answer = answers[figure] as Answer;
  const without = COVERING.has(figure) ? unknownCircles(answers) : [];
  const span = interval(answer);
  if (!span)
    return {
      name,
      figure,
      state: answer.state,
      limit,
      meets: false,
      surely: answer.state === 'none',
      ...(answer.state === 'unknown' ? { missing: [...answer.missing] } : {}),
    };
  const [low, value, high] = span;
  const met = meets(asked, value);
  return {
    name,
    figure,
    state: answer.state,
    ...(Number.isFinite(value) ? { value, margin: marginOf(asked, value) } : {}),
    limit,
    meets: met,
    surely: (!met || without.length === 0) && meets(asked, low) === met && meets(asked, high) === met,
    ...(without.length > 0 ? { without } : {}),
  };
}

/** A missing price neither excludes nor passes: what is known of it decides, and surely only where all is known or it is too much already. */
function priceAnswer({ known, missing }: Price, limit: number): LimitAnswer {
  const asked = { sense: 'most', limit } as const;
  const met = meets(asked, known);
  return {
    name: 'price',
    state: missing.length > 0 ? 'unknown' : 'known',
    value: known,
    margin: marginOf(asked, known),
    limit,
    meets: met,
    surely: !met || missing.length === 0,
  };
}
