import { agreeing } from '../../base/agreeing.ts';
import { LOAD_SAMPLE_SD, type Ticket } from '../moisture/tickets.ts';
import { type FillLoads, fillLoads, netSum } from './fill-loads.ts';
import type { FillTimes } from './fill-times.ts';
import { fitsVolume } from './fits-volume.ts';
import { otherUnitSaid } from './other-unit.ts';
import type { WeightByVolume } from './weight-by-volume.ts';

/** Platform scales in trade are kept within about 0.2 % (common practice); sd of the sum of a bin's loads, relative. */
export const SCALE_REL_SD = 0.002;
/** More taken out during the filling than this share of what came in: nobody can tell what lay there. */
const MOST_TAKEN_OUT = 0.15;

/** The weight as filled over the scale. */
export interface WeightByTickets {
  weightKg: number;
  relSd: number;
  loads: number;
  /** mean moisture of the loads by weight, wet basis, fraction; null where not every load has one */
  moistureWb: number | null;
  /** of sampling the loads, fraction; the meter's own error, which all loads share, is not in it */
  moistureSamplingSdWb: number;
  notes: readonly string[];
}

/**
 * The weight as filled from the scale tickets, where they cover the whole filling: every load in with a weight, their
 * sum (less what was taken out meanwhile) in keeping with the volume.
 *
 * @param volume  what depth and test weight make of it; null where no depth is stated, so that nothing can be held against the tickets
 * @returns       the weight, or why the tickets are not used; `why` is null where there are none; `contradicts`: all of them together
 *                weigh other than the volume does
 */
export function weightByTickets(
  tickets: readonly Ticket[],
  fill: Pick<FillTimes, 'begunMs' | 'fullMs'>,
  volume: WeightByVolume | null,
):
  | { weight: WeightByTickets; why: null; contradicts?: false }
  | { weight: null; why: string | null; contradicts?: boolean } {
  const not = (why: string) => ({ weight: null, why: `The scale tickets are not used for the weight: ${why}.` });
  const loads = fillLoads(tickets, fill, volume);
  if (loads.in.length === 0) {
    if (loads.elsewhere === 0) return { weight: null, why: null };
    const all = agreeing(loads.elsewhere, 'the one load in is', `all ${loads.elsewhere} loads in are`);
    return not(`${all} dated out of the filling`);
  }
  if (volume === null) return not('no depth of the grain is stated, so nobody can tell whether they cover the filling');
  const unweighed = [...loads.in, ...loads.out].filter((one) => !(one.netKg > 0)).length;
  if (unweighed > 0)
    return not(
      `${unweighed} of ${loads.in.length + loads.out.length} loads ${agreeing(unweighed, 'has', 'have')} no weight that can be used`,
    );
  const weighed = netSum(loads.in);
  const taken = netSum(loads.out);
  if (taken > MOST_TAKEN_OUT * weighed)
    return not('much grain went in and out again while the bin was being filled, so what lay there is not known');
  const weightKg = weighed - taken;
  if (!fitsVolume(weightKg, volume)) return { ...not(misfit(weightKg, volume, loads.in)), contradicts: true };
  return {
    weight: {
      weightKg,
      relSd: SCALE_REL_SD,
      loads: loads.in.length,
      ...moistureOf(loads.in),
      notes: notesOf(loads, taken),
    },
    why: null,
  };
}

function misfit(weightKg: number, volume: WeightByVolume, loads: readonly Ticket[]): string {
  const unit = otherUnitSaid(theirLoads(loads.length), weightKg, volume);
  if (unit !== null) return unit;
  const percent = Math.round(Math.abs(100 * (weightKg / volume.weightKg - 1)));
  if (weightKg < volume.weightKg) {
    return `${theirLoads(loads.length)} ${percent} % less than depth and test weight tell, so loads are missing among them, or older grain lay in the bin, or the depth is off`;
  }
  const nets = loads.map((one) => one.netKg).sort((a, b) => a - b);
  const heavy =
    nets[nets.length - 1] > 3 * nets[Math.floor(nets.length / 2)]
      ? ' (one of them weighs over three times the usual)'
      : '';
  return `${theirLoads(loads.length)} ${percent} % more than depth and test weight tell, so some were weighed twice or went elsewhere, or the depth is off${heavy}`;
}

function theirLoads(count: number): string {
  return agreeing(count, 'their one load weighs', `their ${count} loads weigh`);
}

function moistureOf(loads: readonly Ticket[]): { moistureWb: number | null; moistureSamplingSdWb: number } {
  const each = LOAD_SAMPLE_SD / 100 / Math.sqrt(loads.length);
  if (!loads.every((one) => one.moistureWb > 0 && one.moistureWb < 1))
    return { moistureWb: null, moistureSamplingSdWb: each };
  const water = loads.reduce((total, one) => total + one.netKg * one.moistureWb, 0);
  return { moistureWb: water / netSum(loads), moistureSamplingSdWb: each };
}

function notesOf(loads: FillLoads, takenKg: number): string[] {
  const notes: string[] = [];
  const { doubles, elsewhere } = loads;
  if (doubles.length > 0)
    notes.push(
      `${doubles.length} scale ticket${doubles.length > 1 ? 's' : ''} with the moment, weight and moisture of another counted once.`,
    );
  if (loads.alikeKept) notes.push('Some scale tickets of one day are alike; both are counted, as the volume asks.');
  if (elsewhere > 0)
    notes.push(`${elsewhere} scale ticket${elsewhere > 1 ? 's' : ''} in, dated out of the filling, left out.`);
  if (takenKg > 0)
    notes.push(`${loads.out.length} load${loads.out.length > 1 ? 's' : ''} out during the filling taken off.`);
  return notes;
}
