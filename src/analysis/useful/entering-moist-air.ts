import { relativeHumidityOfRatio } from '../../air/humidity-ratio.ts';
import type { Bin } from '../../season/season.ts';
import { onAt } from '../fan/spans.ts';
import { betweenReadings } from '../fronts/between-readings.ts';
import { type EnteringAir, enteringAir } from '../fronts/entering-air.ts';
import { statedWarming } from '../fronts/fan-warming.ts';
import { AIR_GAP_H, HOUR_MS } from '../fronts/front-limits.ts';
import { FAN_ON, type FanSpans } from '../types.ts';
import type { MoistAirLog } from './moist-air-log.ts';

/** Air at the middle of each piece; every array is [pieces], NaN where nothing tells it. */
export interface MoistAir {
  tempC: Float64Array;
  ratio: Float64Array;
  /** over water, 0 to 1 */
  rh: Float64Array;
}

/** The air that entered the grain, and where it was told from. */
export interface EnteringMoistAir extends MoistAir, Pick<EnteringAir, 'fromPlenum' | 'warmingK' | 'warmingFrom'> {}

/** Outdoor air at some times, [times]. */
export function outdoorAir(weather: MoistAirLog, atMs: Float64Array, pressurePa: number): MoistAir {
  const tempC = betweenReadings(weather.temperatures.timeMs, weather.temperatures.tempC, atMs, AIR_GAP_H * HOUR_MS);
  const ratio = betweenReadings(weather.humidities.timeMs, weather.humidities.ratio, atMs, AIR_GAP_H * HOUR_MS);
  return withHumidity(tempC, ratio, pressurePa);
}

/**
 * The air that entered the grain while the fan ran: as the plenum's readings tell it, else outdoor air with the fan's
 * warming, which adds no water. The temperatures are those of `enteringAir`.
 *
 * @param moreWarmingK  added to a warming that no plenum reading tells, to see how much hangs on it
 */
export function enteringMoistAir(
  midMs: Float64Array,
  spans: FanSpans,
  plenum: MoistAirLog,
  weather: MoistAirLog,
  bin: Pick<Bin, 'air' | 'goal'>,
  pressurePa: number,
  moreWarmingK = 0,
): EnteringMoistAir {
  const air = enteringAir(
    { midMs },
    spans,
    plenum.temperatures,
    weather.temperatures,
    bin.air,
    statedWarming(bin.goal).usualK,
  );
  const outdoor = outdoorAir(weather, midMs, pressurePa);
  const logged =
    bin.air === 'down' ? new Float64Array(midMs.length).fill(Number.NaN) : plenumRatio(plenum, spans, midMs);
  const ratio = logged.map((value, i) => (air.fromPlenum[i] === 1 && !Number.isNaN(value) ? value : outdoor.ratio[i]));
  const extraK = air.warmingFrom === 'stated' ? moreWarmingK : 0;
  const tempC = air.tempC.map((value, i) => (air.fromPlenum[i] === 1 ? value : value + extraK));
  const { fromPlenum, warmingK, warmingFrom } = air;
  return { ...withHumidity(tempC, ratio, pressurePa), fromPlenum, warmingK: warmingK + extraK, warmingFrom };
}

/** The air that a fan would have pushed in at times when it stood still, [times]. */
export function airIfRun(outdoor: MoistAir, warmingK: number, pressurePa: number): MoistAir {
  return withHumidity(
    outdoor.tempC.map((tempC) => tempC + warmingK),
    outdoor.ratio,
    pressurePa,
  );
}

/** Plenum readings with the fan on: with the fan off the plenum holds what seeps back from the grain. */
function plenumRatio({ humidities }: MoistAirLog, spans: FanSpans, midMs: Float64Array): Float64Array {
  const running = [...humidities.timeMs.keys()].filter((row) => onAt(spans, humidities.timeMs[row]) === FAN_ON);
  return betweenReadings(
    Float64Array.from(running, (row) => humidities.timeMs[row]),
    Float64Array.from(running, (row) => humidities.ratio[row]),
    midMs,
    AIR_GAP_H * HOUR_MS,
  );
}

/** Readings of temperature and water that lie apart may meet a little above saturation: such air is saturated. */
function withHumidity(tempC: Float64Array, ratio: Float64Array, pressurePa: number): MoistAir {
  const rh = tempC.map((t, i) =>
    Number.isNaN(t + ratio[i]) || t < -60 || t > 90
      ? Number.NaN
      : Math.min(1, relativeHumidityOfRatio(t, ratio[i], pressurePa)),
  );
  return { tempC, ratio, rh };
}
