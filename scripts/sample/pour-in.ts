import type { Load } from './bin-run.ts';
import { fromLocal, MINUTE } from './calendar.ts';
import type { Column } from './column-bed.ts';
import type { BinPlan } from './farm-types.ts';
import { toDryBasis } from './kernels.ts';
import type { Random } from './random.ts';

/** Loads of a filling: their number from the weight, moisture and warmth wandering from load to load. */
export function pourIn(
  random: Random,
  columns: readonly Column[],
  plan: BinPlan,
  fill: BinPlan['fills'][number],
  fromLayer: number,
  toLayer: number,
  layerM: number,
): Load[] {
  const area = columns.reduce((sum, one) => sum + one.areaM2, 0);
  const bulk = plan.testWeightLb * 12.8718 * plan.packed;
  const weight = area * (toLayer - fromLayer) * layerM * bulk;
  const count = Math.max(1, Math.round(weight / 24_000));
  let wander = random.normal() * 0.4;
  const loads = Array.from({ length: count }, (_, k): Load & { tempC: number } => {
    wander = 0.7 * wander + 0.3 * random.normal();
    return {
      atMs: fromLocal(fill.at) - Math.round(((count - k) * 45 * MINUTE * Math.min(1, 16 / count)) / MINUTE) * MINUTE,
      kg: weight / count,
      moistureWb: fill.moisture + wander,
      tempC: fill.tempC + 1.2 * random.normal(),
    };
  });
  for (let i = fromLayer; i < toLayer; i++) {
    const load = loads[Math.min(count - 1, Math.floor(((i - fromLayer) / (toLayer - fromLayer)) * count))];
    for (const column of columns) {
      column.moistureDb[i] = toDryBasis(load.moistureWb);
      column.tempC[i] = load.tempC;
      column.dryKgM2[i] = layerM * bulk * (1 - load.moistureWb / 100);
      column.passedRatio[i] = Number.NaN;
    }
  }
  return loads.map(({ atMs, kg, moistureWb }) => ({ atMs, kg, moistureWb }));
}
