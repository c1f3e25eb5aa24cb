import { dryFromWet, wetFromDry } from '../../grain/moisture-basis.ts';
import type { Medium } from '../bed/medium.ts';
import type { RunSpec } from '../run/run-spec.ts';
import type { Doubt } from './doubts.ts';

/** Moistures of a bed's tables that grain is moved within, wet basis. */
const DRIEST_WB = 0.05;
const WETTEST_WB = 0.4;

/** A bin's season with a doubt let in. Dry matter, fan power and the air's warming stay. */
export function doubtedSpec(spec: RunSpec, { airFactor, moistureWb, rateFactor }: Doubt): RunSpec {
  const moved = (moistureDb: number) =>
    moistureWb === 0
      ? moistureDb
      : dryFromWet(Math.min(WETTEST_WB, Math.max(DRIEST_WB, wetFromDry(moistureDb) + moistureWb)));
  return {
    ...spec,
    bed: { ...spec.bed, medium: withRate(spec.bed.medium, rateFactor) },
    levels: spec.levels.map((level) => ({
      ...level,
      moistureDb: moved(level.moistureDb),
      blower: { ...level.blower, dryAirKgM2S: airFactor * level.blower.dryAirKgM2S },
    })),
    ...(spec.start === undefined ? {} : { start: { ...spec.start, moistureDb: spec.start.moistureDb.map(moved) } }),
  };
}

/** The cubics are linear in the values that they fit. */
function withRate(medium: Medium, factor: number): Medium {
  if (factor === 1 || medium.nearEquilibrium) return medium;
  return { ...medium, rate: { ...medium.rate, cubics: medium.rate.cubics.map((one) => factor * one) } };
}
