import { Z95 } from '../../base/estimate.ts';
import { weightByTickets } from '../grain/weight-by-tickets.ts';
import { weightByVolume } from '../grain/weight-by-volume.ts';
import { firmPart } from './error-part.ts';
import { METER, type MoistureMoment, toldMoment } from './moisture-moment.ts';
import type { ObservedMoisture } from './observed-moisture.ts';
import { coveredShare, LEAST_COVERED, loadsOf } from './ticket-agreement.ts';
import { ASSUMED_METER, LOAD_SAMPLE_SD, ticketMean } from './tickets.ts';

/**
 * The moisture at the end by the loads out; null where they are not the bin's mean, or where it was emptied in steps, so that
 * its last loads dried for longer than its first.
 */
export function ticketEnd(observed: ObservedMoisture): MoistureMoment | null {
  const { input, fill } = observed;
  if (fill.wholeUntilMs !== input.bin.grain.unloadedMs) return null;
  const loads = loadsOf(observed, 'end');
  const mean = ticketMean(loads, 'out');
  if (mean === null) return null;
  const { weight } = weightByTickets(input.tickets, fill, weightByVolume(input.bin, fill.depthM));
  if ((coveredShare(loads, weight?.weightKg ?? null) ?? 0) < LEAST_COVERED) return null;
  const scatter = Math.max(LOAD_SAMPLE_SD, 100 * mean.loadSdWb) / Math.sqrt(mean.loads);
  return toldMoment(mean.moistureWb, 'tickets', mean.loads, [
    firmPart(METER, ASSUMED_METER / Z95),
    firmPart('sampling of the loads', scatter),
  ]);
}
