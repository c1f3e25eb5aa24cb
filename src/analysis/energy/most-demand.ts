import type { Zone } from '../../base/zone.ts';
import { DEMAND_MS, type MonthDemand, monthlyDemand } from '../../money/demand.ts';
import type { PowerSpans } from '../../money/energy-cost.ts';
import type { DemandRule } from '../../money/tariff.ts';
import { untimedStretches, withoutMoments } from '../fan/untimed-stretches.ts';
import type { FanSeason } from '../types.ts';
import { placedHours } from './placed-hours.ts';

/**
 * The most that a rule of demand can have charged fans of which some have hours of unknown moment: these lie within the rule's time,
 * and there first where the fans whose moments are known drew most.
 *
 * @returns  [months]; shares in the order of `fans`
 */
export function mostDemand(
  rule: DemandRule,
  zone: Zone,
  fans: readonly FanSeason[],
  fromMs: number,
  toMs: number,
): MonthDemand[] {
  const isTimed = untimedStretches(fans).length === 0;
  const timed = () => fans.map(({ spans, spread = [] }) => withoutMoments(spans, spread));
  const beside = isTimed ? new Map<number, number>() : jouleByQuarter(timed());
  const parts = fans.map((fan) =>
    placedHours(fan, rule, zone, 'inside', (ms) => beside.get(Math.floor(ms / DEMAND_MS)) ?? 0),
  );
  return monthlyDemand(rule, zone, parts, fromMs, toMs);
}

/** By the number of a quarter hour since 1970, J. */
function jouleByQuarter(parts: readonly PowerSpans[]): Map<number, number> {
  const out = new Map<number, number>();
  for (const { startMs, endMs, powerW } of parts) {
    for (let k = 0; k < startMs.length; k++) {
      if (!(powerW[k] > 0)) continue;
      for (let at = startMs[k]; at < endMs[k]; ) {
        const quarter = Math.floor(at / DEMAND_MS);
        const next = Math.min(endMs[k], (quarter + 1) * DEMAND_MS);
        out.set(quarter, (out.get(quarter) ?? 0) + (powerW[k] * (next - at)) / 1000);
        at = next;
      }
    }
  }
  return out;
}
