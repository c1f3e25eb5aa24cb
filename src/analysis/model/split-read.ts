import type { FitSamples } from './fit-samples.ts';

/** Of the fan hours this share trains, as long as the rest has enough. */
const TRAIN_SHARE = 0.6;
const ENOUGH_H = 50;

/** How many of the hours read train: 60 % of the fan hours, both parts with 50 fan hours where there are so many, else half. */
export function splitRead({ fanHours }: FitSamples): number {
  const all = fanHours[fanHours.length - 1];
  const due = all < 2 * ENOUGH_H ? all / 2 : Math.min(all - ENOUGH_H, Math.max(ENOUGH_H, TRAIN_SHARE * all));
  const split = fanHours.findIndex((hours) => hours >= due);
  return Math.max(1, split + 1);
}
