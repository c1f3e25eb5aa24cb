import { CORE_RADIUS } from '../moisture/radial-error.ts';
import type { BinLog } from './bin-log.ts';

/**
 * Air of a core that no cable tells from the rest, over the mean at the cables: a fifth less where fines gather under the spreader, between
 * nothing and a half (common practice). The usual, not the mean over bins with fines and without that a bin's airflow is joined with: a
 * target missed costs more than air too much.
 */
const UNSEEN_CORE_AIR = 0.8;

/** Air that differs by no more, over the mean, is even: the fit tells a cable's no better. */
const EVEN = 0.05;

/** An upright part of the bin with its own air, as a bed has it. */
export interface AirColumn {
  areaShare: number;
  /** over the bin's mean; areas and airs of all columns come to 1 */
  airShare: number;
  /** places in the log's cables that hang there; none: no cable does */
  cables: readonly number[];
  /** its air is what is usual there: no cable tells it */
  usual: boolean;
}

/**
 * The core, and the rest parted in two where the air of the two differs most for their areas: dry grain beside it does not make a bin
 * dry whose core is wet. Air of the rest that hardly differs is one column.
 *
 * @param cableFlows  airflow of each cable over the mean, [cables]
 * @returns           rising air
 */
export function airColumns({ bin, cables }: BinLog, cableFlows: readonly number[]): AirColumn[] {
  const coreM = (CORE_RADIUS * bin.diameterM) / 2;
  const inCore = cables.map(({ cable }) => bin.cables.find((one) => one.id === cable)!.fromCentreM <= coreM);
  const all = cables.map(({ share }, k) => ({ area: share, air: cableFlows[k], cables: [k] }));
  const seen = all.filter((_, k) => inCore[k]);
  const ring = all.filter((_, k) => !inCore[k]);
  const parts =
    seen.length > 0 && ring.length > 0
      ? [joined(seen), ...inTwo(ring)]
      : withUsualCore(
          seen.flatMap((one) => one.cables),
          inTwo(all),
        );
  const mean = joined(parts).air;
  return parts
    .sort((x, y) => x.air - y.air)
    .map(({ area, air, cables: own, usual = false }) => ({
      areaShare: area,
      airShare: air / mean,
      cables: own,
      usual,
    }));
}

/** Where cables tell nothing of how core and rest part: what is usual. @param inCore  places of cables that hang there */
function withUsualCore(inCore: readonly number[], rest: readonly Part[]): Part[] {
  const area = CORE_RADIUS ** 2;
  return [
    { area, air: UNSEEN_CORE_AIR * joined(rest).air, cables: [...inCore], usual: true },
    ...rest.map((part) => ({ ...part, area: part.area * (1 - area) })),
  ];
}

function inTwo(parts: readonly Part[]): Part[] {
  const rising = [...parts].sort((a, b) => a.air - b.air);
  const pairs = rising.slice(1).map((_, k) => [joined(rising.slice(0, k + 1)), joined(rising.slice(k + 1))]);
  const apart = ([less, more]: Part[]) => less.area * more.area * (more.air - less.air) ** 2;
  const best = pairs.reduce<Part[]>((a, b) => (a.length > 0 && apart(a) >= apart(b) ? a : b), []);
  return best.length > 0 && best[1].air - best[0].air > EVEN ? best : [joined(rising)];
}

interface Part {
  area: number;
  air: number;
  cables: number[];
  usual?: boolean;
}

function joined(parts: readonly Part[]): Part {
  const area = parts.reduce((sum, one) => sum + one.area, 0);
  return {
    area,
    air: parts.reduce((sum, one) => sum + one.area * one.air, 0) / area,
    cables: parts.flatMap((one) => one.cables),
  };
}
