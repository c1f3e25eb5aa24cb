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

/** Of the last task: a zone remembers its offsets, and of a copied tariff V8 compiles the hours' loop anew. */
let site = { key: '', zone: zoneOf('UTC'), tariff: null as Tariff | null };

/** What the worker threads do. The weather of a year is made here too, since it takes a fifth of the time of its runs. */
export default function sweepTask(task: SweepTask): FinishedRun[] {
  const { plain, air, timeZone, tariff, weather, variant, strategies, fromLog, bushels } = task;
  const key = JSON.stringify([timeZone, tariff]);
  if (site.key !== key) site = { key, zone: site.zone.name === timeZone ? site.zone : zoneOf(timeZone), tariff };
  const made = groupSpec(specOfPlain(plain), site, air, weather, variant);
  if (made.spec === null) return strategies.map(() => ({ numbers: null, why: made.why }));
  return runGroup(made.spec, strategies, fromLog, bushels);
}
