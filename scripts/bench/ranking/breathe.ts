import { storageLifeOf } from '../../../src/simulation/bed/storage-life.ts';
import type { Column } from '../../sample/column-bed.ts';
import type { Kernel } from '../../sample/kernels.ts';

/** kJ and kg of water of each kg of dry matter that is breathed away: burning of glucose. textbook */
const HEAT_KJ_KG = 15_600;
const WATER_KG_KG = 0.6;

/**
 * Let the finer bed's grain breathe for an hour: the crop's published storage rule, so many times as lively as `breath` says.
 *
 * @param used  share of the storage time used so far, [layers] of each column
 */
export function breathe(
  columns: readonly Column[],
  kernel: Kernel,
  breath: number,
  used: readonly Float64Array[],
): void {
  const life = storageLifeOf(kernel.crop);
  if (life === null || life.lossOfShare === null) return;
  for (const [c, { tempC, moistureDb }] of columns.entries()) {
    for (let i = 0; i < tempC.length; i++) {
      const m = moistureDb[i];
      const before = used[c][i];
      used[c][i] += life.sharePerHour(tempC[i], m / 100);
      const lost = breath * (life.lossOfShare(used[c][i]) - life.lossOfShare(before));
      tempC[i] += (lost * HEAT_KJ_KG) / (kernel.heat((100 * m) / (100 + m)) * (1 + m / 100));
      moistureDb[i] = m + 100 * WATER_KG_KG * lost;
    }
  }
}
