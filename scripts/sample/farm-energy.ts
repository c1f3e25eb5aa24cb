import type { BinRun } from './bin-run.ts';
import { addQuarter, type QuarterLoads } from './charges.ts';
import type { FarmPlan } from './farm-types.ts';
import { type MinuteEnergy, minuteEnergy } from './power.ts';
import type { Weather } from './weather.ts';

export interface FarmEnergy {
  /** by fan */
  minutes: Map<string, MinuteEnergy>;
  /** by tariff: kWh of the fans by quarter hour, payers are fan ids */
  loads: Map<string, QuarterLoads>;
}

export function farmEnergy(farm: FarmPlan, runs: readonly BinRun[], weather: Weather): FarmEnergy {
  const minutes = new Map<string, MinuteEnergy>();
  const loads = new Map<string, QuarterLoads>(farm.tariffs.map((tariff) => [tariff.id, new Map()]));
  for (const fan of farm.fans) {
    const run = runs.find((one) => one.runs.has(fan.id))!;
    const energy = minuteEnergy(fan, run.runs.get(fan.id)!, weather);
    minutes.set(fan.id, energy);
    const of = loads.get(fan.tariff)!;
    energy.ms.forEach((ms, i) => {
      addQuarter(of, ms, fan.id, energy.kwh[i]);
    });
  }
  return { minutes, loads };
}

/** Every local month that the season touches. */
export function seasonMonths(farm: FarmPlan): string[] {
  const out: string[] = [];
  let [year, month] = farm.starts.split('-').map(Number);
  const last = farm.ends.slice(0, 7);
  for (;;) {
    const text = `${year}-${String(month).padStart(2, '0')}`;
    out.push(text);
    if (text === last) return out;
    month++;
    if (month > 12) {
      month = 1;
      year++;
    }
  }
}
