import type { Fan } from '../../bin/fan.ts';
import type { FanSeason } from '../types.ts';
import { fullLoadPower } from './nominal-power.ts';

/** A motor drives a fan at 80 to 115 % of its nameplate (common practice); from twice on it would burn, below a quarter it hardly turns. */
export const MISFIT_ABOVE = 2;
export const MISFIT_BELOW = 0.25;
/** Fewer hours may be starts alone. */
const LEAST_HOURS = 6;

/**
 * Where the power that was measured while a fan ran is far from what its nameplate can draw at full load: a sentence; null where it is
 * not, or where the nameplate is all that tells the power.
 */
export function nameplateMisfit(
  fan: Fan,
  season: Pick<FanSeason, 'energyFrom' | 'energyKwh' | 'onHours'>,
): string | null {
  const { energyFrom, energyKwh, onHours } = season;
  if (energyFrom === null || energyFrom === 'nameplate' || onHours < LEAST_HOURS) return null;
  const measuredW = (1000 * energyKwh) / onHours;
  const { powerW } = fullLoadPower(fan);
  const ratio = measuredW / powerW;
  if (!(ratio > MISFIT_ABOVE || ratio < MISFIT_BELOW)) return null;
  const kilowatt = (watt: number) => `${Number((watt / 1000).toPrecision(2))} kW`;
  const by = { meter: 'its meter', power: 'its logged power', current: 'its current' }[energyFrom];
  const check =
    energyFrom === 'current'
      ? 'volts, phases and power factor, and whether the current is that of one line of this fan alone'
      : 'the unit of the column, and whether it counts this fan alone';
  return `Fan ${fan.id} draws ${kilowatt(measuredW)} by ${by}, ${ratio > 1 ? `${Number(ratio.toPrecision(2))} times` : `${Math.round(100 * ratio)} % of`} what its nameplate draws at full load (${kilowatt(powerW)}): one of the two is wrong, and with it energy and cost, or the charge on its nameplate. Check the nameplate in season.yaml first, then ${check}.`;
}
