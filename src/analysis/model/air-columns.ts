import { CORE_RADIUS } from '../moisture/radial-error.ts';
import type { BinLog } from './bin-log.ts';

/**
 * Air of a core in which no cable hangs, over the mean at the cables: a fifth less where fines gather under the spreader, between
 * nothing and a half (common practice).
 */
const UNSEEN_CORE_AIR = 0.8;

/** An upright part of the bin with its own air, as a bed has it. */
export interface AirColumn {
  areaShare: number;
  /** over the bin's mean; areas and airs of all columns come to 1 */
  airShare: number;
  /** places in the log's cables; none: no cable hangs there */
  cables: readonly number[];
}

/**
 * The part of the bin that lies short of air, and the rest: the driest rest does not make a bin dry whose core is wet. Parted where the
 * air of the two differs most for their areas; a bin of even air has two columns that are much alike.
 *
 * @param cableFlows  airflow of each cable over the mean, [cables]
 */
export function airColumns({ bin, cables }: BinLog, cableFlows: readonly number[]): AirColumn[] {
  const parts = cables.map(({ share }, k) => ({ area: share, air: cableFlows[k], cables: [k] }));
  const coreM = (CORE_RADIUS * bin.diameterM) / 2;
  const seen = cables.some(({ cable }) => bin.cables.find((one) => one.id === cable)!.fromCentreM <= coreM);
  if (!seen) {
    const area = CORE_RADIUS ** 2;
    for (const part of parts) part.area *= 1 - area;
    parts.push({ area, air: UNSEEN_CORE_AIR, cables: [] });
  }
  parts.sort((a, b) => a.air - b.air);
  const groups = parts.slice(1).map((_, k) => [joined(parts.slice(0, k + 1)), joined(parts.slice(k + 1))]);
  const apart = ([short, rest]: Part[]) => short.area * rest.area * (rest.air - short.air) ** 2;
  const best = groups.reduce<Part[]>((a, b) => (a.length > 0 && apart(a) >= apart(b) ? a : b), []);
  const columns = best.length > 0 ? best : [joined(parts)];
  const mean = joined(columns).air;
  return columns.map(({ area, air, cables: own }) => ({ areaShare: area, airShare: air / mean, cables: own }));
}

interface Part {
  area: number;
  air: number;
  cables: number[];
}

function joined(parts: readonly Part[]): Part {
  const area = parts.reduce((sum, one) => sum + one.area, 0);
  return {
    area,
    air: parts.reduce((sum, one) => sum + one.area * one.air, 0) / area,
    cables: parts.flatMap((one) => one.cables),
  };
}
