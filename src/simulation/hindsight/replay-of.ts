import { wetFromDry } from '../../grain/moisture-basis.ts';
import type { Bed } from '../bed/bed.ts';
import { type BedState, keepState, newState, restoreState } from '../bed/keep-state.ts';
import { meanLoss } from '../run/mean-loss.ts';
import { type MoneyMeter, meterCost, meterHour, monthsLeft, newMeter, owedLater } from '../run/money-meter.ts';
import { playBin, playHour, reachLevels } from '../run/played-bin.ts';
import { hasHeater, type RunSpec } from '../run/run-spec.ts';
import { limitsOf } from './limits-of.ts';
import { newStanding, type Replay, type Standing } from './replay.ts';
import { heatToGo } from './shortfall.ts';

interface Kept {
  bed: BedState;
  meter: MoneyMeter;
  level: number;
  cooled: boolean;
  missed: number;
}

/**
 * A run's bin as a search plays it, from `fromHour` on (grain at rest until then). Ends with the run.
 *
 * @param coldBy  hour by which the temperatures asked for must have been reached once
 */
export function replayOf(spec: RunSpec, coldBy = spec.endHour): Replay<Kept> {
  const { hours, levels, endHour, fromHour = 0 } = spec;
  const bin = playBin(spec);
  const meter = newMeter(hours);
  const left = monthsLeft(hours, endHour);
  const limits = limitsOf(spec);
  const now = newStanding();
  const asksCold = !Number.isNaN(limits.meanC);
  // The first hour is played whatever is asked.
  const lastHour = Math.max(fromHour + 1, Math.min(coldBy, endHour));
  let cooled = false;
  let missed = 0;
  for (let hour = 0; hour < fromHour; hour++) {
    reachLevels(bin, hour);
    playHour(bin, hour, 0, false);
  }
  return {
    hours: endHour - fromHour,
    ways: hasHeater(spec) ? 2 : 1,
    newState: () => ({ bed: newState(bin.bed), meter: newMeter(hours), level: 0, cooled: false, missed: 0 }),
    keep(into) {
      keepState(bin.bed, into.bed);
      into.meter.set(meter);
      into.level = bin.level;
      into.cooled = cooled;
      into.missed = missed;
    },
    restore(from) {
      restoreState(bin.bed, from.bed);
      meter.set(from.meter);
      bin.level = from.level;
      cooled = from.cooled;
      missed = from.missed;
      bin.blower = levels[Math.max(0, from.level - 1)].blower;
    },
    play(index, way) {
      const hour = fromHour + index;
      reachLevels(bin, hour);
      const share = way > 0 ? 1 : 0;
      playHour(bin, hour, share, way === 2);
      const { powerW, heaterW, heaterFuelPerHour } = bin.blower;
      const kw = (powerW + (way === 2 ? heaterW : 0)) / 1000;
      meterHour(meter, hours, hour, share, kw, way === 2 ? heaterFuelPerHour : 0);
      if (asksCold && !cooled && hour < lastHour) {
        standOf(bin.bed, now);
        const toGo = heatToGo(now, limits);
        cooled = toGo === 0;
        if (hour === lastHour - 1) missed = toGo;
      }
    },
    cost: () => meterCost(meter) + owedLater(meter, hours, left),
    stand(into) {
      standOf(bin.bed, into);
      into.lossMean = meanLoss(bin.bed);
      into.cooled = cooled;
      into.missed = missed;
    },
  };
}

/** Mean and worst layers of a bed. No allocation. */
function standOf(bed: Bed, into: Standing): void {
  const { columns, layers, filled, dryKgM2, areaShares, tempC, moistureDb, lifeUsed } = bed;
  let dry = 0;
  let water = 0;
  let heat = 0;
  let wettest = 0;
  let driest = Number.POSITIVE_INFINITY;
  let warmest = Number.NEGATIVE_INFINITY;
  let used = 0;
  for (let column = 0; column < columns; column++) {
    for (let i = 0; i < filled; i++) {
      const at = column * layers + i;
      const kg = areaShares[column] * dryKgM2[i];
      dry += kg;
      water += kg * moistureDb[at];
      heat += kg * tempC[at];
      if (moistureDb[at] > wettest) wettest = moistureDb[at];
      if (moistureDb[at] < driest) driest = moistureDb[at];
      if (tempC[at] > warmest) warmest = tempC[at];
      if (lifeUsed[at] > used) used = lifeUsed[at];
    }
  }
  into.meanWb = wetFromDry(water / dry);
  into.wettestWb = wetFromDry(wettest);
  into.driestWb = wetFromDry(driest);
  into.meanC = heat / dry;
  into.warmestC = warmest;
  into.lifeUsed = used;
}
