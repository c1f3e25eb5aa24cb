import { Z95 } from '../../base/estimate.ts';
import type { BinLog } from './bin-log.ts';
import type { FitSamples } from './fit-samples.ts';
import type { Shown } from './play-cable.ts';

/** Fixed error of a moisture sensor where none is stated, points that 95 % keep. */
const ACCURACY_POINTS = 0.5;
/** What the bed may lie off at one sensor all season long, points. */
const BED_POINTS = 0.3;

/**
 * What each moisture sensor reads too much beside the shared bias: its mean distance from the bed, drawn towards 0 by how well
 * such sensors are stated to read. One that lies farther off than that is no such sensor any more: it is drawn by its own distance.
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
  return cables.map(({ sensors, moistureWb }, cable) =>
    Float64Array.from({ length: sensors }, (_, sensor) => {
      let sum = 0;
      let count = 0;
      for (let i = sensor; i < reads * sensors; i += sensors) {
        const off = moistureWb[i] - shown[cable].moistureWb[i] - biasWb;
        if (Number.isNaN(off)) continue;
        sum += off;
        count += 1;
      }
      if (count === 0) return 0;
      const mean = sum / count;
      const open = Math.max(accuracy, 100 * Math.abs(mean)) ** 2;
      return (mean * open) / (open + BED_POINTS ** 2);
    }),
  );
}
