import { type Estimate, withheld } from '../../base/estimate.ts';
import { ratioInterval } from '../../base/stats/ratio-interval.ts';
import { zoneOf } from '../../base/zone.ts';
import { sensorShares } from '../../bin/shares.ts';
import { grainAmount } from '../grain/grain-amount.ts';
import { ofOneFilling } from '../grain/one-filling.ts';
import type { BinMoisture, SensorShare } from '../types.ts';
import { ofLoggedTime } from '../unit-costs/unlogged-time.ts';
import { binLayers } from './bin-layers.ts';
import { type CableSpread, pooledCableSpread } from './cable-spread.ts';
import { consistentChange, type MoistureChange } from './consistent-change.ts';
import { dailyMoisture } from './daily-moisture.ts';
import { LATER_STAGES, withLaterStages } from './later-stages.ts';
import type { BinLayers } from './layer-types.ts';
import { type MoistureMoment, moistureMoment, ticketStart } from './moisture-moment.ts';
import { moistureNotes } from './moisture-notes.ts';
import { moistureStages } from './moisture-stages.ts';
import { type BinMoistureInput, type ObservedMoisture, observeMoisture } from './observed-moisture.ts';
import { overdryingLoss } from './overdrying-loss.ts';
import { pointsRemoved } from './points-removed.ts';
import { pointsTime } from './points-time.ts';
import { sensorMean } from './sensor-mean.ts';
import { believedReadings } from './sensor-readings.ts';
import { ticketAgreement } from './ticket-agreement.ts';

/**
 * Moisture of one bin: start, end, points removed with interval, over-drying loss, day by day.
 *
 * @param pooled  spread between cables in the season's other bins; null where there are none
 */
export function binMoisture(input: BinMoistureInput, pooled: CableSpread | null = null): BinMoisture {
  return concludeMoisture(observeMoisture(input), pooled);
}

/** The spread between cables that the season's other bins show. */
export function spreadOfOthers(one: ObservedMoisture, all: readonly ObservedMoisture[]): CableSpread {
  return pooledCableSpread(all.filter((other) => other !== one && !Number.isNaN(other.points)));
}

/** The second half: intervals and all that is told. */
export function concludeMoisture(observed: ObservedMoisture, pooled: CableSpread | null): BinMoisture {
  const { input, fill, sensors } = observed;
  const { bin, season, spans } = input;
  const read = { start: moistureMoment(observed, 'start', pooled), end: moistureMoment(observed, 'end', pooled) };
  const change = consistentChange(observed, surestStart(observed, read.start, read.end, pooled), pooled);
  const { start, end, removed: whole } = change;
  const stages = moistureStages(observed, pooled);
  const { removed, notes } = withLaterStages(whole, stages, fill);
  const stayed = removed.parts.some(({ cause }) => cause === LATER_STAGES);
  const moments = { start: start.mean, end: end.mean };
  const time = pointsTime(input.fanHours, spans, fill, moments, stayed, bin.grain.unloadedMs);
  const grain = grainAmount(bin, start.mean, input.tickets);
  const loss =
    change.contradicted === null
      ? overdryingLoss(bin, season, grain, end)
      : { bushels: withheld(change.contradicted), money: withheld(change.contradicted) };
  const sharesOf = (usable: (cable: string, sensor: number) => boolean) =>
    fill.depthM === null ? [] : sensorShares(bin.diameterM, fill.depthM, bin.cables, usable);
  return {
    start: start.mean,
    end: end.mean,
    pointsRemoved: removed.points,
    perHundredFanHours: perHundred(
      removed.points,
      ofOneFilling(ofLoggedTime(time.fanHours, { spans: spans ?? undefined }, moments), bin),
    ),
    pointsTime: time,
    shares: sharesTold(observed),
    errorParts: removed.parts.map(({ cause, sd }) => ({ cause, sd })),
    endParts: end.parts.filter((part) => part.sd > 0).map(({ cause, sd }) => ({ cause, sd })),
    degreesOfFreedom: removed.degreesOfFreedom,
    layers: change.byTickets
      ? besideTickets(binLayers(observed, pooled, end.mean))
      : binLayers(observed, pooled, end.mean),
    ticketsAlone: change.byTickets,
    tickets: ticketAgreement(observed, grain.weightKg, pooled),
    stages,
    cables: observed.cables.map(({ cable, points, weight }) => ({ cable, points, weight })),
    overdryingLossBushels: loss.bushels,
    overdryingLoss: loss.money,
    daily: dailyMoisture(sensors, sharesOf, spans, zoneOf(season.site.timeZone)),
    notes: [...moistureNotes(observed, change, pooled), ...notes],
    why: removed.points.why,
  };
}

/**
 * A start read in moving air against the one by tickets, where these cover the filling: the one that leaves the points
 * surer, although fixed errors cancel only between the same sensors.
 */
function surestStart(
  observed: ObservedMoisture,
  read: MoistureMoment,
  end: MoistureMoment,
  pooled: CableSpread | null,
): MoistureChange {
  const asRead = { start: read, end, removed: pointsRemoved(observed, read, end, pooled) };
  if (read.mean.from !== 'sensors' || read.mean.stillAir) return asRead;
  const weighed = ticketStart(observed);
  if (weighed === null) return asRead;
  const byTickets = { start: weighed, end, removed: pointsRemoved(observed, weighed, end, pooled) };
  const width = ({ removed }: typeof asRead) =>
    removed.points.interval === null
      ? Number.POSITIVE_INFINITY
      : removed.points.interval[1] - removed.points.interval[0];
  return width(byTickets) < width(asRead) ? byTickets : asRead;
}

/** Thirds of sensors that the tickets contradict: the tickets' mean is none of these mixed. */
function besideTickets(layers: BinLayers): BinLayers {
  const mixed = withheld(
    'Sensors and scale tickets contradict each other: the thirds are the sensors’, the moisture at the end is the tickets’.',
  );
  return { ...layers, unload: { ...layers.unload, mixed } };
}

function perHundred(points: Estimate, fanHours: Estimate): Estimate {
  const scaled: Estimate = {
    value: points.value === null ? null : 100 * points.value,
    interval: points.interval === null ? null : [100 * points.interval[0], 100 * points.interval[1]],
    why: points.why,
  };
  const none = (fanHours.interval?.[1] ?? 0) > 0 ? 'The fan hours are too unsure' : 'The fans did not run';
  return ratioInterval(scaled, fanHours, `${none}, so there are no points per fan hour.`);
}

/** Each sensor that counts, with what it read at both moments. */
function sharesTold({ input, moments }: ObservedMoisture): SensorShare[] {
  const { bin, series, spans } = input;
  const temperatures = believedReadings(
    bin,
    series,
    'temperature',
    spans,
    Number.NEGATIVE_INFINITY,
    Number.POSITIVE_INFINITY,
  );
  return moments.rows.map((row) => {
    const warmth = temperatures.find((one) => one.cable === row.cable && one.sensor === row.sensor);
    const tempAt = (moment: 'start' | 'end') => {
      const window = moments[moment];
      if (window === null || warmth === undefined) return null;
      return numberOrNull(sensorMean(warmth, window.span, window.stillAir).value);
    };
    return {
      cable: row.cable,
      sensor: row.sensor,
      heightM: row.heightM,
      share: row.share,
      startWb: moments.start === null ? null : numberOrNull(row.start.value),
      endWb: moments.end === null ? null : numberOrNull(row.end.value),
      startC: tempAt('start'),
      endC: tempAt('end'),
    };
  });
}

function numberOrNull(value: number): number | null {
  return Number.isNaN(value) ? null : value;
}
