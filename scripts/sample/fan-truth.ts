import type { BinRun } from './bin-run.ts';
import { HOUR, MINUTE } from './calendar.ts';
import { demandMonths, energyPrice } from './charges.ts';
import type { FarmEnergy } from './farm-energy.ts';
import type { FarmPlan } from './farm-types.ts';

export const round = (value: number, digits: number): number => Number(value.toFixed(digits));
export const iso = (ms: number): string => new Date(ms).toISOString().replace('.000Z', 'Z');

/** Hours, energy and money of a bin's fans, from their exact times. */
export function fanTruth(farm: FarmPlan, run: BinRun, energy: FarmEnergy, months: readonly string[]) {
  const fans = run.plan.fans.map((id) => {
    const fan = farm.fans.find((one) => one.id === id)!;
    const tariff = farm.tariffs.find((one) => one.id === fan.tariff)!;
    const runs = run.runs.get(id)!;
    const { ms, kwh } = energy.minutes.get(id)!;
    let total = 0;
    let cost = 0;
    kwh.forEach((one, i) => {
      total += one;
      cost += one * energyPrice(tariff, ms[i]);
    });
    const demand = demandMonths(tariff, energy.loads.get(tariff.id)!, months);
    return {
      fan: id,
      runHours: round(runs.reduce((sum, one) => sum + one.toMs - one.fromMs, 0) / HOUR, 4),
      starts: runs.length,
      energyKwh: round(total, 4),
      energyCost: round(cost, 4),
      demandCost: round(
        demand.reduce((sum, month) => sum + (month.byPayer.get(id) ?? 0), 0),
        4,
      ),
      connectedPerYear: round(fan.hp * (tariff.connectedPerHpYear ?? 0), 4),
      runs: runs.map((one) => [one.fromMs, one.toMs]),
    };
  });
  const minutes = new Set(run.plan.fans.flatMap((id) => [...energy.minutes.get(id)!.ms]));
  const sorted = [...minutes].sort((a, b) => a - b);
  const starts = sorted.filter((ms, i) => i === 0 || ms - sorted[i - 1] > MINUTE).length;
  const sum = (pick: (fan: (typeof fans)[number]) => number) =>
    round(
      fans.reduce((all, fan) => all + pick(fan), 0),
      4,
    );
  const energyCost = sum((fan) => fan.energyCost);
  const demandCost = sum((fan) => fan.demandCost);
  const connectedPerYear = sum((fan) => fan.connectedPerYear);
  return {
    hours: round(minutes.size / 60, 4),
    starts,
    runHours: sum((fan) => fan.runHours),
    energyKwh: sum((fan) => fan.energyKwh),
    energyCost,
    demandCost,
    connectedPerYear,
    heatCost: 0,
    costWithoutConnected: round(energyCost + demandCost, 4),
    fans,
  };
}

/** Demand by tariff and month. */
export function tariffTruth(farm: FarmPlan, energy: FarmEnergy, months: readonly string[]) {
  return farm.tariffs.map((tariff) => ({
    id: tariff.id,
    months,
    demand: demandMonths(tariff, energy.loads.get(tariff.id)!, months).map((month) => ({
      month: month.month,
      peakKw: round(month.peakKw, 4),
      at: month.atMs === null ? null : iso(month.atMs),
      billedKw: round(month.billedKw, 4),
      cost: round(month.cost, 4),
    })),
  }));
}
