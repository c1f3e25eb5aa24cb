import { BUSHEL_M3 } from '../../base/bushel.ts';
import { Z90, Z95 } from '../../base/estimate.ts';
import { cropOf } from '../../grain/crops.ts';
import type { Bin } from '../../season/season.ts';
import { ASSUMED_METER, type Ticket } from '../moisture/tickets.ts';
import type { BinGrainAmount, MomentMean } from '../types.ts';
import { fillTimes } from './fill-times.ts';
import { weightByTickets } from './weight-by-tickets.ts';
import { weightByVolume } from './weight-by-volume.ts';

type Pair = [low: number, high: number];

/**
 * How much grain the bin held when it was full: the weight over the scale where the tickets cover the filling, else that of
 * the levelled cylinder at its test weight; bushels over the legal weight, dry matter the weight less its water, each
 * with its 90 % interval.
 *
 * @param start    moisture at the start; null or without a value where not known. Tickets bring their own, as filled
 * @param tickets  the bin's scale tickets
 * @source  bushel of 1.2445 ft3 and legal bushel weights: US weights and measures, as the crop table cites them
 */
export function grainAmount(
  bin: Bin,
  start: Pick<MomentMean, 'value' | 'interval'> | null,
  tickets: readonly Ticket[] = [],
): BinGrainAmount {
  const fill = fillTimes(bin);
  const { depthM } = fill;
  const volume = weightByVolume(bin, depthM);
  const { weight: scale, why: whyNotTickets, contradicts = false } = weightByTickets(tickets, fill, volume);
  const notes = [...(scale?.notes ?? []), ...(whyNotTickets === null ? [] : [whyNotTickets])];
  if (volume === null || depthM === null) {
    const why = `No depth of the grain in ${bin.name} is stated, so its amount cannot be told.`;
    return { ...missingGrain(why), notes };
  }
  const weightKg = scale?.weightKg ?? volume.weightKg;
  // Relative half-widths, 90 %: packing only adds, and is known only by its bound.
  const less = Z90 * (scale?.relSd ?? volume.levelRelSd);
  const more = scale === null ? Math.hypot(less, volume.packingMost) : less;
  const moisture = startMoisture(scale, start);
  const { legalBushelKg } = cropOf(bin.grain.crop);
  const weightInterval: Pair = [weightKg * (1 - less), weightKg * (1 + more)];
  const dry = moisture === null ? null : weightKg * (1 - moisture.value);
  return {
    dryMatterKg: dry,
    weightKg,
    volumeM3: volume.volumeM3,
    bushels: weightKg / legalBushelKg,
    volumeBushels: volume.volumeM3 / BUSHEL_M3,
    depthM,
    from: scale === null ? 'volume' : 'tickets',
    weightKgInterval: weightInterval,
    bushelsInterval: [weightInterval[0] / legalBushelKg, weightInterval[1] / legalBushelKg],
    dryMatterKgInterval:
      dry === null || moisture === null
        ? null
        : [
            dry * (1 - Math.hypot(less, moisture.above / (1 - moisture.value))),
            dry * (1 + Math.hypot(more, moisture.below / (1 - moisture.value))),
          ],
    notes,
    contradicted: contradicts,
    why: dry === null ? 'The moisture at filling is not known, so the dry matter cannot be told.' : null,
  };
}

/** A bin of which no amount is known, and why. */
export function missingGrain(why: string): BinGrainAmount {
  return {
    dryMatterKg: null,
    weightKg: null,
    volumeM3: null,
    bushels: null,
    volumeBushels: null,
    depthM: null,
    from: null,
    weightKgInterval: null,
    bushelsInterval: null,
    dryMatterKgInterval: null,
    why,
  };
}

/** Moisture as filled with the half-widths of its 90 % interval, fractions. */
function startMoisture(
  scale: { moistureWb: number | null; moistureSamplingSdWb: number } | null,
  start: Pick<MomentMean, 'value' | 'interval'> | null,
): { value: number; below: number; above: number } | null {
  if (scale !== null && scale.moistureWb !== null) {
    const half = Z90 * Math.hypot(ASSUMED_METER / 100 / Z95, scale.moistureSamplingSdWb);
    return { value: scale.moistureWb, below: half, above: half };
  }
  if (start === null || start.value === null) return null;
  const [low, high] = start.interval ?? [start.value, start.value];
  return { value: start.value, below: start.value - low, above: high - start.value };
}
