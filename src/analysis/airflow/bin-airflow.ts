import { BUSHEL_M3 } from '../../base/bushel.ts';
import { type Estimate, withheld } from '../../base/estimate.ts';
import { overlap } from '../../base/overlap.ts';
import { hpPerThousandBushels } from '../../bin/fan-power.ts';
import { cfmPerBushel } from '../../bin/specific-airflow.ts';
import type { Bin, Season } from '../../season/season.ts';
import type { SensorSeries } from '../../tables/sensors.ts';
import { unloggedFans } from '../fan/unlogged-fans.ts';
import type { AirflowWay, BinAirflow, BinFan, BinGrainAmount, BinMoisture, FanSpans } from '../types.ts';
import { airflowByCurve } from './airflow-by-curve.ts';
import { airflowByFront } from './airflow-by-front.ts';
import { airflowByPressure } from './airflow-by-pressure.ts';
import { powerBearing, pressureBearing } from './bearings.ts';
import { likelyAirflow } from './disagreement.ts';
import { type RelativeFlow, relativeFlow } from './flow-through-time.ts';
import { type PressureLog, pressureLog } from './pressure-log.ts';
import { sureEnough } from './sure-enough.ts';

export interface BinAirflowInput {
  bin: Bin;
  season: Season;
  /** of this bin */
  series: readonly SensorSeries[];
  /** the bin's fans together; null where no log tells */
  spans: FanSpans | null;
  fan: BinFan;
  grain: BinGrainAmount;
  moisture: BinMoisture;
  /** columns `time` and `static_pressure_pa` of the bin's plenum */
  plenum: Readonly<Record<string, Float64Array>>;
  /** of the station, Pa */
  stationPa: number;
  /** temperature of the entering air at a moment, degC; NaN where not known */
  enteringC: (ms: number) => number;
}

/** What is told of a bin's airflow, and how it went through the season. */
export interface AirflowFound {
  told: BinAirflow;
  /** what the water by air is worked out with: `told.flowM3S`, else that by fronts with an interval too wide to be shown */
  forWater: Estimate;
  /** airflow at a moment over that of `forWater`; null where there is none */
  relativeAt: RelativeFlow | null;
}

const CONTRADICT =
  'What static pressure tells does not go with the fronts: one of the two is wrong, so neither is used.';

const NO_MODEL = 'No model of this bin has been fitted to its log yet.';

/** Airflow by front speed and by static pressure, which of them is used, and whether they agree. */
export function binAirflow(input: BinAirflowInput): AirflowFound {
  const { bin, spans, grain } = input;
  if (spans === null) {
    const why = input.fan.doubt ?? 'No fan of this bin has a log, so its airflow cannot be told.';
    return {
      told: { ...missing(why), hpPerThousandBushels: nameplate(input) },
      forWater: withheld(why),
      relativeAt: null,
    };
  }
  const fans = input.fan.fans;
  const log = pressureLog(bin, spans, fans, input.plenum);
  const front = airflowByFront({ ...input, spans, fans });
  const pressure = airflowByPressure(bin, log, grain.depthM, front.fanSet === '' ? null : front.fanSet);
  const fanSet = front.fanSet || pressure.stage?.fanSet || bin.fanIds.join('+');
  const curve = airflowByCurve(bin, input.season, pressure.stage, grain.depthM, fanSet);
  const sameFans = pressure.stage === null || front.fanSet === '' || pressure.stage.fanSet === front.fanSet;
  const stage = sameFans ? pressure.stage : null;
  const ran = fans.filter((fan) => front.fanSet.split('+').includes(fan.fanId));
  const bearings = [
    ...(stage === null ? [] : pressureBearing(bin, stage.flowM3S)),
    ...powerBearing(bin, ran, front.depthM ?? 0, stage),
  ];
  const byFront = sureEnough(front, bearings, grain.volumeM3 ?? 0);
  const agree = sameFans ? overlap(front.rangeM3S, pressure.flowM3S) : null;
  const from = airflowFrom(byFront, pressure.flowM3S, agree);
  const flow = from === 'front' ? byFront : from === 'pressure' ? pressure.flowM3S : null;
  const flowM3S =
    flow ??
    withheld(
      [byFront.why, pressure.flowM3S.why ?? (agree === false ? CONTRADICT : null)]
        .filter((why) => why !== null)
        .join(' '),
    );
  const notes = notesOf(input, log, front.fanSet, sameFans, pressure.inMeasuredRange);
  const told: BinAirflow = {
    byPressure: pressure.flowM3S,
    byFront,
    byModel: withheld(NO_MODEL),
    byFanCurve: curve.flowM3S,
    fanCurveFrom: curve.from,
    from,
    flowM3S,
    cfmPerBushel: perBushel(flowM3S, grain),
    hpPerThousandBushels: nameplate(input),
    agree,
    fanSet: from === 'pressure' ? (pressure.stage?.fanSet ?? '') : front.fanSet,
    pressure:
      pressure.stage === null
        ? null
        : {
            pressurePa: pressure.stage.pressurePa,
            readings: pressure.stage.readings,
            depthM: pressure.stage.depthM,
            factor: bin.airflowFactor,
            factorRange: pressure.factor,
            sets: pressure.sets,
          },
    stages: pressure.stages,
    front: {
      windows: front.windows,
      fanHours: front.fanHours,
      cables: front.cables,
      parts: front.parts,
      isotherms: front.isotherms,
    },
    likely: [],
    notes,
    why: flowM3S.why,
  };
  const forWater = flow ?? front.rangeM3S;
  return {
    told: { ...told, likely: likelyAirflow(bin, { ...told, byFront: front.rangeM3S }) },
    forWater,
    relativeAt:
      forWater.value === null || grain.depthM === null
        ? null
        : relativeFlow(bin, log, fans, grain.depthM, from === 'pressure' ? (pressure.stage?.fanSet ?? fanSet) : fanSet),
  };
}

/** A bin without any airflow, with one reason for all of it. */
export function missing(why: string): BinAirflow {
  const none = withheld(why);
  return {
    byPressure: none,
    byFront: none,
    byModel: withheld(NO_MODEL),
    byFanCurve: none,
    fanCurveFrom: null,
    from: null,
    flowM3S: none,
    cfmPerBushel: none,
    hpPerThousandBushels: null,
    agree: null,
    fanSet: '',
    pressure: null,
    stages: [],
    front: { windows: 0, fanHours: 0, cables: [], parts: [], isotherms: [] },
    likely: [],
    notes: [],
    why,
  };
}

/**
 * Which of the two is used: the fronts', else the pressure's; the model's takes neither's place. What speaks against the fronts does not take their place: one is wrong, and nothing says which.
 *
 * @param agree  of the fronts' whole range with the pressure's
 */
export function airflowFrom(front: Estimate, pressure: Estimate, agree: boolean | null): AirflowWay | null {
  if (front.value !== null) return 'front';
  return pressure.value === null || agree === false ? null : 'pressure';
}

function perBushel(flow: Estimate, { volumeM3 }: BinGrainAmount): Estimate {
  if (flow.value === null || flow.interval === null) return flow;
  if (volumeM3 === null) return withheld('The volume of the grain is not known.');
  const [low, high] = flow.interval;
  return {
    value: cfmPerBushel(flow.value, volumeM3),
    interval: [cfmPerBushel(low, volumeM3), cfmPerBushel(high, volumeM3)],
    why: null,
  };
}

function nameplate({ bin, season, grain }: BinAirflowInput): number | null {
  const power = season.fans.filter((fan) => bin.fanIds.includes(fan.id)).reduce((sum, fan) => sum + fan.nameplateW, 0);
  return grain.volumeM3 === null || power <= 0 ? null : hpPerThousandBushels(power, grain.volumeM3 / BUSHEL_M3);
}

function notesOf(
  { bin, fan }: BinAirflowInput,
  log: PressureLog,
  frontSet: string,
  sameFans: boolean,
  inMeasuredRange: boolean,
): string[] {
  const notes: string[] = [];
  if (frontSet !== '' && bin.fanIds.length > 1)
    notes.push(
      `The airflow is told for ${frontSet.split('+').join(' and ')}, which ran most of the hours with the bin full.`,
    );
  if (!sameFans)
    notes.push(
      'The static pressures were logged with other fans running than the fronts were timed with, so the two are not held against each other.',
    );
  if (log.timeMs.length > 0 && !inMeasuredRange)
    notes.push('The resistance was carried beyond the airflows for which it was measured.');
  if (bin.openFloor < 1)
    notes.push(
      'Only part of the floor lets air through: near it the air is faster and the resistance higher than a full floor’s, which the airflow by pressure does not count.',
    );
  const unlogged = unloggedFans(bin, fan);
  if (unlogged !== null)
    notes.push(
      `${unlogged.said}: the airflow holds the air that came so beside ${unlogged.others}, and by fronts it is too high where grain was aired without ${unlogged.others}.`,
    );
  return notes;
}
