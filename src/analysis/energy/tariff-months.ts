import { estimate, Z90 } from '../../base/estimate.ts';
import { energyCost } from '../../money/energy-cost.ts';
import { localMonths } from '../../money/local-time.ts';
import { minimumTopUp } from '../../money/minimum-top-up.ts';
import type { Season } from '../../season/season.ts';
import { unknownHoursBetween } from '../fan/spans.ts';
import { reachInto, untimedStretches } from '../fan/untimed-stretches.ts';
import type { FanSeason, TariffMonth } from '../types.ts';
import { bothHeats } from './both-heats.ts';
import { dearestPrice } from './dearest-price.ts';
import { ofPeak } from './demand-error.ts';
import { fanRelSd } from './fan-cost.ts';
import type { HeatTaken } from './heater-use.ts';
import { notBelowZero } from './parts.ts';
import { placingDoubts } from './placing-doubt.ts';
import { billInDoubt, type TariffBill, tariffBills } from './tariff-bill.ts';
import { unknownDemand } from './unknown-demand.ts';

/**
 * Each tariff's bill by local calendar month, over the months that its fans' logs touch. Connected load counts a
 * twelfth of its year in each month, in the minimum too; electric heaters on the tariff count with their fans; fixed and minimum charges are whole in months touched in part.
 */
export function tariffMonths(season: Season, fanSeasons: readonly FanSeason[]): TariffMonth[] {
  const of = (taken: HeatTaken) => monthsOf(tariffBills(season, fanSeasons, taken));
  return billInDoubt(season, fanSeasons) ? bothHeats(of('told'), of('least')) : of('told');
}

function monthsOf(bills: ReadonlyMap<string, TariffBill>): TariffMonth[] {
  const months: TariffMonth[] = [];
  for (const bill of bills.values()) {
    const { tariff, zone, fans, fromMs, toMs, rates, demand, connectedPerYear } = bill;
    const dearest = dearestPrice(rates);
    const unknown = demand.map((rule, r) => unknownDemand(bill, tariff.demand[r], rule));
    localMonths(zone, fromMs, toMs).forEach(({ month, fromMs: start, toMs: end }, m) => {
      let energyKwh = 0;
      let cost = 0;
      let moreKwh = 0;
      const placing = placingDoubts(fans, rates, start, end);
      const sds = fans.map((fan) => {
        const used = energyCost(fan.spans, rates, start, end);
        energyKwh += used.kwh;
        cost += used.cost;
        if (fan.onHours > 0) moreKwh += (unknownHoursBetween(fan.spans, start, end) * fan.energyKwh) / fan.onHours;
        return { kwh: fanRelSd(fan) * used.kwh, cost: fanRelSd(fan) * used.cost };
      });
      const energyHalf = Z90 * Math.hypot(...sds.map((sd) => sd.cost));
      const untimed = reachInto(untimedStretches(fans), start, end);
      const rules = demand.map((rule, r) => {
        const { peakKw, billedKw, atMs, cost } = rule[m];
        const more = unknown[r][m];
        const told = {
          peak: ofPeak(fans, rule[m], peakKw, more.peak),
          billed: ofPeak(fans, rule[m], billedKw, more.billed),
          cost: ofPeak(fans, rule[m], cost, more.billed * tariff.demand[r].pricePerKw),
        };
        return { peakKw, billedKw, atMs: untimed ? null : atMs, cost, told };
      });
      // All rules see the same fans: what is wrong in one is wrong in all.
      const ends = ([0, 1] as const).map((at) =>
        rules.reduce((sum, rule) => sum + (rule.told.cost.interval?.[at] ?? 0), 0),
      );
      const fixed = tariff.fixedPerMonth ?? 0;
      const connected = connectedPerYear / 12;
      const demandCost = rules.reduce((sum, rule) => sum + rule.cost, 0);
      const charges = cost + demandCost + fixed + connected;
      const topUp = minimumTopUp(tariff.minimumPerMonth, charges);
      const told = {
        energyKwh: notBelowZero(energyKwh, Z90 * Math.hypot(...sds.map((sd) => sd.kwh)), moreKwh),
        energyCost: notBelowZero(cost, energyHalf, moreKwh * dearest + placing.more, placing.less),
        demandCost: estimate(demandCost, ends[0], ends[1]),
      };
      // Energy and demand of one fan are wrong together; the minimum is paid whatever they are.
      const [low, high] = [0, 1].map(
        (at) =>
          (told.energyCost.interval?.[at] ?? cost) + (told.demandCost.interval?.[at] ?? demandCost) + fixed + connected,
      );
      const [most, least] = [low, high].map((sum) => minimumTopUp(tariff.minimumPerMonth, sum));
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
        told: {
          ...told,
          minimumTopUp: estimate(topUp, least, most),
          total: estimate(charges + topUp, low + most, high + least),
        },
      });
    });
  }
  return months;
}
