import { AIR_METHODS } from './air-methods.ts';
import { CONDITION_METHODS } from './condition-methods.ts';
import { COST_METHODS } from './cost-methods.ts';
import { FAN_METHODS } from './fan-methods.ts';
import { FRONT_METHODS } from './front-methods.ts';
import { GRAIN_METHODS } from './grain-methods.ts';
import type { Method } from './method.ts';
import { STRATEGY_METHODS } from './strategy-methods.ts';

/** What the pages stand on, in the order in which the methods page tells it. */
export const METHODS: readonly Method[] = [
  ...FAN_METHODS,
  ...GRAIN_METHODS,
  ...COST_METHODS,
  ...FRONT_METHODS,
  ...AIR_METHODS,
  ...STRATEGY_METHODS,
  ...CONDITION_METHODS,
];

/** The methods that a page's numbers hang on. */
export function methodsOf(pageId: string): readonly Method[] {
  return METHODS.filter((method) => method.usedOn.includes(pageId));
}
