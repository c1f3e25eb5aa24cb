import { z } from 'zod';
import { withheld } from '../../base/estimate.ts';
import { interval, number, why } from '../summary-cells.ts';
import { both, pair, plain, reason } from '../summary-numbers.ts';
import type { BinReview } from '../types.ts';
import type { MomentAgreement, TicketsHeld } from './ticket-agreement-types.ts';

const MOMENT_SHAPE = z
  .strictObject({
    sensorsPct: number,
    sensorsPctInterval: interval,
    ticketsPct: number,
    ticketsPctInterval: interval,
    loads: z.int().describe('counted'),
    covered: number.describe('measured: weight of these loads over that of the grain as filled, fraction'),
    differencePoints: number.describe('sensors less tickets'),
    differencePointsInterval: interval,
    expectedPoints: number.describe('what the fan hours between loads and readings would make, at the season’s rate'),
    expectedPointsInterval: interval,
    agree: z.boolean().nullable(),
    why,
  })
  .nullable();

/** `sensorsAndTickets` of a bin in `summary.json`. */
export const TICKETS_SHAPE = z.strictObject({
  start: MOMENT_SHAPE,
  end: MOMENT_SHAPE,
  sharedBiasPoints: number.describe('by how much all sensors would read too wet for both to agree'),
  sharedBiasPointsInterval: interval,
  why,
});

function momentSummary(of: MomentAgreement | null | undefined): z.infer<typeof MOMENT_SHAPE> {
  if (of === null || of === undefined) return null;
  return {
    sensorsPct: plain(of.sensors.value, 100),
    sensorsPctInterval: pair(of.sensors.interval, 100),
    ticketsPct: plain(of.tickets.value, 100),
    ticketsPctInterval: pair(of.tickets.interval, 100),
    loads: of.loads,
    covered: plain(of.covered),
    ...both('differencePoints', of.difference),
    ...both('expectedPoints', of.expected),
    agree: of.agree,
    why: of.why,
  };
}

/** Why one of the two moments is missing; null where both or none are there. */
function onlyOne(held: TicketsHeld | null | undefined): string | null {
  if (!held || (held.start === null) === (held.end === null)) return null;
  const [moment, way] = held.end === null ? ['end', 'out'] : ['start', 'in'];
  return `There is nothing to hold against each other at the ${moment}: no loads ${way} with a moisture, or no believable sensors then.`;
}

export function ticketsSummary({ moisture }: BinReview): z.infer<typeof TICKETS_SHAPE> {
  const { tickets } = moisture;
  const bias = tickets?.sharedBias ?? withheld(moisture.why ?? 'Nothing was held against tickets.');
  return {
    start: momentSummary(tickets?.start),
    end: momentSummary(tickets?.end),
    ...both('sharedBiasPoints', bias),
    why: reason(tickets?.why ?? onlyOne(tickets), bias),
  };
}
