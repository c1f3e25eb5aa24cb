import { Z95 } from '../../base/estimate.ts';
import { fillLoads } from '../grain/fill-loads.ts';
import { loadsOut, outOfFull } from '../grain/loads-out.ts';
import { weightByTickets } from '../grain/weight-by-tickets.ts';
import { type WeightByVolume, weightByVolume } from '../grain/weight-by-volume.ts';
import type { MomentMean } from '../types.ts';
import { meanMoisture } from './cable-points.ts';
import type { CableSpread } from './cable-spread.ts';
import { type ErrorPart, firmPart, moistureInterval } from './error-part.ts';
import { DAY_MS, type MomentName } from './moment-window.ts';
import type { ObservedMoisture } from './observed-moisture.ts';
import { driftPart, fixedParts, noisePart, unsettledShare } from './reading-parts.ts';
import { samplingParts } from './sampling-parts.ts';
import { ASSUMED_METER, ticketMean } from './tickets.ts';

export const METER = 'moisture meter of the tickets';
/** Filled within this time, the grain is at the start what the tickets say. */
const QUICK_FILL_DAYS = 3;
/** A moisture that is only stated, points that 95 % keep: sampled by somebody, by a way that nobody wrote down. */
const ASSUMED_STATED = 0.8;

/** One moment's moisture with the errors that it has for itself, in points. */
export interface MoistureMoment {
  mean: MomentMean;
  parts: readonly ErrorPart[];
  why: string | null;
}

/**
 * The mean moisture at the start or end: by sensors, else by scale tickets, else as season.yaml states it.
 *
 * @param pooled  spread between cables in the season's other bins
 */
export function moistureMoment(
  observed: ObservedMoisture,
  moment: MomentName,
  pooled: CableSpread | null,
): MoistureMoment {
  const { input, moments } = observed;
  const bySensors = moments[moment] === null ? null : sensorMoment(observed, moment, pooled);
  if (bySensors !== null) return bySensors;
  const covered = moment === 'start' ? ticketStart(observed) : null;
  if (covered !== null) return covered;
  // Loads of another season tell nothing of this one.
  const filling = fillLoads(input.tickets, observed.fill, volumeOf(observed));
  const loads = moment === 'start' ? filling.in : loadsOut(outOfFull(input.tickets, observed.fill), filling).out;
  const tickets = ticketMean(loads, moment === 'start' ? 'in' : 'out');
  if (tickets !== null) {
    const parts = [
      firmPart(METER, ASSUMED_METER / Z95),
      firmPart('spread between loads', (100 * tickets.loadSdWb) / Math.sqrt(tickets.loads)),
    ];
    return toldMoment(tickets.moistureWb, 'tickets', tickets.loads, parts);
  }
  const stated = moment === 'start' ? input.bin.grain.moistureInWb : input.bin.grain.moistureOutWb;
  if (stated !== null) return toldMoment(stated, 'stated', 0, [firmPart('moisture as stated', ASSUMED_STATED / Z95)]);
  const why = (moment === 'start' ? moments.startWhy : moments.endWhy) ?? 'The moisture is not known.';
  const mean: MomentMean = {
    value: null,
    window: null,
    stillAir: false,
    readings: 0,
    sensors: 0,
    fanOn: null,
    interval: null,
    from: null,
  };
  return { mean, parts: [], why };
}

/**
 * The moisture as filled by tickets that cover the filling, each load with its own moisture; null where they don't, or
 * where the filling took so long that the fans may have changed the first loads before the last came.
 */
export function ticketStart(observed: ObservedMoisture): MoistureMoment | null {
  const { fill } = observed;
  const { tickets } = observed.input;
  const volume = volumeOf(observed);
  const { weight } = weightByTickets(tickets, fill, volume);
  if (weight === null || weight.moistureWb === null) return null;
  const times = fillLoads(tickets, fill, volume).in.map((load) => load.timeMs);
  if (Math.max(...times) - Math.min(...times) > QUICK_FILL_DAYS * DAY_MS) return null;
  return toldMoment(weight.moistureWb, 'tickets', weight.loads, [
    firmPart(METER, ASSUMED_METER / Z95),
    firmPart('sampling of the loads', 100 * weight.moistureSamplingSdWb),
  ]);
}

function volumeOf({ input, fill }: ObservedMoisture): WeightByVolume | null {
  return weightByVolume(input.bin, fill.depthM);
}

/** A moment that no sensor tells. */
export function toldMoment(
  value: number,
  from: 'tickets' | 'stated',
  readings: number,
  parts: ErrorPart[],
): MoistureMoment {
  const mean = {
    value,
    window: null,
    stillAir: false,
    readings,
    sensors: 0,
    fanOn: null,
    interval: moistureInterval(value, parts),
    from,
  };
  return { mean, parts, why: null };
}

/** The moment as its sensors tell it; they must tell it (`observed.moments[moment]` is there). */
export function sensorMoment(
  observed: ObservedMoisture,
  moment: MomentName,
  pooled: CableSpread | null,
): MoistureMoment {
  const { rows } = observed.moments;
  const window = observed.moments[moment]!;
  const { bin, season } = observed.input;
  const moistures = rows.map((row) => row[moment].value);
  const shares = rows.map((row) => row.share);
  const value = meanMoisture(moistures, shares);
  const moving = rows.filter((row) => !Number.isNaN(row[moment].moving));
  const errors = season.sensors.moisture;
  const levels = rows.map((row) => ({ ...row, startWb: row[moment].value, endWb: 0 }));
  const change = Number.isNaN(observed.points) ? 1 : observed.points;
  const parts = [
    ...fixedParts(rows, errors),
    ...samplingParts(levels, observed.fill.depthM!, bin.diameterM, change, pooled, bin.air),
    noisePart(rows, [moment], errors),
    ...(moment === 'end' ? [driftPart(rows)] : []),
    ...(window.stillAir ? [] : [movingAirPart(observed, [moment])]),
  ];
  const mean: MomentMean = {
    value,
    window: window.span,
    stillAir: window.stillAir,
    readings: rows.reduce((sum, row) => sum + row[moment].readings, 0),
    sensors: rows.length,
    fanOn:
      moving.length === 0
        ? null
        : meanMoisture(
            moving.map((row) => row[moment].moving),
            moving.map((row) => row.share),
          ),
    interval: moistureInterval(value, parts),
    from: 'sensors',
  };
  return { mean, parts, why: null };
}

/** Readings in moving air lean towards the air that passes; each moment leans with its own weather. */
export function movingAirPart(observed: ObservedMoisture, moments: readonly MomentName[]): ErrorPart {
  const { rows } = observed.moments;
  const variance = moments
    .filter((moment) => !observed.moments[moment]!.stillAir)
    .reduce((sum, moment) => sum + unsettledShare(rows, moment) ** 2, 0);
  return firmPart('readings while the fan ran', observed.movingAir.sd * Math.sqrt(variance));
}
