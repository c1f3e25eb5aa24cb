import type { Hours } from './hours.ts';

/**
 * What a bin's power costs, hour by hour as it runs: energy by the hour's price, demand by each month's highest power within
 * the rule's time, at least the ratchet's part of the highest month before. The bin is taken alone on its tariff: what other
 * bins' fans add to a peak is not seen. A season has no more than the eleven months that a ratchet looks back.
 *
 * Numbers, so that a search can keep and put them back: 0 energy money, 1 demand money, 2 fuel money, 3 kWh, 4 fan hours; then
 * for each demand rule the month, its peak so far in kW, and the highest month before, kW.
 */
export type MoneyMeter = Float64Array;

export const METER = { energyCost: 0, demandCost: 1, fuelCost: 2, kwh: 3, fanHours: 4 } as const;
const FIRST_RULE = 5;

export function newMeter(hours: Hours): MoneyMeter {
  return new Float64Array(FIRST_RULE + 3 * hours.demand.length);
}

/**
 * Count an hour.
 *
 * @param share    of the hour in which the fan ran, 0 to 1
 * @param powerKw  while it ran
 * @param fuel     money for an hour of the heater's fuel, 0 where it did not burn
 * @valid          the kernel: no checks, no allocation
 */
export function meterHour(
  meter: MoneyMeter,
  hours: Hours,
  hour: number,
  share: number,
  powerKw: number,
  fuel: number,
): void {
  const kwh = share * powerKw;
  if (share > 0) {
    meter[METER.energyCost] += kwh * hours.pricePerKwh[hour];
    meter[METER.fuelCost] += share * fuel;
    meter[METER.kwh] += kwh;
    meter[METER.fanHours] += share;
  }
  for (let rule = 0; rule < hours.demand.length; rule++) {
    const { holds, pricePerKw, ratchet } = hours.demand[rule];
    if (holds[hour] === 0) continue;
    const at = FIRST_RULE + 3 * rule;
    const month = hours.localMonth[hour];
    if (meter[at] !== month) {
      if (meter[at + 1] > meter[at + 2]) meter[at + 2] = meter[at + 1];
      meter[at] = month;
      // The ratchet's part is owed from the month's first hour on, run or not.
      meter[at + 1] = ratchet * meter[at + 2];
      meter[METER.demandCost] += meter[at + 1] * pricePerKw;
    }
    if (share > 0 && powerKw > meter[at + 1]) {
      meter[METER.demandCost] += (powerKw - meter[at + 1]) * pricePerKw;
      meter[at + 1] = powerKw;
    }
  }
}

/** All money so far; NaN once an hour without a price was used. */
export function meterCost(meter: MoneyMeter): number {
  return meter[METER.energyCost] + meter[METER.demandCost] + meter[METER.fuelCost];
}

/** Months in which a rule holds that come after a month, until a run's end: [rules][0 none yet, 1 to 12]. */
export type MonthsLeft = readonly Uint8Array[];

/** @param endHour  first hour after the run */
export function monthsLeft(hours: Hours, endHour: number): MonthsLeft {
  return hours.demand.map(({ holds }) => {
    const months: number[] = [];
    for (let hour = 0; hour < endHour; hour++) {
      if (holds[hour] === 1 && months.at(-1) !== hours.localMonth[hour]) months.push(hours.localMonth[hour]);
    }
    const left = new Uint8Array(13).fill(months.length);
    for (let i = 0; i < months.length; i++) left[months[i]] = months.length - 1 - i;
    return left;
  });
}

/** Money that the peaks so far will still cost by their ratchets, though the fan never ran again. No allocation. */
export function owedLater(meter: MoneyMeter, { demand }: Hours, left: MonthsLeft): number {
  let owed = 0;
  for (let rule = 0; rule < demand.length; rule++) {
    const at = FIRST_RULE + 3 * rule;
    const { pricePerKw, ratchet } = demand[rule];
    owed += left[rule][meter[at]] * ratchet * Math.max(meter[at + 1], meter[at + 2]) * pricePerKw;
  }
  return owed;
}
