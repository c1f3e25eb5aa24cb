import { type Estimate, estimate, withheld, Z90 } from '../../base/estimate.ts';
import { type MonthDemand, monthlyDemand, ratchetFloor, ratchetMonth } from '../../money/demand.ts';
import { fanTurns, leastPeaks } from '../../money/fan-turns.ts';
import { localMonths } from '../../money/local-time.ts';
import { staggeredStarts } from '../../money/staggered-starts.ts';
import type { Season } from '../../season/season.ts';
import { reachInto, untimedStretches } from '../fan/untimed-stretches.ts';
import type { FanSeason } from '../types.ts';
import { bothHeats } from './both-heats.ts';
import { ofPeak } from './demand-error.ts';
import type { DemandWays } from './demand-ways-types.ts';
import { PEAK_REL_SD } from './fan-cost.ts';
import type { HeatTaken } from './heater-use.ts';
import { billInDoubt, type TariffBill, tariffBills } from './tariff-bill.ts';
import { unknownDemand } from './unknown-demand.ts';

/**
 * What each demand charge would have been, had the same fan hours been run otherwise: with starts a quarter hour apart, and
 * with the fans in turns within each day; month by month, with ratchet. Of the fans on the tariff alone: what else its meter
 * feeds is not in it. Where the moments of a
 * fan's hours are not known other orders of them are withheld. Tariffs with fewer than two fans that ran, or without a demand charge, are left out.
 */
export function staggeredDemand(season: Season, fanSeasons: readonly FanSeason[]): DemandWays[] {
  const of = (taken: HeatTaken) =>
    [...tariffBills(season, fanSeasons, taken).values()].flatMap((bill) => {
      const ran = bill.fans.filter((fan) => fan.onHours > 0).length;
      return bill.demand.length === 0 || ran < 2 ? [] : waysOf(bill);
    });
  return billInDoubt(season, fanSeasons) ? bothHeats(of('told'), of('least')) : of('told');
}

function waysOf(bill: TariffBill): DemandWays[] {
  const { tariff, zone, fromMs, toMs, fans } = bill;
  const parts = fans.map((fan) => fan.spans);
  const apart = staggeredStarts(parts);
  const turns = fanTurns(parts, tariff.demand, zone, fromMs, toMs);
  const months = localMonths(zone, fromMs, toMs);
  return tariff.demand.flatMap((rule, r) => {
    const apartBill = monthlyDemand(rule, zone, apart, fromMs, toMs);
    const turnsBill = monthlyDemand(rule, zone, turns, fromMs, toMs);
    const ways = [bill.demand[r], apartBill, turnsBill].map((demand) => ({
      demand,
      unknown: unknownDemand(bill, rule, demand),
    }));
    const days = leastPeaks(parts, rule, zone, fromMs, toMs);
    const least: { peakKw: number }[] = [];
    const stretches = untimedStretches(fans);
    const untimed = months.findIndex((one) => reachInto(stretches, one.fromMs, one.toMs));
    return months.map(({ month, fromMs: start, toMs: end }, m): DemandWays => {
      const peakKw = days.reduce(
        (most, day) => (day.dayMs >= start && day.dayMs < end ? Math.max(most, day.kw) : most),
        0,
      );
      const leastKw = Math.max(peakKw, ratchetFloor(rule, month, ratchetMonth(least)?.peakKw ?? 0));
      least.push({ peakKw });
      const [asRun, startsApart, inTurns] = ways.map(({ demand, unknown }) => {
        const of = demand[m];
        const more = unknown[m];
        return {
          peakKw: of.peakKw,
          peak: ofPeak(fans, of, of.peakKw, more.peak),
          billedKw: of.billedKw,
          cost: ofPeak(fans, of, of.cost, more.billed * rule.pricePerKw),
        };
      });
      const common = { tariffId: tariff.id, rule: r, month, asRun };
      // A month's peak is in the later ones too, as far as a ratchet reaches.
      const here = reachInto(stretches, start, end);
      if (here || (rule.ratchet !== null && untimed >= 0 && m > untimed)) return { ...common, ...UNTOLD };
      return {
        ...common,
        startsApart,
        inTurns,
        // Fans that ran parts of quarter hours may stay under what whole ones need.
        leastCost: ofPeak(fans, turnsBill[m], Math.min(leastKw * rule.pricePerKw, turnsBill[m].cost), 0),
        saving: savingOf(fans, bill.demand[r][m], turnsBill[m]),
      };
    });
  });
}

const NO_MOMENTS = withheld(
  'A meter that was read once a day or more seldom tells how many hours a fan of this tariff ran, not when: nobody knows which hours could have been run otherwise.',
);
const NO_WAY = { peakKw: Number.NaN, peak: NO_MOMENTS, billedKw: Number.NaN, cost: NO_MOMENTS };
const UNTOLD = { startsApart: NO_WAY, inTurns: NO_WAY, leastCost: NO_MOMENTS, saving: NO_MOMENTS };

/** Both ways have the same fans: the errors of their powers go through the difference of each fan's part. */
function savingOf(fans: readonly FanSeason[], asRun: MonthDemand, other: MonthDemand): Estimate {
  const value = asRun.cost - other.cost;
  const parts = fans.map((fan, f) => fan.energyRelSd * (asRun.shares[f] * asRun.cost - other.shares[f] * other.cost));
  const half = Z90 * Math.hypot(...parts, PEAK_REL_SD * value);
  return estimate(value, value - half, value + half);
}
