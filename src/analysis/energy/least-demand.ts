import type { Zone } from '../../base/zone.ts';
import { type MonthDemand, monthlyDemand } from '../../money/demand.ts';
import type { PowerSpans } from '../../money/energy-cost.ts';
import type { DemandRule } from '../../money/tariff.ts';
import { withoutMoments } from '../fan/untimed-stretches.ts';
import type { FanSeason } from '../types.ts';
import { placedHours } from './placed-hours.ts';

const NOTHING: PowerSpans = {
  startMs: new Float64Array(0),
  endMs: new Float64Array(0),
  powerW: new Float64Array(0),
};

/**
 * The least that a rule of demand can have charged fans of which some have hours of unknown moment: these may have been run outside
 * the rule's time, and when no other fan ran. So each such fan counts alone, and all fans together in the hours whose moments are
 * known: of these the dearest in each month.
 *
 * @returns  [months]; shares in the order of `fans`
 */
export function leastDemand(
  rule: DemandRule,
  zone: Zone,
  fans: readonly FanSeason[],
  fromMs: number,
  toMs: number,
): MonthDemand[] {
  const bill = (parts: readonly PowerSpans[]) => monthlyDemand(rule, zone, parts, fromMs, toMs);
  const alone = fans.flatMap((fan, own) =>
    (fan.spread ?? []).length === 0
      ? []
      : [bill(fans.map((_, f) => (f === own ? placedHours(fan, rule, zone, 'outside') : NOTHING)))],
  );
  const ways = [bill(fans.map(({ spans, spread = [] }) => withoutMoments(spans, spread))), ...alone];
  return ways[0].map((_, m) =>
    ways.map((way) => way[m]).reduce((most, one) => (one.billedKw > most.billedKw ? one : most)),
  );
}
