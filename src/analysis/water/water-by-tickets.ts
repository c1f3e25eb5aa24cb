import { type Estimate, estimate, withheld, Z90, Z95 } from '../../base/estimate.ts';
import { dryFromWet } from '../../grain/moisture-basis.ts';
import { dryMatterFits, dryMatterSum } from '../grain/dry-matter-fits.ts';
import { fillLoads, netSum } from '../grain/fill-loads.ts';
import type { FillTimes } from '../grain/fill-times.ts';
import { countedOnce } from '../grain/loads-once.ts';
import { loadsOut } from '../grain/loads-out.ts';
import { otherUnitSaid } from '../grain/other-unit.ts';
import { SCALE_REL_SD } from '../grain/weight-by-tickets.ts';
import type { WeightByVolume } from '../grain/weight-by-volume.ts';
import { ASSUMED_METER, LOAD_SAMPLE_SD, type Ticket, ticketMean } from '../moisture/tickets.ts';

/**
 * Water that left between the scale in and the scale out: dry matter over the scale times the change of its moisture, dry
 * basis, where the tickets tell the whole of both.
 *
 * @param volume  what depth and test weight make of the filling; null where no depth is stated
 */
export function waterByTickets(tickets: readonly Ticket[], fill: FillTimes, volume: WeightByVolume | null): Estimate {
  const { loads, out, doublesOut } = bothWays(tickets, fill, volume);
  if (loads.in.length === 0 && out.length === 0) return withheld('There are no scale tickets of this bin.');
  if (loads.in.length === 0) return withheld('There are no tickets of the loads in.');
  if (loads.out.length > 0)
    return withheld('Grain was taken out while the bin was filled, so the tickets do not tell what lay in it.');
  if (out.length === 0) return withheld('There are no tickets of the loads out.');
  const whole = (some: readonly Ticket[]) => some.every((one) => one.netKg > 0 && one.moistureWb > 0);
  if (!whole(loads.in) || !whole(out)) return withheld('Some loads have no weight or no moisture.');
  const unit = otherUnitSaid('The loads in weigh', netSum(loads.in), volume);
  if (unit !== null) return withheld(`${unit}.`);
  const [dryIn, dryOut] = [dryMatterSum(loads.in), dryMatterSum(out)];
  if (!dryMatterFits(dryOut, dryIn)) {
    const percent = Math.round((100 * dryOut) / dryIn);
    const parts = [
      `The loads out hold ${percent} % of the dry matter that came in, so they are not the whole bin${percent > 100 ? ' alone' : ''}.`,
      countedOnce(loads.doubles.length, 'in'),
      countedOnce(doublesOut.length, 'out'),
    ];
    return withheld(parts.filter((part) => part !== '').join(' '));
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

/** What a reader of the water by tickets must know of them, whole sentences. */
export function ticketNotes(tickets: readonly Ticket[], fill: FillTimes, volume: WeightByVolume | null): string[] {
  const { doublesOut } = bothWays(tickets, fill, volume);
  return doublesOut.length === 0 ? [] : [countedOnce(doublesOut.length, 'out')];
}

function bothWays(tickets: readonly Ticket[], fill: FillTimes, volume: WeightByVolume | null) {
  const loads = fillLoads(tickets, fill, volume);
  const lastIn = loads.in.at(-1)?.timeMs ?? Number.NEGATIVE_INFINITY;
  const { out, doubles } = loadsOut(
    tickets.filter((one) => one.direction === 'out' && one.timeMs > lastIn),
    loads,
  );
  return { loads, out, doublesOut: doubles };
}
