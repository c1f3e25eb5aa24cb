import { wetFromDry } from '../../grain/moisture-basis.ts';
import { ACCOUNT, type Bed } from '../bed/bed.ts';
import { MEMORY, type Parameters, type Strategy } from '../strategies/strategy.ts';
import type { EnteringAir } from './entering-air.ts';
import { fillView, seeGrain } from './fill-view.ts';
import type { Hours } from './hours.ts';
import type { HoursAround } from './hours-around.ts';
import { METER, type MoneyMeter, meterHour } from './money-meter.ts';
import type { RunTrace } from './outcome.ts';
import { type PlayedBin, playHour, reachLevels } from './played-bin.ts';
import { reached } from './reached.ts';
import type { RunSpec } from './run-spec.ts';
import type { View } from './view.ts';

/**
 * A run ready to be played. Made as one object of one shape: specs and strategies come in many, and V8 would compile the loop
 * over the hours anew for each.
 */
export interface ReadyRun {
  fan: Strategy['fan'];
  heater: NonNullable<Strategy['heater']> | null;
  /** of the strategy */
  id: string;
  values: Parameters;
  bin: PlayedBin;
  hours: Hours;
  air: EnteringAir;
  around: HoursAround;
  view: View;
  meter: MoneyMeter;
  /** null: not asked for */
  kept: RunTrace | null;
  fromHour: number;
  endHour: number;
  goal: RunSpec['goal'];
  targetWb: number | null;
  targetC: number | null;
}

/**
 * Play all hours of a run.
 *
 * @returns  first hour from which the target has been reached, NaN where it is not at the last hour's start; the bed's account
 *           of water before `fromHour`
 * @valid    throws RangeError on a fan share that is none. No allocation in an hour
 */
export function playHours(run: ReadyRun): { since: number; waterBefore: number } {
  const { fan, heater, id, values, bin, hours, air, around, view, meter, kept } = run;
  const { fromHour, endHour, goal, targetWb, targetC } = run;
  const { bed } = bin;
  const memory = new Float64Array(MEMORY);
  // A number handed through a function would be boxed each hour; `reachedSince` says the rule.
  const losable = goal !== 'cool';
  let since = Number.NaN;
  let waterBefore = 0;
  for (let hour = 0; hour < endHour; hour++) {
    reachLevels(bin, hour);
    if (hour === fromHour) waterBefore = bed.account[ACCOUNT.waterByAir];
    fillView(view, bin, hour, air, around);
    if (hour >= fromHour && reached(goal, targetWb, targetC, view)) {
      if (Number.isNaN(since)) since = hour;
    } else if (losable) since = Number.NaN;
    let share = 0;
    let heat = false;
    if (hour >= fromHour && bed.filled > 0) {
      share = fan(view, values, memory);
      if (!(share >= 0 && share <= 1)) throw new RangeError(wrongShare(id, hour, share));
      heat = share > 0 && heater !== null && heater(view, values, memory);
    }
    playHour(bin, hour, share, heat);
    const { powerW, heaterW, heaterFuelPerHour } = bin.blower;
    meterHour(meter, hours, hour, share, (powerW + (heat ? heaterW : 0)) / 1000, heat ? heaterFuelPerHour : 0);
    view.ranBefore = share;
    view.fanHours = meter[METER.fanHours];
    if (kept !== null) keepHour(kept, bin, view, hour, share);
  }
  return { since, waterBefore };
}

function wrongShare(id: string, hour: number, share: unknown): string {
  return `strategy ${id}: fan gave ${share} in hour ${hour}; a share of the hour is due, 0 to 1. Look at what it compares: what is not stated for a bin is NaN.`;
}

/** The hour's air, and the grain at its end. The view is filled anew before a strategy sees it. */
function keepHour(trace: RunTrace, bin: PlayedBin, view: View, hour: number, share: number): void {
  const { bed } = bin;
  seeGrain(view, bin);
  trace.fan[hour] = share;
  trace.meanWb[hour] = view.grainWb;
  trace.meanC[hour] = view.grainC;
  trace.plenumC[hour] = view.plenumC;
  for (let i = 0; i < bed.filled; i++) {
    trace.layerC[hour * bed.layers + i] = overColumns(bed, bed.tempC, i);
    trace.layerWb[hour * bed.layers + i] = wetFromDry(overColumns(bed, bed.moistureDb, i));
  }
}

/** Mean of a layer by the floor that each column has. */
function overColumns({ columns, layers, areaShares }: Bed, of: Float64Array, layer: number): number {
  if (columns === 1) return of[layer];
  let sum = 0;
  for (let column = 0; column < columns; column++) sum += areaShares[column] * of[column * layers + layer];
  return sum;
}
