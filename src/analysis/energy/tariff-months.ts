import { energyCost } from '../../money/energy-cost.ts';
import { localMonths } from '../../money/local-time.ts';
import { minimumTopUp } from '../../money/minimum-top-up.ts';
import type { Season } from '../../season/season.ts';
import type { FanSeason, TariffMonth } from '../types.ts';
import { tariffBills } from './tariff-bill.ts';

/**
 * Each tariff's bill by local calendar month, over the months that its fans' logs touch. Connected load counts a
 * twelfth of its year in each month, in the minimum too; fixed and minimum charges are whole in months touched in part.
 */
export function tariffMonths(season: Season, fanSeasons: readonly FanSeason[]): TariffMonth[] {
  const months: TariffMonth[] = [];
  for (const { tariff, zone, fans, fromMs, toMs, rates, demand, connectedPerYear } of tariffBills(
    season,
    fanSeasons,
  ).values()) {
    localMonths(zone, fromMs, toMs).forEach(({ month, fromMs: start, toMs: end }, m) => {
      let energyKwh = 0;
      let cost = 0;
      for (const fan of fans) {
        const used = energyCost(fan.spans, rates, start, end);
        energyKwh += used.kwh;
        cost += used.cost;
      }
      const rules = demand.map((rule) => {
        const { peakKw, billedKw, atMs, cost } = rule[m];
        return { peakKw, billedKw, atMs, cost };
      });
      const fixed = tariff.fixedPerMonth ?? 0;
      const connected = connectedPerYear / 12;
      const charges = cost + rules.reduce((sum, rule) => sum + rule.cost, 0) + fixed + connected;
      const topUp = minimumTopUp(tariff.minimumPerMonth, charges);
      months.push({
        tariffId: tariff.id,
        month,
        energyKwh,
        energyCost: cost,
        demand: rules,
        fixed,
        connected,
        minimumTopUp: topUp,
        total: charges + topUp,
      });
    });
  }
  return months;
}
