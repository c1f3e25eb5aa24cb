import { standardPressurePa } from '../../air/pressure.ts';
import { zoneOf } from '../../base/zone.ts';
import { untimedStretches } from '../fan/untimed-stretches.ts';
import { goodReadings } from '../fronts/good-readings.ts';
import { grainMean } from '../fronts/grain-mean.ts';
import { fillTimes } from '../grain/fill-times.ts';
import { type BinMoisture, FAN_OFF, FAN_ON, FAN_UNKNOWN } from '../types.ts';
import { airIfRun, type MoistAir, outdoorAir } from './entering-moist-air.ts';
import { type FanAir, fanAir } from './fan-air.ts';
import { grainMoistureAt, type MoistureCurve } from './grain-moisture-at.ts';
import { grainSpan, inGrain } from './grain-span.ts';
import type { CaseChoices, KnownHours } from './hour-cases.ts';
import { type HourPieces, hourPieces } from './hour-pieces.ts';
import { sumWhere } from './hour-sums.ts';
import { moistAirLog } from './moist-air-log.ts';
import type { Untimed } from './untimed-bands.ts';
import { timedAir, untimedHours } from './untimed-hours.ts';
import type { UsefulInput } from './useful-input.ts';
import { usefulLimits } from './useful-limits.ts';

/** Half-width of a mean moisture whose interval is not told, fraction. */
const ASSUMED_HALF_WB = 0.005;

/** The hours with the fan on and off, the air and the grain of each. */
export interface SeasonHours {
  on: HourPieces;
  /** only while grain was in */
  off: HourPieces;
  /** the log is silent */
  silent: HourPieces;
  known: KnownHours;
  /** as they would have been with the fan on */
  offKnown: KnownHours;
  silentKnown: KnownHours;
  /** outdoor air of the hours on, and of those silent */
  outdoor: MoistAir;
  silentOutdoor: MoistAir;
  /** of those on, h whose moment no log tells, and which these are */
  untimedHours: number;
  untimed: Untimed;
  /** [pieces on], [pieces silent]; 0 while the bin held no grain */
  grain: Uint8Array;
  silentGrain: Uint8Array;
  air: FanAir;
  moistureFrom: MoistureCurve['from'];
  choices: CaseChoices;
}

/** Everything that the hours of a bin are judged by. */
export function knownHours(input: UsefulInput): SeasonHours {
  const { bin, season, spans } = input;
  const zone = zoneOf(season.site.timeZone);
  const fill = fillTimes(bin);
  const [fromMs, toMs] = grainSpan(bin, fill);
  const pressurePa = standardPressurePa(season.site.elevationM ?? 0);
  const weather = moistAirLog(input.weather, pressurePa);
  const on = hourPieces(spans, FAN_ON, zone);
  const off = hourPieces(spans, FAN_OFF, zone, fromMs, toMs);
  const silent = hourPieces(spans, FAN_UNKNOWN, zone);
  const own = input.fans.filter(({ fanId }) => bin.fanIds.includes(fanId));
  const untimed = untimedHours(on.midMs, own);
  const met = fanAir(bin, season, spans, on.midMs, moistAirLog(input.plenum, pressurePa), weather, pressurePa);
  const air = {
    ...met,
    main: timedAir(met.main, untimed),
    others: met.others.map((other) => timedAir(other, untimed)),
  };
  const readings = input.series.map((one) => goodReadings(one, fromMs, toMs)).filter((one) => one.timeMs.length > 0);
  const tempAt = (atMs: Float64Array) => grainMean(bin, readings, atMs);
  const moistureAt = (atMs: Float64Array) => grainMoistureAt(input.moisture, fill, spans, atMs);
  const { moistureWb, from } = moistureAt(on.midMs);
  const ifRun = (midMs: Float64Array, outdoor: MoistAir): KnownHours => {
    const warmed = (moreK: number) =>
      airIfRun(outdoor, air.warmingKnown ? air.main.warmingK + moreK : Number.NaN, pressurePa);
    return {
      air: warmed(0),
      otherWarmings: air.others.length === 0 ? [] : [warmed(-air.offK), warmed(air.offK)],
      grainWb: moistureAt(midMs).moistureWb,
      grainC: tempAt(midMs),
    };
  };
  const silentOutdoor = outdoorAir(weather, silent.midMs, pressurePa);
  return {
    on,
    off,
    silent,
    known: { air: air.main, otherWarmings: air.others, grainWb: moistureWb, grainC: tempAt(on.midMs) },
    offKnown: ifRun(off.midMs, timedAir(outdoorAir(weather, off.midMs, pressurePa), untimedHours(off.midMs, own))),
    silentKnown: ifRun(silent.midMs, silentOutdoor),
    outdoor: outdoorAir(weather, on.midMs, pressurePa),
    silentOutdoor,
    untimedHours: sumWhere(on, (i) => untimed[i] === 1),
    untimed: { on: untimed, stretches: untimedStretches(own) },
    grain: inGrain(on, bin, fill),
    silentGrain: inGrain(silent, bin, fill),
    air,
    moistureFrom: from,
    choices: {
      grain: bin.grain,
      // Moistures of tickets or as stated are a meter's, no isotherm's.
      cableIsotherm: from === 'days' ? season.sensors.moisture.isotherm : null,
      limits: usefulLimits(season),
      moistureHalf: halfOf(input.moisture),
      pressurePa,
      withPlateaus: true,
    },
  };
}

/** How sure a single moment's mean is: sensors' errors do not cancel against the air. */
function halfOf({ start, end }: BinMoisture): number {
  const halves = [start, end].flatMap(({ interval }) =>
    interval === null || interval === undefined ? [] : [(interval[1] - interval[0]) / 2],
  );
  return halves.length === 0 ? ASSUMED_HALF_WB : Math.max(...halves);
}
