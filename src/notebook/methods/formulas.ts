import { AIR_FORMULAS } from '../../air/formulas.ts';
import type { Formula } from '../../base/formula.ts';
import { BIN_FORMULAS } from '../../bin/formulas.ts';
import { GRAIN_FORMULAS } from '../../grain/formulas.ts';
import { MONEY_FORMULAS } from '../../money/formulas.ts';
import { SIMULATION_FORMULAS } from '../../simulation/formulas.ts';

/** Every formula of the kit, in the order in which the page tells them. */
export const FORMULAS: readonly Formula[] = [
  ...GRAIN_FORMULAS,
  ...BIN_FORMULAS,
  ...SIMULATION_FORMULAS,
  ...AIR_FORMULAS,
  ...MONEY_FORMULAS,
];
