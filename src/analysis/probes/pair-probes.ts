import { toLocalMs, type Zone } from '../../base/zone.ts';
import type { Bin } from '../../season/season.ts';
import type { SensorReadings } from '../moisture/sensor-readings.ts';
import { LOAD_SAMPLE_SD } from '../moisture/tickets.ts';
import type { FanSpans } from '../types.ts';
import { airOf, cableAt, type SensorAt } from './cable-at.ts';
import type { ProbePair, ProbeReading } from './probe-types.ts';
import { readingAt } from './reading-at.ts';

const HOUR_MS = 3_600_000;
const DAY_MS = 24 * HOUR_MS;
/** A cable farther in or out than this says nothing of the sample's place. */
const NEAR_OUT_M = 1.5;
/** Cables within this of the nearest distance hang in its ring. */
const SAME_RING_M = 0.3;
/** Hand meters read cold grain wrong: below this they want the sample warmed in a closed bag first (common practice). */
const COLD_C = (40 - 32) / 1.8;

const NO_PLACE = 'no height is given';
const NO_CABLE = 'no cable hangs within 1.5 m (5 ft) of their distance from the centre';
const NO_MOISTURE = 'no cable of the bin tells a moisture that can be believed';
const NO_SENSOR = 'no sensor within 1 m (3 ft) of height was read around their day';

/** The bin and its cables' believed readings. */
export interface PairInput {
  bin: Bin;
  moistures: readonly SensorReadings[];
  /** for samples that bring no temperature */
  temperatures: readonly SensorReadings[];
  spans: FanSpans | null;
  zone: Zone;
}

/** Hold one hand sample against the cables near its place and day; why not, where none is. */
export function pairProbe(reading: ProbeReading, input: PairInput): ProbePair | string {
  if (input.moistures.length === 0) return NO_MOISTURE;
  if (Number.isNaN(reading.heightM)) return NO_PLACE;
  const cables = cablesNear(input.bin, reading.fromCentreM);
  if (cables.length === 0) return NO_CABLE;
  const [fromMs, toMs] = dayAround(reading.timeMs, input.zone);
  const at = (sensors: readonly SensorReadings[]) =>
    cables.flatMap((cable) => {
      const read = sensors
        .filter((one) => one.cable === cable.id)
        .flatMap((one): SensorAt[] => {
          const found = readingAt(one, input.spans, fromMs, toMs);
          return found === null
            ? []
            : [{ ...found, sensor: one.sensor, heightM: cable.sensorHeightsM[one.sensor - 1] }];
        })
        .sort((a, b) => a.heightM - b.heightM);
      const found = cableAt(read, reading.heightM);
      return found === null ? [] : [{ cable: cable.id, ...found }];
    });
  const found = at(input.moistures);
  if (found.length === 0) return NO_SENSOR;
  const mean = found.reduce((sum, one) => sum + one.value, 0) / found.length;
  // The sample lies near one of the cables, nobody knows which: they differ, and so may it from their mean.
  const between =
    found.length < 2
      ? 0
      : 100 * Math.sqrt(found.reduce((sum, one) => sum + (one.value - mean) ** 2, 0) / (found.length - 1));
  const own = Math.sqrt(found.reduce((sum, one) => sum + one.sd ** 2, 0)) / found.length;
  return {
    reading,
    cables: found.map((one) => one.cable),
    sensors: found.flatMap((one) => one.parts.map(({ sensor }) => `${one.cable} ${sensor}`)),
    cableWb: mean,
    air: airOf(found.map((one) => one.air)),
    byCable: found.map(({ cable, parts, value, sd }) => ({
      cable,
      parts,
      offset: 100 * (value - reading.moistureWb),
      sd: Math.hypot(sd, LOAD_SAMPLE_SD),
    })),
    between,
    offset: 100 * (mean - reading.moistureWb),
    sd: Math.hypot(own, between, LOAD_SAMPLE_SD),
    cold: isCold(reading, () => at(input.temperatures).map((one) => one.value)),
    counted: true,
  };
}

/** The cables of the ring nearest to a distance from the centre; all where it is not given. */
function cablesNear(bin: Bin, fromCentreM: number): Bin['cables'] {
  if (Number.isNaN(fromCentreM)) return bin.cables;
  const off = (cable: Bin['cables'][number]) => Math.abs(cable.fromCentreM - fromCentreM);
  const nearest = Math.min(...bin.cables.map(off));
  if (!(nearest <= NEAR_OUT_M)) return [];
  const best = bin.cables.find((cable) => off(cable) === nearest)!;
  return bin.cables.filter((cable) => Math.abs(cable.fromCentreM - best.fromCentreM) <= SAME_RING_M);
}

/** Twelve hours on either side; a date alone may be any hour of its day. */
function dayAround(ms: number, zone: Zone): [number, number] {
  const bare = toLocalMs(zone, ms) % DAY_MS === 0;
  return bare ? [ms, ms + DAY_MS] : [ms - 12 * HOUR_MS, ms + 12 * HOUR_MS];
}

function isCold(reading: ProbeReading, cableTempsC: () => number[]): boolean {
  if (!Number.isNaN(reading.tempC)) return reading.tempC < COLD_C;
  const temps = cableTempsC();
  return temps.length > 0 && temps.reduce((sum, one) => sum + one, 0) / temps.length < COLD_C;
}
