import { groupSpec } from '../../src/analysis/strategies/group-spec.ts';
import type { OutdoorAir } from '../../src/analysis/strategies/outdoor-air.ts';
import { type PlainSpec, specOfPlain } from '../../src/analysis/strategies/plain-spec.ts';
import { runGroup } from '../../src/analysis/strategies/run-group.ts';
import type { FinishedRun } from '../../src/analysis/strategies/run-numbers.ts';
import type { FromLog } from '../../src/analysis/strategies/run-strategy.ts';
import type { Variant } from '../../src/analysis/strategies/variant.ts';
import { zoneOf } from '../../src/base/zone.ts';
import type { Tariff } from '../../src/money/tariff.ts';

/** Runs of one bin in one weather, as plain data. */
export interface SweepTask {
  /** of the season */
  plain: PlainSpec;
  /** all weather on file, in memory that threads share */
  air: OutdoorAir;
  timeZone: string;
  tariff: Tariff | null;
  weather: string;
  variant: Variant;
  strategies: readonly string[];
  fromLog: FromLog;
  bushels: number | null;
}

let zone = zoneOf('UTC');

/** What the worker threads do. The weather of a year is made here too, since it takes a fifth of the time of its runs. */
export default function sweepTask(task: SweepTask): FinishedRun[] {
  const { plain, air, timeZone, tariff, weather, variant, strategies, fromLog, bushels } = task;
  if (zone.name !== timeZone) zone = zoneOf(timeZone);
  const made = groupSpec(specOfPlain(plain), { zone, tariff }, air, weather, variant);
  if (made.spec === null) return strategies.map(() => ({ numbers: null, why: made.why }));
  return runGroup(made.spec, strategies, fromLog, bushels);
}
