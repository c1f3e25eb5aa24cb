import { type Estimate, estimate, withheld } from '../../base/estimate.ts';
import { dryFromWet } from '../../grain/moisture-basis.ts';
import type { BinGrainAmount, BinMoisture } from '../types.ts';

/** Water that left the grain by the change of its mean moisture: dry matter times that change, dry basis, kg. Withheld where no sensor tells either moment. */
export function waterBySensors(grain: BinGrainAmount, moisture: BinMoisture): Estimate {
  const { start, end, pointsRemoved } = moisture;
  if (start.value === null || end.value === null || pointsRemoved.value === null || pointsRemoved.interval === null)
    return withheld(pointsRemoved.why ?? 'The moisture at the start or the end is not known.');
  if (grain.dryMatterKg === null) return withheld(grain.why ?? 'The dry matter is not known.');
  const sources = [start.from, end.from];
  if (!sources.includes('sensors')) {
    const from = (source: 'tickets' | 'stated') => sources.every((one) => one === source);
    const said = from('tickets')
      ? 'Both moistures come from scale tickets'
      : from('stated')
        ? 'Both moistures are only stated in season.yaml'
        : 'One moisture comes from scale tickets, the other is only stated in season.yaml';
    return withheld(`${said}, so the sensors tell no water of their own.`);
  }
  const value = grain.dryMatterKg * (dryFromWet(start.value) - dryFromWet(end.value));
  // A point of wet basis is this many kg of water for each kg of dry matter.
  const perPoint = 0.01 / (1 - (start.value + end.value) / 2) ** 2;
  const [low, high] = pointsRemoved.interval;
  const [least, most] = grain.dryMatterKgInterval ?? [grain.dryMatterKg, grain.dryMatterKg];
  const byDryMatter = (end: number) => value * (end / grain.dryMatterKg! - 1);
  const ends = [byDryMatter(least), byDryMatter(most)];
  return estimate(
    value,
    value - Math.hypot(grain.dryMatterKg * perPoint * (pointsRemoved.value - low), Math.min(...ends)),
    value + Math.hypot(grain.dryMatterKg * perPoint * (high - pointsRemoved.value), Math.max(...ends)),
  );
}
