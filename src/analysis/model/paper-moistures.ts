import { Z90, Z95 } from '../../base/estimate.ts';
import type { MomentAgreement } from '../moisture/ticket-agreement-types.ts';
import { LOAD_SAMPLE_SD } from '../moisture/tickets.ts';
import type { BinLog } from './bin-log.ts';

/** What a fit is held against beside sensors: tickets in, tickets out, hand samples. */
export const PAPERS = 3;

/** A moisture that is no sensor's, wet basis: fraction and its standard error. */
export interface PaperMoisture {
  wb: number;
  sd: number;
}

/** Hand samples of one moment and place. */
export interface HandSample {
  /** which of the hours read is nearest */
  read: number;
  /** indices of the cables beside it */
  cables: readonly number[];
  heightM: number;
  wb: number;
}

/** What scale tickets and hand samples say of the grain, apart from the cables. */
export interface PaperMoistures {
  start: PaperMoisture | null;
  end: PaperMoisture | null;
  /** their mean has the standard error `samplesSd`: places, sampling, and the meter that they share */
  samples: readonly HandSample[];
  samplesSd: number;
}

/** Fans that changed the grain by more than this, points, between loads and readings: the tickets tell of other grain. */
const MOST_BETWEEN = 0.15;
/** Moisture at a sample's place against that of the cables beside it, points; working assumption. */
const PLACE_POINTS = 0.4;
const NEAR_MS = 6 * 3_600_000;

/** @param atMs  of the hours read, [reads] */
export function paperMoistures({ review, cables, startMs, endMs }: BinLog, atMs: readonly number[]): PaperMoistures {
  const { tickets } = review.moisture;
  const counted = (review.probes?.pairs ?? []).filter((one) => one.counted && !Number.isNaN(one.reading.heightM));
  const samples = counted.flatMap(({ reading, cables: beside }): HandSample[] => {
    const { timeMs, heightM, moistureWb } = reading;
    if (timeMs < startMs || timeMs > endMs) return [];
    const read = nearest(atMs, timeMs);
    const own = beside.map((id) => cables.findIndex((one) => one.cable === id)).filter((index) => index >= 0);
    if (own.length === 0 || Math.abs(atMs[read] - timeMs) > NEAR_MS) return [];
    return [{ read, cables: own, heightM, wb: moistureWb }];
  });
  const meter = (review.probes?.meterLimit ?? 0) / Z95;
  const each = Math.hypot(LOAD_SAMPLE_SD, PLACE_POINTS);
  return {
    start: ofLoads(tickets?.start ?? null),
    end: ofLoads(tickets?.end ?? null),
    samples,
    samplesSd: Math.hypot(meter, each / Math.sqrt(Math.max(1, samples.length))) / 100,
  };
}

function ofLoads(held: MomentAgreement | null): PaperMoisture | null {
  if (held === null || held.agree === null || held.tickets.value === null || held.tickets.interval === null)
    return null;
  if (Math.abs(held.expected.value) > MOST_BETWEEN) return null;
  const [low, high] = held.tickets.interval;
  return { wb: held.tickets.value, sd: Math.hypot((high - low) / 2 / Z90, held.expected.value / 100) };
}

function nearest(atMs: readonly number[], ms: number): number {
  return atMs.reduce((best, at, i) => (Math.abs(at - ms) < Math.abs(atMs[best] - ms) ? i : best), 0);
}
