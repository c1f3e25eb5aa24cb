import { type Estimate, estimate, withheld, Z90, Z95 } from '../../base/estimate.ts';
import { dryFromWet } from '../../grain/moisture-basis.ts';
import { fillLoads } from '../grain/fill-loads.ts';
import type { FillTimes } from '../grain/fill-times.ts';
import { SCALE_REL_SD } from '../grain/weight-by-tickets.ts';
import type { WeightByVolume } from '../grain/weight-by-volume.ts';
import { ASSUMED_METER, LOAD_SAMPLE_SD, type Ticket, ticketMean } from '../moisture/tickets.ts';

/** Dry matter in and out may differ by this much before some load is missing: scales, meters, handling loss, respiration. */
const DRY_MATTER_FIT = 0.04;

/**
 * Water that left between the scale in and the scale out: dry matter over the scale times the change of its moisture, dry
 * basis, where the tickets tell the whole of both.
 *
 * @param volume  what depth and test weight make of the filling; null where no depth is stated
 */
export function waterByTickets(tickets: readonly Ticket[], fill: FillTimes, volume: WeightByVolume | null): Estimate {
  const loads = fillLoads(tickets, fill, volume);
  const lastIn = loads.in.at(-1)?.timeMs ?? Number.NEGATIVE_INFINITY;
  const out = tickets.filter((one) => one.direction === 'out' && one.timeMs > lastIn);
  if (loads.in.length === 0 && out.length === 0) return withheld('There are no scale tickets of this bin.');
  if (loads.in.length === 0) return withheld('There are no tickets of the loads in.');
  if (loads.out.length > 0)
    return withheld('Grain was taken out while the bin was filled, so the tickets do not tell what lay in it.');
  if (out.length === 0) return withheld('There are no tickets of the loads out.');
  const whole = (some: readonly Ticket[]) => some.every((one) => one.netKg > 0 && one.moistureWb > 0);
  if (!whole(loads.in) || !whole(out)) return withheld('Some loads have no weight or no moisture.');
  const dry = (some: readonly Ticket[]) => some.reduce((sum, one) => sum + one.netKg * (1 - one.moistureWb), 0);
  const [dryIn, dryOut] = [dry(loads.in), dry(out)];
  if (Math.abs(dryOut / dryIn - 1) > DRY_MATTER_FIT) {
    const percent = Math.round((100 * dryOut) / dryIn);
    return withheld(
      `The loads out hold ${percent} % of the dry matter that came in, so they are not the whole bin${percent > 100 ? ' alone' : ''}.${countedOnce(loads.doubles.length)}`,
    );
  }
  const [before, after] = [ticketMean(loads.in, 'in')!, ticketMean(out, 'out')!];
  const dryMatter = (dryIn + dryOut) / 2;
  const value = dryMatter * (dryFromWet(before.moistureWb) - dryFromWet(after.moistureWb));
  const perPoint = 0.01 / (1 - (before.moistureWb + after.moistureWb) / 2) ** 2;
  // Months lie between the two: a meter's error, of another moisture and temperature, is taken as its own each time.
  const meter = ASSUMED_METER / Z95;
  const pointsSd = Math.hypot(
    meter,
    meter,
    LOAD_SAMPLE_SD / Math.sqrt(before.loads),
    LOAD_SAMPLE_SD / Math.sqrt(after.loads),
  );
  const half = Z90 * Math.hypot(dryMatter * perPoint * pointsSd, value * SCALE_REL_SD);
  return estimate(value, value - half, value + half);
}

function countedOnce(doubles: number): string {
  if (doubles === 0) return '';
  return ` ${doubles} scale ticket${doubles > 1 ? 's' : ''} in with the moment, weight and moisture of another counted once.`;
}
