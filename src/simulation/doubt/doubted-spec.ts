import { dryFromWet, wetFromDry } from '../../grain/moisture-basis.ts';
import type { BedSpec } from '../bed/bed.ts';
import { tableTimes } from '../bed/cubic-table.ts';
import type { RunSpec } from '../run/run-spec.ts';

/** A way in which a bin may differ from its fitted model. */
export interface Doubt {
  /** multiplies the air that goes through the grain; the fan's power stays */
  airFactor: number;
  /** added to the grain's moisture, wet basis, fraction */
  moistureWb: number;
  /** multiplies the thin-layer rate */
  rateFactor: number;
  /** multiplies the air of the column that has least, where a bed has several; their mean stays */
  shortFactor: number;
}

/** Moistures of a bed's tables that grain is moved within, wet basis. */
const DRIEST_WB = 0.05;
const WETTEST_WB = 0.4;

/** A bin's season with a doubt let in. Dry matter, fan power and the air's warming stay. */
export function doubtedSpec(spec: RunSpec, { airFactor, moistureWb, rateFactor, shortFactor }: Doubt): RunSpec {
  const { medium } = spec.bed;
  const moved = (moistureDb: number) =>
    moistureWb === 0
      ? moistureDb
      : dryFromWet(Math.min(WETTEST_WB, Math.max(DRIEST_WB, wetFromDry(moistureDb) + moistureWb)));
  return {
    ...spec,
    bed: {
      ...spec.bed,
      ...airOfColumns(spec.bed, shortFactor),
      medium: { ...medium, rate: tableTimes(medium.rate, rateFactor) },
    },
    levels: spec.levels.map((level) => ({
      ...level,
      moistureDb: moved(level.moistureDb),
      blower: { ...level.blower, airM3M2S: airFactor * level.blower.airM3M2S },
    })),
    ...(spec.start === undefined ? {} : { start: { ...spec.start, moistureDb: spec.start.moistureDb.map(moved) } }),
  };
}

/** The air of the column that has least times a factor, all others times what keeps the mean. */
function airOfColumns({ airShares, areaShares }: BedSpec, shortFactor: number): Pick<BedSpec, 'airShares'> {
  if (airShares === undefined || areaShares === undefined || airShares.length < 2) return {};
  const short = airShares.indexOf(Math.min(...airShares));
  const had = areaShares[short] * airShares[short];
  const has = shortFactor * had;
  return { airShares: airShares.map((air, k) => (k === short ? shortFactor * air : (air * (1 - has)) / (1 - had))) };
}
