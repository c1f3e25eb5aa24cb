import { BUSHEL_FT3 } from '../base/bushel.ts';
import type { Estimate } from '../base/estimate.ts';
import type { Units } from '../report/units.ts';

/** L/s per m3 of grain in 1 cfm per bushel of volume: 1 ft3 a minute over the bushel's cubic feet. */
const L_S_M3_PER_CFM_BU = 1000 / 60 / BUSHEL_FT3;

/** An estimate times a number; a negative one turns its ends round. */
export function scaled(of: Estimate, factor: number): Estimate {
  if (of.value === null) return of;
  const [a, b] = of.interval?.map((end) => end * factor) ?? [];
  return {
    ...of,
    value: of.value * factor,
    interval: of.interval === null ? null : [Math.min(a, b), Math.max(a, b)],
  };
}

/** cfm per bushel in the shown unit. */
export function airflowShown(cfmPerBushel: Estimate, units: Units): Estimate {
  return units.system === 'us' ? cfmPerBushel : scaled(cfmPerBushel, L_S_M3_PER_CFM_BU);
}
