import { DAY } from '../../sample/calendar.ts';
import type { Random } from '../../sample/random.ts';
import { drawOf } from './chance.ts';
import type { BinDraw } from './plan.ts';
import type { BinTrace } from './run-bin.ts';

export interface ErrorNow {
  tempC: number;
  /** fraction, before the cable works its moisture out */
  humidity: number;
  /** points, after */
  points: number;
}

/** Air at which a data sheet states the accuracy of a moisture. */
const SHEET_RH = 0.65;
const SHEET_C = 15;

/** The errors of a bin's sensors, drawn once: fixed, shared along a cable, shared by the bin, and a walk from day to day. */
export function sensorErrors(trace: BinTrace, random: Random): { at(sensor: number, ms: number): ErrorNow } {
  const { draw, sensors } = trace;
  const model = draw.moistureErrors;
  const days = Math.ceil((draw.endMs - trace.startMs) / DAY) + 2;
  const cables = new Map(draw.cables.map((one) => [one.id, one]));
  const shared = new Map(
    [...cables.keys()].map((id) => [id, { fixed: drawOf(model.shape, random), walk: walk(random, days) }]),
  );
  const bias = model.bias * random.normal();
  const each = sensors.map(({ cable }) => {
    const own = { fixed: drawOf(model.shape, random), walk: walk(random, days) };
    const along = shared.get(cable)!;
    const mixed = (part: number, mine: number, theirs: number) => Math.sqrt(1 - part) * mine + Math.sqrt(part) * theirs;
    return {
      tempC: 0.25 * random.normal(),
      fixed: bias + model.fixed * mixed(model.cablePart, own.fixed, along.fixed),
      walk: own.walk.map((mine, d) => model.drift * mixed(model.driftCablePart, mine, along.walk[d])),
    };
  });
  const perHumidity = pointsPerHumidity(draw);
  return {
    at(sensor, ms) {
      const one = each[sensor];
      const drift = one.walk[Math.max(0, Math.floor((ms - trace.startMs) / DAY))];
      return model.inHumidity
        ? { tempC: one.tempC, humidity: (one.fixed + drift) / perHumidity, points: 0 }
        : { tempC: one.tempC, humidity: 0, points: one.fixed + drift };
    },
  };
}

/** Points of moisture for a whole unit of relative humidity, where the data sheet states its accuracy. */
function pointsPerHumidity({ cableCurve }: BinDraw): number {
  const wet = (rh: number) => {
    const db = cableCurve.curve.emc(rh, SHEET_C);
    return (100 * db) / (100 + db);
  };
  return (wet(SHEET_RH + 0.05) - wet(SHEET_RH - 0.05)) / 0.1;
}

/** A walk whose sd after the last day is 1, [days]. */
function walk(random: Random, days: number): Float64Array {
  const out = new Float64Array(days);
  for (let d = 1; d < days; d++) out[d] = out[d - 1] + random.normal() / Math.sqrt(days);
  return out;
}
