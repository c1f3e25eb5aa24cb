import { median } from '../../base/stats/quantile.ts';
import { FLAGS } from '../../tables/flags.ts';
import type { SensorSeries } from '../../tables/sensors.ts';
import { HOUR_MS } from '../fronts/front-limits.ts';
import { goodReadings } from '../fronts/good-readings.ts';
import { contradictionSaid } from '../surface/surface-said.ts';
import type { BinLog } from './bin-log.ts';
import type { Doubt } from './cross-checks.ts';

/**
 * Of the outdoor air's daily swing a sensor in the grain shows less than the first, one in the headspace more; where air passes all
 * day grain follows it farther, up to the second and less from sensor to sensor, and a headspace follows the weather more than the grain below.
 */
const SWING_IN_GRAIN = 0.25;
const SWING_IN_AIR = 0.6;
/** Grain above the highest sensor: more than this part of the depth and this many times the sensors' spacing is too much. */
const BARE_SHARE = 0.25;
const BARE_SPACINGS = 1.7;

/** Whether the stated depth can be: sensors above it that lie in grain, loads that weigh other, weather that comes in elsewhere, or much grain above all sensors. */
export function depthDoubts(log: BinLog, series: readonly SensorSeries[]): Doubt[] {
  const { bin, depthM, startMs, endMs, weather } = log;
  const help = 'Check the stated depth of the grain and the heights of the sensors.';
  const outdoor = dailySwing(
    Float64Array.from(weather.hours.tempC, (_, hour) => startMs + hour * HOUR_MS),
    weather.hours.tempC,
  );
  const swingOf = (one: SensorSeries) => {
    // The checks of the log take a sensor above the stated depth for one in the headspace: that is the question here.
    const flags = one.tempFlags.map((flag) => flag & ~FLAGS.headspace);
    const { timeMs, tempC } = goodReadings({ ...one, tempFlags: flags }, startMs, endMs);
    return timeMs.length > 50 ? dailySwing(timeMs, tempC) / outdoor : Number.NaN;
  };
  const own = series.filter((one) => one.bin === bin.id);
  const topOf = (cable: string) =>
    own
      .filter((one) => one.cable === cable && one.heightM <= depthM)
      .reduce<SensorSeries | null>((top, one) => (top === null || one.heightM > top.heightM ? one : top), null);
  const buried = own.filter((one) => {
    if (one.heightM < depthM + 0.1) return false;
    const swing = swingOf(one);
    const top = topOf(one.cable);
    return swing < SWING_IN_GRAIN || (top !== null && swing < SWING_IN_AIR && swing < swingOf(top));
  });
  if (buried.length > 0) {
    const why = `${buried.length} sensors above the stated depth follow the air’s day no more than grain does.`;
    return [{ why, help }];
  }
  const weight = weightOverDepth(log);
  if (weight > MOST_WEIGHT || (weight < LEAST_WEIGHT && weight > LOADS_LACK)) {
    const why = `The loads in weigh ${weight.toFixed(weight < 1 ? 2 : 1)} times what depth and test weight say.`;
    return [{ why, help: weight < 1 ? `${help} Or see whether tickets of loads in are lacking.` : help }];
  }
  const atRest = contradictionSaid(log.review.surface);
  if (atRest !== null) return [{ why: atRest, help }];
  const heights = log.cables.flatMap(({ sensors }) => sensors.map((one) => one.heightM));
  const spacings = log.cables.flatMap(({ sensors }) =>
    sensors.slice(1).map((one, i) => one.heightM - sensors[i].heightM),
  );
  const bareM = depthM - Math.max(...heights);
  const spacingM = spacings.length === 0 ? depthM : median(spacings);
  if (bareM > BARE_SHARE * depthM && bareM > BARE_SPACINGS * spacingM) {
    const share = Math.round((100 * bareM) / depthM);
    return [{ why: `Above the highest sensor lie ${share} % of the grain as its depth is stated.`, help }];
  }
  return [];
}

/**
 * Loads that weigh so much more than depth and test weight say do not fit in: packing and a heap make a tenth. Lighter ones: the depth is
 * too large or tickets lack, and the model's airflow is in proportion to the grain; where most lack they plainly do.
 */
const MOST_WEIGHT = 1.2;
const LEAST_WEIGHT = 0.9;
const LOADS_LACK = 0.6;

/** The weight by tickets over that by depth and test weight; NaN where the tickets tell none. */
function weightOverDepth({ bin, review }: BinLog): number {
  const { from, weightKg, volumeM3 } = review.grain;
  const covered = review.moisture.tickets?.start?.covered ?? Number.NaN;
  if (from !== 'tickets' || weightKg === null || volumeM3 === null) return covered;
  return weightKg / (volumeM3 * bin.grain.bulkDensityKgM3);
}

/** Median over the days of the highest less the lowest reading, K. */
function dailySwing(timeMs: Float64Array, tempC: Float64Array): number {
  const days = new Map<number, [low: number, high: number]>();
  timeMs.forEach((ms, i) => {
    const day = Math.floor(ms / (24 * HOUR_MS));
    const [low, high] = days.get(day) ?? [tempC[i], tempC[i]];
    days.set(day, [Math.min(low, tempC[i]), Math.max(high, tempC[i])]);
  });
  return median([...days.values()].map(([low, high]) => high - low));
}
