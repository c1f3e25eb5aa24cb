import type { Table } from 'apache-arrow';
import { impossibleNet } from '../../season/checks/check-tickets.ts';
import { integers, numbers, texts } from '../../tables/arrow.ts';
import { FLAGS } from '../../tables/flags.ts';

/** A moisture meter against the oven, points that 95 % of meters keep. Working assumption, from memory of meter trials. */
export const ASSUMED_METER = 0.6;
/** Sampling and reading one load, or one hand sample: sd, points. Working assumption, from memory of probe and meter trials. */
export const LOAD_SAMPLE_SD = 0.3;

/** One load over the scale. NaN is missing. */
export interface Ticket {
  timeMs: number;
  direction: 'in' | 'out';
  netKg: number;
  /** wet basis, fraction */
  moistureWb: number;
}

/**
 * The loads of one bin. A ticket that tells a load again is left out. One that cannot be still says that a load went, which
 * must not be lost from the sum unseen: it stays without its moisture, and without its weight where that cannot be.
 */
export function ticketsOf(tickets: Table, binId: string): Ticket[] {
  const time = numbers(tickets, 'time');
  const bin = texts(tickets, 'bin');
  const direction = texts(tickets, 'direction');
  const netKg = numbers(tickets, 'net_kg');
  const moistureWb = numbers(tickets, 'moisture_wb');
  const flags = integers(tickets, 'flags');
  return [...bin.keys()]
    .filter((row) => bin[row] === binId && (direction[row] === 'in' || direction[row] === 'out'))
    .filter((row) => (flags[row] & FLAGS.duplicate) === 0)
    .map((row) => ({
      timeMs: time[row],
      direction: direction[row] as 'in' | 'out',
      netKg: flags[row] !== 0 && impossibleNet(netKg[row]) ? Number.NaN : netKg[row],
      moistureWb: flags[row] !== 0 ? Number.NaN : moistureWb[row],
    }));
}

export interface TicketMean {
  moistureWb: number;
  loads: number;
  /** standard deviation between loads, fraction; 0 for one load */
  loadSdWb: number;
}

/**
 * Water over weight of the loads one way. Loads without a weight count as the mean load; those without a moisture are left out.
 *
 * @returns null where no load has a moisture
 */
export function ticketMean(tickets: readonly Ticket[], direction: 'in' | 'out'): TicketMean | null {
  const loads = tickets.filter(
    (one) => one.direction === direction && one.moistureWb > 0 && one.moistureWb < 1 && !(one.netKg <= 0),
  );
  if (loads.length === 0) return null;
  const weighed = loads.filter((one) => one.netKg > 0);
  const usual = weighed.length === 0 ? 1 : weighed.reduce((sum, one) => sum + one.netKg, 0) / weighed.length;
  const weights = loads.map((one) => (one.netKg > 0 ? one.netKg : usual));
  const total = weights.reduce((sum, weight) => sum + weight, 0);
  const mean = loads.reduce((sum, one, i) => sum + weights[i] * one.moistureWb, 0) / total;
  const square = loads.reduce((sum, one) => sum + (one.moistureWb - mean) ** 2, 0);
  return {
    moistureWb: mean,
    loads: loads.length,
    loadSdWb: loads.length < 2 ? 0 : Math.sqrt(square / (loads.length - 1)),
  };
}
