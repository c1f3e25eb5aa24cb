import { Z95 } from '../../base/estimate.ts';
import { median } from '../../base/stats/quantile.ts';
import type { BinLog } from './bin-log.ts';
import type { FitSamples } from './fit-samples.ts';
import type { Shown } from './play-cable.ts';

/** Fixed error of a moisture sensor where none is stated, points that 95 % keep. */
const ACCURACY_POINTS = 0.5;
/** What the bed may lie off at one sensor all season long, points. */
const BED_POINTS = 0.3;

/**
 * What each moisture sensor reads too much beside the shared bias: its mean distance from the bed, drawn towards 0 by how well
 * such sensors are stated to read. One that lies farther from the others than that is no such sensor any more: what parts it from their
 * middle is drawn by its own size. The middle itself is not, or bed and sensors could drift apart together.
 *
 * @param reads   hours read that count, from the first
 * @returns       fractions, wet basis, [cables][sensors]
 */
export function sensorOffsets(
  { season }: BinLog,
  { cables }: FitSamples,
  shown: readonly Shown[],
  biasWb: number,
  reads: number,
): Float64Array[] {
  const accuracy = (100 * (season.sensors.moisture.accuracyWb ?? ACCURACY_POINTS / 100)) / Z95;
  const means = cables.map(({ sensors, moistureWb }, cable) =>
    Float64Array.from({ length: sensors }, (_, sensor) => {
      let sum = 0;
      let count = 0;
      for (let i = sensor; i < reads * sensors; i += sensors) {
        const off = moistureWb[i] - shown[cable].moistureWb[i] - biasWb;
        if (Number.isNaN(off)) continue;
        sum += off;
        count += 1;
      }
      return sum / count;
    }),
  );
  const told = means.flatMap((own) => [...own].filter((mean) => !Number.isNaN(mean)));
  const middle = told.length === 0 ? 0 : median(told);
  const drawn = (value: number, spread: number) => (value * spread ** 2) / (spread ** 2 + BED_POINTS ** 2);
  return means.map((own) =>
    own.map((mean) => {
      if (Number.isNaN(mean)) return 0;
      const apart = mean - middle;
      return drawn(middle, accuracy) + drawn(apart, Math.max(accuracy, 100 * Math.abs(apart)));
    }),
  );
}
