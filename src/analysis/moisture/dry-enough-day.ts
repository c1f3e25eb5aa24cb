import type { Estimate } from '../../base/estimate.ts';
import { LAYER_SLACK_WB, MEAN_SLACK_WB } from '../../simulation/run/reached.ts';
import type { BinMoisture } from '../types.ts';

/** So many days that are told one after another: one alone may be noise. Our choice. */
const DAYS_RUNNING = 3;

/** When a drying bin could first have been stopped, by its sensors. */
export interface DryEnough {
  /** the bin's mean then, wet basis, fraction, as sure as that at the end; null: its wettest layer never came down */
  mean: Estimate | null;
  /** true: its mean was dry before, and its wettest layer not */
  layerLast: boolean;
  /** its wettest layer at the end, wet basis, fraction */
  wettestWb: number;
}

/**
 * The first day on which a bin had reached its target by the contract's definition: the mean no more than 0.2 point above it, and the
 * wettest layer no more than 1.5. The layer is the wettest tenth of the grain, by sensor. The days are taken as they fall and end at the bin's
 * moisture at the end, which may come from tickets.
 *
 * @param meanWb   what the mean is dried to, wet basis, fraction
 * @param layerWb  the target that the layer is held against
 * @returns        null where the days do not tell
 */
export function dryEnoughDay(
  { daily, end }: Pick<BinMoisture, 'daily' | 'end'>,
  meanWb: number,
  layerWb: number,
): DryEnough | null {
  const told = daily.flatMap(({ mean, high }) => (mean === null || high === null ? [] : [{ mean, high }]));
  const last = told.at(-1);
  if (last === undefined || end.value === null) return null;
  const shift = end.value - last.mean;
  const isDry = ({ mean }: { mean: number }) => mean + shift <= meanWb + MEAN_SLACK_WB;
  const isEven = ({ high }: { high: number }) => high + shift <= layerWb + LAYER_SLACK_WB;
  const first = (holds: (day: { mean: number; high: number }) => boolean) =>
    told.findIndex((_, i) => i + DAYS_RUNNING <= told.length && told.slice(i, i + DAYS_RUNNING).every(holds));
  const dry = first(isDry);
  if (dry < 0) return null;
  const both = first((day) => isDry(day) && isEven(day));
  const wettestWb = last.high + shift;
  if (both < 0) return { mean: null, layerLast: true, wettestWb };
  const fallen = told[both].mean - last.mean;
  const interval = end.interval?.map((limit) => limit + fallen) as [number, number] | undefined;
  return {
    mean: { value: end.value + fallen, interval: interval ?? null, why: null },
    layerLast: both > dry,
    wettestWb,
  };
}
