import { type Zone, zoneOf } from '../../base/zone.ts';
import { connectedYears } from '../../money/connected-charge.ts';
import type { MonthDemand } from '../../money/demand.ts';
import { type RateBreaks, rateBreaks } from '../../money/rate-breaks.ts';
import type { Tariff } from '../../money/tariff.ts';
import type { Season } from '../../season/season.ts';
import { nameplateHp } from '../fan/nominal-power.ts';
import { untimedStretches } from '../fan/untimed-stretches.ts';
import type { FanSeason } from '../types.ts';
import type { HeatTaken } from './heater-use.ts';
import { leastDemand } from './least-demand.ts';
import { mostDemand } from './most-demand.ts';
import { heatInDoubt, onTheMeter } from './on-the-meter.ts';

/** What one tariff charges its fans over the time that their logs span. */
export interface TariffBill {
  tariff: Tariff;
  zone: Zone;
  /** the fans on it that have a log, with what their electric heaters draw from it */
  fans: readonly FanSeason[];
  fromMs: number;
  toMs: number;
  rates: RateBreaks;
  /** [rules][months]; a month's shares are in the order of `fans` */
  demand: readonly (readonly MonthDemand[])[];
  /** money for a year on the nameplates of all fans that season.yaml puts on the tariff */
  connectedPerYear: number;
  years: number;
}

// Each bin asks for the bills anew; they hang on all fans at once.
const known = new WeakMap<readonly FanSeason[], { season: Season; bills: Map<HeatTaken, Map<string, TariffBill>> }>();

/**
 * The bills of a season by tariff id, with heat as it is taken and hours of unknown moment within the rules of demand; the least has these outside the rules of demand, and apart.
 * Tariffs none of whose fans has a log are left out.
 */
export function tariffBills(
  season: Season,
  fanSeasons: readonly FanSeason[],
  taken: HeatTaken = 'told',
): Map<string, TariffBill> {
  const before = known.get(fanSeasons);
  const kept = before?.season === season ? before.bills : new Map<HeatTaken, Map<string, TariffBill>>();
  known.set(fanSeasons, { season, bills: kept });
  const bills = kept.get(taken) ?? billsOf(season, onTheMeter(season, fanSeasons, taken), taken);
  kept.set(taken, bills);
  return bills;
}

/** Whether the least that a tariff may have charged is less than is told: some heat or the moments of some hours are not known. */
export function billInDoubt(season: Pick<Season, 'fans'>, fanSeasons: readonly FanSeason[]): boolean {
  return heatInDoubt(season, fanSeasons) || untimedStretches(fanSeasons).length > 0;
}

function billsOf(season: Season, fanSeasons: readonly FanSeason[], taken: HeatTaken): Map<string, TariffBill> {
  const zone = zoneOf(season.site.timeZone);
  const bills = new Map<string, TariffBill>();
  for (const tariff of season.tariffs) {
    const on = season.fans.filter((fan) => fan.tariffId === tariff.id);
    const fans = fanSeasons.filter((fan) => fan.spans.state.length > 0 && on.some((stated) => stated.id === fan.fanId));
    if (fans.length === 0) continue;
    const fromMs = Math.min(...fans.map((fan) => fan.spans.startMs[0]));
    const toMs = Math.max(...fans.map((fan) => fan.spans.endMs[fan.spans.endMs.length - 1]));
    bills.set(tariff.id, {
      tariff,
      zone,
      fans,
      fromMs,
      toMs,
      rates: rateBreaks(tariff, zone, fromMs, toMs),
      demand: tariff.demand.map((rule) =>
        taken === 'least' ? leastDemand(rule, zone, fans, fromMs, toMs) : mostDemand(rule, zone, fans, fromMs, toMs),
      ),
      connectedPerYear: (tariff.connectedPerHpYear ?? 0) * on.reduce((sum, fan) => sum + nameplateHp(fan), 0),
      years: connectedYears(zone, fromMs, toMs),
    });
  }
  return bills;
}
