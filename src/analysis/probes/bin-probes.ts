import type { Table } from 'apache-arrow';
import { agreeing } from '../../base/agreeing.ts';
import { localDayOf, startOfLocalDay, zoneOf } from '../../base/zone.ts';
import type { BinMoistureInput } from '../moisture/observed-moisture.ts';
import { believedReadings } from '../moisture/sensor-readings.ts';
import type { BinMoisture } from '../types.ts';
import { correctedNumbers } from './corrected-numbers.ts';
import { type PairInput, pairProbe } from './pair-probes.ts';
import { COLD_METER_LIMIT, countedPairs, METER_LIMIT, probeOffset } from './probe-offset.ts';
import { probeReadings } from './probe-readings.ts';
import type { BinProbes, ProbePair } from './probe-types.ts';
import { sensorOffsets } from './sensor-offsets.ts';

/**
 * Hand samples of a bin against its cables near their place and day: by how much the cables read wetter, by sample, ring,
 * day and bin, and what the season's numbers would be with that taken off.
 */
export function binProbes(probes: Table, input: BinMoistureInput, moisture: BinMoisture): BinProbes {
  const { bin, season, series, spans } = input;
  const { readings, leftOut } = probeReadings(probes, bin.id);
  const all = (what: 'moisture' | 'temperature') =>
    // Bins without samples need no second walk through their logs.
    readings.length === 0
      ? []
      : believedReadings(bin, series, what, spans, Number.NEGATIVE_INFINITY, Number.POSITIVE_INFINITY);
  const zone = zoneOf(season.site.timeZone);
  const tools: PairInput = { bin, moistures: all('moisture'), temperatures: all('temperature'), spans, zone };
  const tried = readings.map((reading) => pairProbe(reading, tools));
  const whys = tried.filter((one) => typeof one === 'string');
  const unmatched = [...new Set(whys)].map((why) => ({ count: whys.filter((one) => one === why).length, why }));
  const { pairs, meterLimit, far } = countedPairs(tried.filter((one) => typeof one !== 'string'));
  const counted = pairs.filter((one) => one.counted);
  const whole = probeOffset(counted, meterLimit);
  const rings = [...new Set(counted.map((one) => one.cables.join(' ')))].map((key) => {
    const own = counted.filter((one) => one.cables.join(' ') === key);
    return { cables: own[0].cables, ...probeOffset(own, meterLimit) };
  });
  const dayOf = (pair: ProbePair) => startOfLocalDay(zone, localDayOf(zone, pair.reading.timeMs));
  const still = pairs.filter((one) => one.air === 'still' && one.far !== true);
  const days = [...new Set(still.map(dayOf))].map((dayMs) => {
    const own = still.filter((one) => dayOf(one) === dayMs);
    const cold = own.filter((one) => one.cold).length;
    return { dayMs, cold, ...probeOffset(own, cold > 0 ? COLD_METER_LIMIT : METER_LIMIT) };
  });
  const why =
    readings.length === 0
      ? leftOut === 0
        ? 'No hand samples of this bin are given.'
        : `None of the ${leftOut} hand samples of this bin can be believed.`
      : counted.length === 0
        ? `No hand sample can be held against a sensor: ${reasonsOf(unmatched, pairs)}.`
        : null;
  return {
    pairs,
    unmatched,
    bin: why === null ? whole : { ...whole, offset: { value: null, interval: null, why } },
    rings,
    sensors: sensorOffsets(bin, moisture, season.sensors.moisture, pairs, meterLimit),
    days,
    meterLimit,
    corrected: why === null ? correctedNumbers(input, moisture, whole.offset, sampledShare(moisture, counted)) : null,
    notes: notesOf(pairs, leftOut, far, meterLimit),
    why,
  };
}

/** Share of the grain that the sensors stand for which a sample was held against. */
function sampledShare({ shares }: BinMoisture, pairs: readonly ProbePair[]): number {
  const used = new Set(pairs.flatMap((one) => one.sensors));
  return shares.filter((one) => used.has(`${one.cable} ${one.sensor}`)).reduce((sum, one) => sum + one.share, 0);
}

function reasonsOf(unmatched: BinProbes['unmatched'], pairs: readonly ProbePair[]): string {
  const reasons = unmatched.map((one) => one.why);
  if (pairs.some((one) => one.air === 'unknown'))
    reasons.push('no fan log tells whether the air stood still around their days');
  if (pairs.some((one) => one.air === 'moving'))
    reasons.push('around their days the cables were read only while the fan ran');
  return reasons.join('; ');
}

function notesOf(pairs: readonly ProbePair[], leftOut: number, far: number, meterLimit: number): string[] {
  const notes: string[] = [];
  const cold = pairs.filter((one) => one.cold).length;
  const moving = pairs.filter((one) => one.air === 'moving').length;
  const untold = pairs.filter((one) => one.air === 'unknown').length;
  if (leftOut > 0)
    notes.push(
      `${leftOut} hand sample${leftOut > 1 ? 's are' : ' is'} left out: without a moisture, or not to be believed.`,
    );
  if (cold > 0) {
    const how =
      meterLimit === COLD_METER_LIMIT
        ? `there are too few warm ones, so ${agreeing(cold, 'it counts', 'they count')} with ±${COLD_METER_LIMIT} point for the meter`
        : agreeing(cold, 'it is shown and does not count', 'they are shown and do not count');
    notes.push(
      `${cold} of ${pairs.length} hand samples ${agreeing(cold, 'was', 'were')} of grain under 4 °C (40 °F), where hand meters read wrong: ${how}. Warm a cold sample in a closed bag before you read it (common practice).`,
    );
  }
  if (far > 0)
    notes.push(
      `${far} hand sample${far > 1 ? 's' : ''} far from all others left out: a mistaken number, or another place.`,
    );
  if (moving > 0)
    notes.push(
      `${moving} of ${pairs.length} hand samples can only be held against cables read while the fan ran, which show the passing air: shown, not counted.`,
    );
  if (untold > 0)
    notes.push(
      `${untold} of ${pairs.length} hand samples can only be held against cables of which no fan log tells whether they were read in still air: shown, not counted.`,
    );
  return notes;
}
