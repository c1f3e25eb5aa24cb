import { dryFromWet, wetFromDry } from '../../grain/moisture-basis.ts';
import { tableTimes } from '../bed/cubic-table.ts';
import type { RunSpec } from '../run/run-spec.ts';
import type { Doubt } from './doubts.ts';

/** Moistures of a bed's tables that grain is moved within, wet basis. */
const DRIEST_WB = 0.05;
const WETTEST_WB = 0.4;

/** A bin's season with a doubt let in. Dry matter, fan power and the air's warming stay. */
export function doubtedSpec(spec: RunSpec, { airFactor, moistureWb, rateFactor }: Doubt): RunSpec {
  const { medium } = spec.bed;
  const moved = (moistureDb: number) =>
    moistureWb === 0
      ? moistureDb
      : dryFromWet(Math.min(WETTEST_WB, Math.max(DRIEST_WB, wetFromDry(moistureDb) + moistureWb)));
  return {
    ...spec,
    bed: { ...spec.bed, medium: { ...medium, rate: tableTimes(medium.rate, rateFactor) } },
    levels: spec.levels.map((level) => ({
      ...level,
      moistureDb: moved(level.moistureDb),
      blower: { ...level.blower, dryAirKgM2S: airFactor * level.blower.dryAirKgM2S },
    })),
    ...(spec.start === undefined ? {} : { start: { ...spec.start, moistureDb: spec.start.moistureDb.map(moved) } }),
  };
}
