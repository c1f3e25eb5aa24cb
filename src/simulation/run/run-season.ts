import { ACCOUNT } from '../bed/bed.ts';
import { bedImbalance } from '../bed/bed-totals.ts';
import type { Parameters, Strategy } from '../strategies/strategy.ts';
import { usualParameters } from '../strategies/usual-parameters.ts';
import { enteringAir } from './entering-air.ts';
import { newView, seeGrain } from './fill-view.ts';
import { hoursAround } from './hours-around.ts';
import { meanLoss } from './mean-loss.ts';
import { METER, meterCost, newMeter } from './money-meter.ts';
import type { Outcome, RunTrace } from './outcome.ts';
import { playHours } from './play-hours.ts';
import { type PlayedBin, playBin } from './played-bin.ts';
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
  const { goal, targetWb, targetC, endHour, fromHour = 0 } = spec;
  const bin = playBin(spec);
  const { hours } = bin.spec;
  const { bed } = bin;
  const meter = newMeter(hours);
  const view = newView(bin);
  const kept = trace ? newTrace(endHour, bed.layers) : null;
  const { fan, heater, id } = strategy;
  const { since, waterBefore } = playHours({
    fan,
    heater: heater ?? null,
    id,
    values: usualParameters(strategy, parameters),
    bin,
    hours,
    air: enteringAir(spec),
    around: hoursAround(spec.hours),
    view,
    meter,
    kept,
    fromHour,
    endHour,
    goal,
    targetWb,
    targetC,
  });
  seeGrain(view, bin);
  const reachedHour = reachedSince(goal, since, reached(goal, targetWb, targetC, view), endHour);
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
  const { medium, lifeUsed, columns, layers, filled, down } = bed;
  const { storage } = medium;
  const lossOfShare = storage?.lossOfShare ?? null;
  let worst = filled > 0 ? 0 : Number.NaN;
  for (let column = 0; column < columns; column++) {
    for (let i = 0; i < filled; i++) worst = Math.max(worst, lifeUsed[column * layers + i]);
  }
  return {
    endMoistureWb: view.grainWb,
    topMoistureWb: down ? view.entryWb : view.exitWb,
    bottomMoistureWb: down ? view.exitWb : view.entryWb,
    wettestWb: view.wettestWb,
    endTempC: view.grainC,
    warmestC: view.warmestC,
    lifeUsed: storage === null ? Number.NaN : worst,
    lossMean: meanLoss(bed),
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
