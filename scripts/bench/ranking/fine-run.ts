import { vapourPressurePa } from '../../../src/air/humidity-ratio.ts';
import { saturationPressurePa } from '../../../src/air/saturation.ts';
import { equilibriumMoistureWb } from '../../../src/grain/equilibrium.ts';
import type { Isotherm } from '../../../src/grain/isotherm.ts';
import type { Hours } from '../../../src/simulation/run/hours.ts';
import { hoursAround } from '../../../src/simulation/run/hours-around.ts';
import { meterCost, meterHour, newMeter } from '../../../src/simulation/run/money-meter.ts';
import { reached, reachedSince } from '../../../src/simulation/run/reached.ts';
import type { View } from '../../../src/simulation/run/view.ts';
import { MEMORY, type Strategy } from '../../../src/simulation/strategies/strategy.ts';
import { usualParameters } from '../../../src/simulation/strategies/usual-parameters.ts';
import { humidityRatio } from '../../sample/air.ts';
import { type Column, conduct, passAir } from '../../sample/column-bed.ts';
import { KERNELS, toDryBasis, toWetBasis } from '../../sample/kernels.ts';
import { type Weather, weatherAt } from '../../sample/weather.ts';
import { breathe } from './breathe.ts';
import type { DrawnBin } from './draw-bin.ts';

const LAYERS = 48;
const STEPS_AN_HOUR = 2;
const HOUR_S = 3600;
export const CORE_AREA = 0.2;

/**
 * A strategy in the generator's own bed: other isotherms, heats and rates, finer layers and steps, a core with less air, weather
 * between the hours, respiration. The controller sees the truth; of the plenum's air it works out the equilibrium by the isotherm
 * that the kit's bed has, for that is the strategy whose cost the kit tells.
 */
export function fineRun(
  bin: DrawnBin,
  weather: Weather,
  hours: Hours,
  strategy: Strategy,
  isotherm: Isotherm,
): { cost: number; reached: boolean } {
  const kernel = KERNELS[bin.crop];
  const columns = columnsOf(bin);
  const layerM = bin.depthM / LAYERS;
  const used = columns.map(() => new Float64Array(LAYERS));
  const values = usualParameters(strategy, {});
  const memory = new Float64Array(MEMORY);
  const meter = newMeter(hours);
  const around = hoursAround(hours);
  const view = { ranBefore: 0, fanHours: 0, goal: bin.goal, targetWb: bin.targetWb, targetC: bin.targetC } as View;
  const count = hours.tempC.length;
  let since = Number.NaN;
  for (let hour = 0; hour < count; hour++) {
    seeAir(view, bin, hours, hour, isotherm);
    Object.assign(view, {
      dayMeanC: around.dayMeanC[hour],
      cheapestPerKwh: around.cheapestPerKwh[hour],
      dearestPerKwh: around.dearestPerKwh[hour],
    });
    seeGrain(view, columns);
    since = reachedSince(bin.goal, since, reached(bin.goal, bin.targetWb, bin.targetC, view), hour);
    const share = strategy.fan(view, values, memory);
    for (let step = 0; step < STEPS_AN_HOUR; step++) {
      const seconds = HOUR_S / STEPS_AN_HOUR;
      const air = weatherAt(weather, hours.startMs + (hour + (step + 0.5) / STEPS_AN_HOUR) * 1000 * HOUR_S);
      if (share > 0) {
        const ratio = humidityRatio(air.vapourPa, air.pressurePa);
        for (const column of columns) {
          const kg = bin.dryAirKgM2S * column.airShare * seconds * share;
          passAir(column, kernel, LAYERS, kg, seconds * share, air.tempC + bin.warmingK, ratio, air.pressurePa);
        }
      }
      const floorC = air.tempC + share * bin.warmingK;
      conduct(columns, [], LAYERS, layerM, seconds, floorC, air.tempC + 2, () => air.tempC);
    }
    breathe(columns, kernel, bin.breath, used);
    meterHour(meter, hours, hour, share, bin.powerW / 1000, 0);
    view.ranBefore = share;
    view.fanHours += share;
  }
  seeGrain(view, columns);
  since = reachedSince(bin.goal, since, reached(bin.goal, bin.targetWb, bin.targetC, view), count);
  return { cost: meterCost(meter), reached: !Number.isNaN(since) };
}

function columnsOf({ coreAir, floorAreaM2, moistureWb, tempC, bulkKgM3, depthM }: DrawnBin): Column[] {
  const outer = (1 - CORE_AREA * coreAir) / (1 - CORE_AREA);
  return [['core', CORE_AREA, coreAir] as const, ['ring', 1 - CORE_AREA, outer] as const].map(
    ([id, area, airShare]) => ({
      id,
      areaM2: area * floorAreaM2,
      airShare,
      tempC: new Float64Array(LAYERS).fill(tempC),
      moistureDb: new Float64Array(LAYERS).fill(toDryBasis(100 * moistureWb)),
      passedRatio: new Float64Array(LAYERS),
      dryKgM2: new Float64Array(LAYERS).fill((bulkKgM3 * (1 - moistureWb) * depthM) / LAYERS),
    }),
  );
}

function seeAir(view: View, bin: DrawnBin, hours: Hours, hour: number, isotherm: Isotherm): void {
  const plenumC = hours.tempC[hour] + bin.warmingK;
  const vapour = vapourPressurePa(hours.humidityRatio[hour], hours.pressurePa);
  const plenumRh = Math.min(0.95, Math.max(0.1, vapour / saturationPressurePa(plenumC)));
  Object.assign(view, {
    hour,
    localHour: hours.localHour[hour],
    localMonth: hours.localMonth[hour],
    localDay: hours.localDay[hour],
    outdoorC: hours.tempC[hour],
    outdoorRh: hours.rh[hour],
    plenumC,
    plenumRh,
    heatedC: plenumC,
    heatedRh: plenumRh,
    plenumEmcWb: equilibriumMoistureWb(isotherm, Math.max(isotherm.tempRangeC[0], plenumC), plenumRh),
    pricePerKwh: hours.pricePerKwh[hour],
  });
}

function seeGrain(view: View, columns: readonly Column[]): void {
  let dry = 0;
  let water = 0;
  let heat = 0;
  let wettest = 0;
  let warmest = Number.NEGATIVE_INFINITY;
  for (const { areaM2, dryKgM2, moistureDb, tempC } of columns) {
    for (let i = 0; i < LAYERS; i++) {
      const kg = areaM2 * dryKgM2[i];
      dry += kg;
      water += kg * moistureDb[i];
      heat += kg * tempC[i];
      wettest = Math.max(wettest, moistureDb[i]);
      warmest = Math.max(warmest, tempC[i]);
    }
  }
  const ring = columns[1];
  view.grainWb = toWetBasis(water / dry) / 100;
  view.grainC = heat / dry;
  view.wettestWb = toWetBasis(wettest) / 100;
  view.warmestC = warmest;
  view.entryC = ring.tempC[0];
  view.entryWb = toWetBasis(ring.moistureDb[0]) / 100;
  view.exitC = ring.tempC[LAYERS - 1];
  view.exitWb = toWetBasis(ring.moistureDb[LAYERS - 1]) / 100;
}
