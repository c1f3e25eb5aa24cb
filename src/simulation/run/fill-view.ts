import { wetFromDry } from '../../grain/moisture-basis.ts';
import type { EnteringAir } from './entering-air.ts';
import type { HoursAround } from './hours-around.ts';
import type { PlayedBin } from './played-bin.ts';
import type { View } from './view.ts';

/** A view before its first hour. */
export function newView({ spec }: PlayedBin): View {
  return {
    hourOfRun: 0,
    localHour: 0,
    localMonth: 1,
    localDay: 0,
    outdoorC: 0,
    outdoorRh: 0,
    plenumC: 0,
    plenumRh: 0,
    heatedC: 0,
    heatedRh: 0,
    plenumEmcWb: 0,
    dayMeanC: Number.NaN,
    grainC: 0,
    grainWb: 0,
    entryC: 0,
    entryWb: 0,
    exitC: 0,
    exitWb: 0,
    warmestC: 0,
    wettestWb: 0,
    pricePerKwh: Number.NaN,
    cheapestPerKwh: Number.NaN,
    dearestPerKwh: Number.NaN,
    ranBefore: 0,
    fanHours: 0,
    goal: spec.goal,
    targetWb: spec.targetWb ?? Number.NaN,
    targetC: spec.targetC ?? Number.NaN,
  };
}

/** Fill the view for an hour from air and grain; `ranBefore` and `fanHours` are the run's. No allocation. */
export function fillView(view: View, bin: PlayedBin, hour: number, air: EnteringAir, around: HoursAround): void {
  const { hours } = bin.spec;
  view.hourOfRun = hour;
  view.localHour = hours.localHour[hour];
  view.localMonth = hours.localMonth[hour];
  view.localDay = hours.localDay[hour];
  view.outdoorC = hours.tempC[hour];
  view.outdoorRh = hours.rh[hour];
  view.plenumC = air.tempC[hour];
  view.plenumRh = air.rh[hour];
  view.heatedC = air.heatedC[hour];
  view.heatedRh = air.heatedRh[hour];
  view.plenumEmcWb = air.emcWb[hour];
  view.dayMeanC = around.dayMeanC[hour];
  view.pricePerKwh = hours.pricePerKwh[hour];
  view.cheapestPerKwh = around.cheapestPerKwh[hour];
  view.dearestPerKwh = around.dearestPerKwh[hour];
  seeGrain(view, bin);
}

/** Fill what the view shows of the grain as it stands; NaN in an empty bin. No allocation. */
export function seeGrain(view: View, { bed }: PlayedBin): void {
  const { columns, layers, filled, dryKgM2, areaShares, tempC, moistureDb, down } = bed;
  let dry = 0;
  let water = 0;
  let heat = 0;
  let wettest = filled > 0 ? 0 : Number.NaN;
  let warmest = filled > 0 ? Number.NEGATIVE_INFINITY : Number.NaN;
  let floorC = 0;
  let floorDb = 0;
  let topC = 0;
  let topDb = 0;
  for (let column = 0; column < columns; column++) {
    const share = areaShares[column];
    const first = column * layers;
    for (let i = 0; i < filled; i++) {
      const kg = share * dryKgM2[i];
      dry += kg;
      water += kg * moistureDb[first + i];
      heat += kg * tempC[first + i];
      if (moistureDb[first + i] > wettest) wettest = moistureDb[first + i];
      if (tempC[first + i] > warmest) warmest = tempC[first + i];
    }
    floorC += share * tempC[first];
    floorDb += share * moistureDb[first];
    topC += share * tempC[first + Math.max(0, filled - 1)];
    topDb += share * moistureDb[first + Math.max(0, filled - 1)];
  }
  view.grainC = heat / dry;
  view.grainWb = wetFromDry(water / dry);
  view.entryC = down ? topC : floorC;
  view.entryWb = wetFromDry(down ? topDb : floorDb);
  view.exitC = down ? floorC : topC;
  view.exitWb = wetFromDry(down ? floorDb : topDb);
  view.warmestC = warmest;
  view.wettestWb = wetFromDry(wettest);
}
