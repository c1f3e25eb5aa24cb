import { alwaysOn } from './always-on.ts';
import { cheapHours } from './cheap-hours.ts';
import { daytimeHours } from './daytime-hours.ts';
import { dryingThenCooling } from './drying-then-cooling.ts';
import { equilibriumWindow } from './equilibrium-window.ts';
import { humidityLimit } from './humidity-limit.ts';
import { nightHours } from './night-hours.ts';
import type { Strategy } from './strategy.ts';
import { temperatureDifference } from './temperature-difference.ts';
import { warmedAir } from './warmed-air.ts';

/** The strategies that the kit can run without a schedule; `as-logged` and `best-in-hindsight` come as `scheduled`. */
export const STRATEGIES: readonly Strategy[] = [
  alwaysOn,
  daytimeHours,
  nightHours,
  humidityLimit,
  temperatureDifference,
  equilibriumWindow,
  cheapHours,
  dryingThenCooling,
  warmedAir,
];

/** @throws RangeError that lists the ids */
export function strategyOf(id: string): Strategy {
  const found = STRATEGIES.find((one) => one.id === id);
  if (found === undefined) {
    throw new RangeError(`no strategy "${id}"; there are ${STRATEGIES.map((one) => one.id).join(', ')}`);
  }
  return found;
}
