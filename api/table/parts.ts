import type { TableGroup } from '../../core/table.ts';
import { BUILD_PART } from './build.ts';
import { CLOSE_UP } from './close-up.ts';
import { INFINITY_PART } from './infinity.ts';
import { LIGHT_PART } from './light.ts';
import type { TablePart } from './part.ts';
import { STACK_PART } from './stack.ts';
import { STILLNESS_PART } from './stillness.ts';

export const TABLE_PARTS: Record<TableGroup, TablePart> = {
  build: BUILD_PART,
  infinity: INFINITY_PART,
  stack: STACK_PART,
  stillness: STILLNESS_PART,
  light: LIGHT_PART,
  closeUp: CLOSE_UP,
};
