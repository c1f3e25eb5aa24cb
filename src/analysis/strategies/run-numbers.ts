import { toLocalMs, type Zone } from '../../base/zone.ts';
import type { Outcome } from '../../simulation/run/outcome.ts';
import { reachedDay } from './reached-day.ts';
import { NUMBERS, type SweepRow } from './sweep-columns.ts';

/** A finished run as it is kept and handed between threads. */
export interface FinishedRun {
  /** by NUMBERS, then 1 or 0 for reached, then the instant from which it is, ms UTC, [NUMBERS + 2]; NaN where missing; null: nothing to tell */
  numbers: number[] | null;
  why: string | null;
}

const HOUR_MS = 3_600_000;

/**
 * @param startMs  of the run, ms UTC
 * @param bushels  as filled; null where not known
 */
export function runNumbers(outcome: Outcome, startMs: number, bushels: number | null): number[] {
  const told: Record<(typeof NUMBERS)[number]['name'], number> = {
    fanHours: outcome.fanHours,
    energyKwh: outcome.energyKwh,
    energyCost: outcome.energyCost,
    demandCost: outcome.demandCost,
    heatCost: outcome.heatCost,
    cost: outcome.cost,
    costPerBushel: bushels === null ? Number.NaN : outcome.cost / bushels,
    endMoisturePct: 100 * outcome.endMoistureWb,
    topMoisturePct: 100 * outcome.topMoistureWb,
    bottomMoisturePct: 100 * outcome.bottomMoistureWb,
    wettestMoisturePct: 100 * outcome.wettestWb,
    endTemperatureC: outcome.endTempC,
    warmestC: outcome.warmestC,
    storageLifeUsed: outcome.lifeUsed,
    dryMatterLossPct: 100 * outcome.lossMean,
    worstLayerLossPct: 100 * outcome.lossWorst,
    waterByAirKg: outcome.waterByAirKg,
    waterImbalance: outcome.imbalance.water,
    heatImbalance: outcome.imbalance.heat,
  };
  return [
    ...NUMBERS.map(({ name }) => told[name]),
    outcome.reachedTarget ? 1 : 0,
    startMs + outcome.reachedHour * HOUR_MS,
  ];
}

/** What a run says of itself by column, dates by the site's clock. */
export function rowOfRun({ numbers, why }: FinishedRun, zone: Zone): SweepRow {
  const at = (i: number) => (numbers === null || Number.isNaN(numbers[i]) ? null : numbers[i]);
  const row: SweepRow = Object.fromEntries(NUMBERS.map(({ name }, i) => [name, at(i)]));
  const reached = at(NUMBERS.length);
  const since = at(NUMBERS.length + 1);
  row.reachedTarget = reached === null ? null : reached === 1;
  row.reachedOn = since === null ? null : new Date(toLocalMs(zone, reachedDay(since))).toISOString().slice(0, 10);
  row.why = why ?? missingWhy(row);
  return row;
}

/** Numbers may lack one by one: why. */
function missingWhy(row: SweepRow): string | null {
  const parts: string[] = [];
  if (row.cost === null) parts.push('No price is stated for the hours in which the fan ran.');
  else if (row.costPerBushel === null) parts.push('The bushels are not known.');
  if (row.storageLifeUsed === null) parts.push('No storage rule is known for the crop.');
  else if (row.dryMatterLossPct === null) parts.push('The crop’s storage rule counts germination, not dry matter.');
  return parts.length === 0 ? null : parts.join(' ');
}
