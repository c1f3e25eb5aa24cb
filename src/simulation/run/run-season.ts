import { wetFromDry } from '../../grain/moisture-basis.ts';
import { ACCOUNT } from '../bed/bed.ts';
import { bedImbalance } from '../bed/bed-totals.ts';
import { MEMORY, type Parameters, type Strategy } from '../strategies/strategy.ts';
import { usualParameters } from '../strategies/usual-parameters.ts';
import { enteringAir } from './entering-air.ts';
import { fillView, newView, seeGrain } from './fill-view.ts';
import { hoursAround } from './hours-around.ts';
import { METER, meterCost, meterHour, newMeter } from './money-meter.ts';
import type { Outcome, RunTrace } from './outcome.ts';
import { type PlayedBin, playBin, playHour, reachLevels } from './played-bin.ts';
import { reached, reachedSince } from './reached.ts';
import type { RunSpec } from './run-spec.ts';
import type { View } from './view.ts';

export interface RunOptions {
  /** keep the run hour by hour; false */
  trace?: boolean;
}

/**
 * Run a strategy through a bin's season. Until `fromHour` the grain rests.
 *
 * @param parameters  those left out take their usual values
 * @valid             throws RangeError on a bed or levels that cannot be, an unknown parameter or one out of range, and a fan
 *                    share that is none
 */
export function runSeason(
  spec: RunSpec,
  strategy: Strategy,
  parameters: Parameters = {},
  { trace = false }: RunOptions = {},
): { outcome: Outcome; trace: RunTrace | null } {
  const { hours, goal, targetWb, targetC, endHour, fromHour = 0 } = spec;
  const values = usualParameters(strategy, parameters);
  // Taken out here: objects of many shapes, asked in the loop, would have V8 compile it anew for each.
  const { fan, heater } = strategy;
  const bin = playBin(spec);
  const { bed } = bin;
  const air = enteringAir(spec);
  const around = hoursAround(hours);
  const memory = new Float64Array(MEMORY);
  const meter = newMeter(hours);
  const view = newView(bin);
  const kept = trace ? newTrace(endHour, bed.layers) : null;
  // A number handed through a function would be boxed each hour; `reachedSince` says the rule.
  const losable = goal !== 'cool';
  let reachedHour = Number.NaN;
  let waterBefore = 0;

  for (let hour = 0; hour < endHour; hour++) {
    reachLevels(bin, hour);
    if (hour === fromHour) waterBefore = bed.account[ACCOUNT.waterByAir];
    fillView(view, bin, hour, air, around);
    if (hour >= fromHour && reached(goal, targetWb, targetC, view)) {
      if (Number.isNaN(reachedHour)) reachedHour = hour;
    } else if (losable) reachedHour = Number.NaN;
    let share = 0;
    let heat = false;
    if (hour >= fromHour && bed.filled > 0) {
      share = fan(view, values, memory);
      if (!(share >= 0 && share <= 1)) throw new RangeError(wrongShare(strategy.id, hour, share));
      heat = share > 0 && heater !== undefined && heater(view, values, memory);
    }
    playHour(bin, hour, share, heat);
    const { powerW, heaterW, heaterFuelPerHour } = bin.blower;
    meterHour(meter, hours, hour, share, (powerW + (heat ? heaterW : 0)) / 1000, heat ? heaterFuelPerHour : 0);
    view.ranBefore = share;
    view.fanHours = meter[METER.fanHours];
    if (kept !== null) keepHour(kept, bin, view, hour, share);
  }
  seeGrain(view, bin);
  reachedHour = reachedSince(goal, reachedHour, reached(goal, targetWb, targetC, view), endHour);
  const outcome = {
    fanHours: meter[METER.fanHours],
    energyKwh: meter[METER.kwh],
    energyCost: meter[METER.energyCost],
    demandCost: meter[METER.demandCost],
    heatCost: meter[METER.fuelCost],
    cost: meterCost(meter),
    ...endOf(bin, view),
    reachedTarget: !Number.isNaN(reachedHour),
    reachedHour,
    waterByAirKg: (waterBefore - bed.account[ACCOUNT.waterByAir]) * spec.floorAreaM2,
    imbalance: bedImbalance(bed),
  };
  return { outcome, trace: kept };
}

function endOf({ bed }: PlayedBin, view: View) {
  const { medium, lifeUsed, dryKgM2, areaShares, columns, layers, filled, down } = bed;
  const { storage } = medium;
  const lossOfShare = storage?.lossOfShare ?? null;
  let worst = filled > 0 ? 0 : Number.NaN;
  let lost = 0;
  let dry = 0;
  for (let column = 0; column < columns; column++) {
    for (let i = 0; i < filled; i++) {
      const used = lifeUsed[column * layers + i];
      const kg = areaShares[column] * dryKgM2[i];
      worst = Math.max(worst, used);
      dry += kg;
      if (lossOfShare !== null) lost += kg * lossOfShare(used);
    }
  }
  return {
    endMoistureWb: view.grainWb,
    topMoistureWb: down ? view.entryWb : view.exitWb,
    bottomMoistureWb: down ? view.exitWb : view.entryWb,
    wettestWb: view.wettestWb,
    endTempC: view.grainC,
    warmestC: view.warmestC,
    lifeUsed: storage === null ? Number.NaN : worst,
    lossMean: lossOfShare === null ? Number.NaN : lost / dry,
    lossWorst: lossOfShare === null ? Number.NaN : lossOfShare(worst),
  };
}

function newTrace(hours: number, layers: number): RunTrace {
  return {
    fan: new Float64Array(hours),
    meanWb: new Float64Array(hours),
    meanC: new Float64Array(hours),
    plenumC: new Float64Array(hours),
    layerC: new Float64Array(hours * layers).fill(Number.NaN),
    layerWb: new Float64Array(hours * layers).fill(Number.NaN),
  };
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
    trace.layerC[hour * bed.layers + i] = bed.tempC[i];
    trace.layerWb[hour * bed.layers + i] = wetFromDry(bed.moistureDb[i]);
  }
}
