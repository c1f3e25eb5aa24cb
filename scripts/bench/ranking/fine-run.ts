import { vapourPressurePa } from '../../../src/air/humidity-ratio.ts';
import { saturationPressurePa } from '../../../src/air/saturation.ts';
import { equilibriumMoistureWb } from '../../../src/grain/equilibrium.ts';
import type { Isotherm } from '../../../src/grain/isotherm.ts';
import type { Hours } from '../../../src/simulation/run/hours.ts';
import { hoursAround } from '../../../src/simulation/run/hours-around.ts';
import { meterCost, meterHour, newMeter } from '../../../src/simulation/run/money-meter.ts';
import { reached, reachedSince } from '../../../src/simulation/run/reached.ts';
import type { RunSpec } from '../../../src/simulation/run/run-spec.ts';
import type { View } from '../../../src/simulation/run/view.ts';
import { MEMORY, type Strategy } from '../../../src/simulation/strategies/strategy.ts';
import { usualParameters } from '../../../src/simulation/strategies/usual-parameters.ts';
import { humidityRatio, specificVolume } from '../../sample/air.ts';
import { type Column, conduct, type Face, passAir } from '../../sample/column-bed.ts';
import { KERNELS, type Kernel, toDryBasis, toWetBasis } from '../../sample/kernels.ts';
import { type AirNow, type Weather, weatherAt } from '../../sample/weather.ts';
import { breathe } from './breathe.ts';
import type { DrawnBin } from './draw-bin.ts';

const LAYERS = 48;
const STEPS_AN_HOUR = 2;
const HOUR_S = 3600;
export const CORE_AREA = 0.2;

/** A bin of the generator's own kind of bed, filled: other isotherms, heats and rates than the kit's, finer layers, columns. */
export interface FineBed {
  columns: readonly Column[];
  faces: readonly Face[];
  kernel: Kernel;
  layers: number;
  layerM: number;
  /** dry air, kg/(m2 s) */
  airKgM2S(air: AirNow): number;
  /** what the fan warms the air by */
  warmingK(air: AirNow): number;
  headspaceC(air: AirNow): number;
  wallC(air: AirNow): number;
  powerKw: number;
  /** an hour of respiration; left out: none */
  breathe?(): void;
}

/** What a run is to come to. Moisture wet basis, fraction. */
export type FineGoal = Pick<RunSpec, 'goal' | 'targetWb' | 'targetC'>;

/**
 * A strategy in a finer bed, in weather between the hours. The controller sees the truth; of the plenum's air it works out the
 * equilibrium by the isotherm that the kit's bed has, for that is the strategy whose cost the kit tells.
 */
export function fineRun(
  bed: FineBed,
  { goal, targetWb, targetC }: FineGoal,
  weather: Weather,
  hours: Hours,
  strategy: Strategy,
  isotherm: Isotherm,
): { cost: number; reached: boolean } {
  const { columns, faces, kernel, layers, layerM } = bed;
  const values = usualParameters(strategy, {});
  const memory = new Float64Array(MEMORY);
  const meter = newMeter(hours);
  const around = hoursAround(hours);
  // As the kit's own view: a target that is not stated is no 0.
  const stated = { targetWb: targetWb ?? Number.NaN, targetC: targetC ?? Number.NaN };
  const view = { ranBefore: 0, fanHours: 0, goal, ...stated } as View;
  const count = hours.tempC.length;
  let since = Number.NaN;
  for (let hour = 0; hour < count; hour++) {
    const middle = weatherAt(weather, hours.startMs + (hour + 0.5) * 1000 * HOUR_S);
    seeAir(view, bed.warmingK(middle), hours, hour, isotherm);
    Object.assign(view, {
      dayMeanC: around.dayMeanC[hour],
      cheapestPerKwh: around.cheapestPerKwh[hour],
      dearestPerKwh: around.dearestPerKwh[hour],
    });
    seeGrain(view, columns);
    since = reachedSince(goal, since, reached(goal, targetWb, targetC, view), hour);
    const share = strategy.fan(view, values, memory);
    for (let step = 0; step < STEPS_AN_HOUR; step++) {
      const seconds = HOUR_S / STEPS_AN_HOUR;
      const air = weatherAt(weather, hours.startMs + (hour + (step + 0.5) / STEPS_AN_HOUR) * 1000 * HOUR_S);
      const warmingK = bed.warmingK(air);
      if (share > 0) {
        const ratio = humidityRatio(air.vapourPa, air.pressurePa);
        for (const column of columns) {
          const kg = bed.airKgM2S(air) * column.airShare * seconds * share;
          passAir(column, kernel, layers, kg, seconds * share, air.tempC + warmingK, ratio, air.pressurePa);
        }
      }
      const floorC = air.tempC + share * warmingK;
      conduct(columns, faces, layers, layerM, seconds, floorC, bed.headspaceC(air), () => bed.wallC(air));
    }
    bed.breathe?.();
    meterHour(meter, hours, hour, share, bed.powerKw, 0);
    view.ranBefore = share;
    view.fanHours += share;
  }
  seeGrain(view, columns);
  since = reachedSince(goal, since, reached(goal, targetWb, targetC, view), count);
  return { cost: meterCost(meter), reached: !Number.isNaN(since) };
}

/** A drawn bin's bed: a core with less air, a ring with more, grain that breathes. */
export function bedOfBin(bin: DrawnBin): FineBed {
  const kernel = KERNELS[bin.crop];
  const columns = columnsOf(bin);
  const used = columns.map(() => new Float64Array(LAYERS));
  return {
    ...{ columns, faces: [], kernel, layers: LAYERS, layerM: bin.depthM / LAYERS },
    airKgM2S: ({ tempC, vapourPa, pressurePa }) =>
      bin.airM3M2S / specificVolume(tempC, humidityRatio(vapourPa, pressurePa), pressurePa),
    warmingK: () => bin.warmingK,
    headspaceC: ({ tempC }) => tempC + 2,
    wallC: ({ tempC }) => tempC,
    powerKw: bin.powerW / 1000,
    breathe: () => breathe(columns, kernel, bin.breath, used),
  };
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

function seeAir(view: View, warmingK: number, hours: Hours, hour: number, isotherm: Isotherm): void {
  const plenumC = hours.tempC[hour] + warmingK;
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
    for (let i = 0; i < tempC.length; i++) {
      const kg = areaM2 * dryKgM2[i];
      dry += kg;
      water += kg * moistureDb[i];
      heat += kg * tempC[i];
      wettest = Math.max(wettest, moistureDb[i]);
      warmest = Math.max(warmest, tempC[i]);
    }
  }
  const ring = columns[columns.length - 1];
  const top = ring.tempC.length - 1;
  view.grainWb = toWetBasis(water / dry) / 100;
  view.grainC = heat / dry;
  view.wettestWb = toWetBasis(wettest) / 100;
  view.warmestC = warmest;
  view.entryC = ring.tempC[0];
  view.entryWb = toWetBasis(ring.moistureDb[0]) / 100;
  view.exitC = ring.tempC[top];
  view.exitWb = toWetBasis(ring.moistureDb[top]) / 100;
}
