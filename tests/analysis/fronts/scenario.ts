import { binFronts } from '../../../src/analysis/fronts/bin-fronts.ts';
import { ruleOfThumbHours } from '../../../src/analysis/fronts/rule-of-thumb.ts';
import type { BinFronts } from '../../../src/analysis/types.ts';
import type { SensorSeries } from '../../../src/tables/sensors.ts';
import { runBed } from './bed.ts';
import { HOUR_MS, inventedBin, START_MS, seriesOf, spansOf } from './invented-bin.ts';
import { trueArrival } from './true-arrival.ts';

/** A bin, its weather and its logger; hours count from the first reading. */
export interface Scenario {
  cfmPerBushel: number;
  /** hour at which the fan is first switched on */
  fanFromH: number;
  hours: number;
  onAt: (hour: number) => boolean;
  grainC: (fromEntryM: number) => number;
  /** entering air without its daily part */
  airC: (hour: number) => number;
  /** amplitude of its daily part, K; warmest three hours after START_MS's noon */
  dailyK: number;
  /** speed of each cable's front against the bin's */
  cableSpeeds: readonly number[];
  /** front speed: a bed in this part of the rule of thumb */
  rulePart: number;
  layers: number;
  heightsM: readonly number[];
  logEveryH: number;
  noiseK: number;
  quantumK: number;
  normal: () => number;
  air: 'up' | 'down';
  /** hour up to which the truth is looked for */
  untilH?: number;
  sign: 1 | -1;
}

export const DEPTH_M = 6.5;
const STEP_H = 0.25;

export const PLAIN: Scenario = {
  cfmPerBushel: 0.1,
  fanFromH: 24,
  hours: 400,
  onAt: () => true,
  grainC: () => 25,
  airC: () => 10,
  dailyK: 0,
  cableSpeeds: [1],
  rulePart: 0.75,
  layers: 60,
  heightsM: [0.6, 1.6, 2.6, 3.6, 4.6, 5.6],
  logEveryH: 1,
  noiseK: 0,
  quantumK: 0,
  normal: () => 0,
  air: 'up',
  sign: -1,
};

export interface Played {
  fronts: BinFronts;
  /** [cable x sensor], fan hours; null where the front did not get there */
  truth: (number | null)[];
  /** the same with the daily part of the air removed */
  truthWithoutDay: (number | null)[];
  /** fan hours of the log before a moment */
  fanHoursBefore(ms: number): number;
  firstOnMs: number;
}

/** Front speed with the fan on, m/h. */
export function speedOf({ cfmPerBushel, rulePart }: Scenario): number {
  return DEPTH_M / (rulePart * ruleOfThumbHours(cfmPerBushel));
}

/** Let the bed run, log it with the logger's faults, and ask for the fronts. */
export function play(scenario: Scenario): Played {
  const s = scenario;
  const bin = inventedBin(s.heightsM, s.cableSpeeds.length, s.air, DEPTH_M);
  const places = s.heightsM.map((heightM) => (s.air === 'up' ? heightM : DEPTH_M - heightM));
  const onAt = (hour: number) => hour >= s.fanFromH && s.onAt(hour);
  const withDay = (hour: number) => s.airC(hour) + s.dailyK * Math.cos((2 * Math.PI * (hour - 3)) / 24);
  const sensors: SensorSeries[] = [];
  const truth: (number | null)[] = [];
  const truthWithoutDay: (number | null)[] = [];
  let on: Uint8Array = new Uint8Array(0);
  s.cableSpeeds.forEach((factor, cable) => {
    const bed = { depthM: DEPTH_M, speedMH: speedOf(s) * factor, layers: s.layers, startC: s.grainC };
    const run = runBed(bed, places, s.hours, STEP_H, withDay, onAt);
    const calm = runBed(bed, places, s.hours, STEP_H, s.airC, onAt);
    on = run.on;
    s.heightsM.forEach((heightM, place) => {
      const times: number[] = [];
      const temps: number[] = [];
      for (let hour = 0; hour <= s.hours; hour += s.logEveryH) {
        times.push(START_MS + hour * HOUR_MS);
        const read = run.tempC[place][Math.round(hour / STEP_H)] + s.noiseK * s.normal();
        temps.push(s.quantumK > 0 ? Math.round(read / s.quantumK) * s.quantumK : read);
      }
      sensors.push(seriesOf(`C${cable + 1}`, place + 1, heightM, times, temps));
      const until = s.untilH ?? s.hours;
      truth.push(trueArrival(run, place, s.fanFromH, until, s.sign));
      truthWithoutDay.push(trueArrival(calm, place, s.fanFromH, until, s.sign));
    });
  });
  const airHours = Array.from({ length: Math.floor(s.hours) + 1 }, (_, hour) => hour);
  const air = {
    timeMs: Float64Array.from(airHours, (hour) => START_MS + hour * HOUR_MS),
    tempC: Float64Array.from(airHours, withDay),
  };
  const none = { timeMs: new Float64Array(0), tempC: new Float64Array(0) };
  const fronts = binFronts({
    bin,
    sensors,
    fan: spansOf(on, STEP_H),
    plenum: s.air === 'up' ? air : none,
    weather: air,
  });
  const firstOn = on.indexOf(1);
  return {
    fronts,
    truth,
    truthWithoutDay,
    fanHoursBefore: (ms) =>
      on.reduce((sum, state, i) => sum + (START_MS + i * STEP_H * HOUR_MS < ms ? state * STEP_H : 0), 0),
    firstOnMs: START_MS + firstOn * STEP_H * HOUR_MS,
  };
}
