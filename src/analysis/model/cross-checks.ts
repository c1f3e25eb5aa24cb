import { median } from '../../base/stats/quantile.ts';
import { FLAGS } from '../../tables/flags.ts';
import type { SensorSeries } from '../../tables/sensors.ts';
import { HOUR_MS } from '../fronts/front-limits.ts';
import { goodReadings } from '../fronts/good-readings.ts';
import type { BinLog } from './bin-log.ts';
import type { FitSamples } from './fit-samples.ts';
import type { Shown } from './play-cable.ts';

/** Why a fit is not believed, and what would help. */
export interface Doubt {
  why: string;
  help: string;
}

/** A place fits another sensor's readings better where its misfit is below this part of the own one's, which is above so many K. */
const BETTER = 0.6;
const CLEAR_K = 0.9;
const MISPLACED_SHARE = 0.2;

/** Sensors whose temperatures go as the bed says of another place on their cable: numbered the wrong way, or plugged in wrongly. */
export function misplacedSensors(samples: FitSamples, shown: readonly Pick<Shown, 'tempC'>[]): Doubt[] {
  let all = 0;
  let misplaced = 0;
  samples.cables.forEach(({ sensors, tempC }, cable) => {
    for (let sensor = 0; sensor < sensors; sensor++) {
      const offs = Array.from({ length: sensors }, (_, place) => {
        let sum = 0;
        let count = 0;
        for (let row = 0; row < tempC.length; row += sensors) {
          const off = shown[cable].tempC[row + place] - tempC[row + sensor];
          if (Number.isNaN(off)) continue;
          sum += off * off;
          count += 1;
        }
        return Math.sqrt(sum / count);
      });
      if (Number.isNaN(offs[sensor])) continue;
      all += 1;
      if (offs[sensor] > CLEAR_K && Math.min(...offs) < BETTER * offs[sensor]) misplaced += 1;
    }
  });
  if (!(misplaced > 1 && misplaced >= MISPLACED_SHARE * all)) return [];
  return [
    {
      why: `${misplaced} of ${all} sensors show temperatures that belong to another height of their cable.`,
      help: 'Check how the cables’ sensors are numbered and plugged in, and their heights.',
    },
  ];
}

/**
 * Of the outdoor air's daily swing a sensor in the grain shows less than the first, one in the headspace more; where air passes all
 * day grain follows it farther, up to the second and less from sensor to sensor, and a headspace follows the weather more than the grain below.
 */
const SWING_IN_GRAIN = 0.25;
const SWING_IN_AIR = 0.6;
/** Grain above the highest sensor: more than this part of the depth and this many times the sensors' spacing is too much. */
const BARE_SHARE = 0.25;
const BARE_SPACINGS = 1.7;

/** Whether the stated depth can be: sensors above it that lie in grain, or much grain above all sensors. */
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
  const heavy = weightOverDepth(log);
  if (heavy > MOST_WEIGHT) {
    const times = heavy.toFixed(1);
    return [{ why: `The loads in weigh ${times} times what depth and test weight say.`, help }];
  }
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

/** Loads that weigh so much more than depth and test weight say do not fit in: packing and a heap make a tenth. Of lighter ones some tickets may lack. */
const MOST_WEIGHT = 1.2;

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

/** Whole days by which the fan's log is tried to be shifted. */
const SHIFTS_D = [-7, -6, -5, -4, -3, -2, -1, 1, 2, 3, 4, 5, 6, 7];
/** Misfit of a shifted log over that of the log as it stands, from where on the log's clock is doubted. */
const SHIFTED_BETTER = 0.8;

/**
 * Whether the grain's temperatures go better with a fan log of other days.
 *
 * @param misfitK  of a log, K
 */
export function clockDoubts(log: BinLog, misfitK: (log: BinLog) => number): Doubt[] {
  const asLogged = misfitK(log);
  if (!(asLogged > CLEAR_K)) return [];
  const tried = SHIFTS_D.map((days) => ({ days, misfit: misfitK(shifted(log, 24 * days)) }));
  const best = tried.reduce((a, b) => (b.misfit < a.misfit ? b : a));
  if (!(best.misfit < SHIFTED_BETTER * asLogged)) return [];
  return [
    {
      why: `The grain’s temperatures go better with a fan log moved by ${best.days} days.`,
      help: 'Check the clock of the fan log.',
    },
  ];
}

function shifted(log: BinLog, hours: number): BinLog {
  const on = log.fan.on.map((_, hour) => log.fan.on[hour - hours] ?? 0);
  const enteringC = log.enteringC.map((value, hour) => (log.fan.on[hour] > 0 && on[hour] > 0 ? value : Number.NaN));
  return { ...log, fan: { ...log.fan, on }, enteringC };
}

/** Points by which the isotherms that the log leaves open may part at the end: beyond it whether a target is reached is a guess. */
const MOST_APART = 0.5;

/** Whether the isotherms that go with the log about as well tell one moisture at the end. @param endsWb  of each, wet basis */
export function endDoubts(endsWb: readonly number[]): Doubt[] {
  const apart = 100 * (Math.max(...endsWb) - Math.min(...endsWb));
  if (!(apart > MOST_APART)) return [];
  return [
    {
      why: `Isotherms that go with the log about as well part by ${apart.toFixed(1)} points at the end.`,
      help: 'Moistures of scale tickets in or out, hand samples by a moisture meter, or the isotherm by which the cables work (`sensors.moisture.isotherm`).',
    },
  ];
}
