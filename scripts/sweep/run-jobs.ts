import { type SweepBin, weatherYear } from '../../src/analysis/strategies/group-spec.ts';
import { airWithin, type OutdoorAir } from '../../src/analysis/strategies/outdoor-air.ts';
import { type PlainSpec, plainSpec } from '../../src/analysis/strategies/plain-spec.ts';
import { type FinishedRun, rowOfRun } from '../../src/analysis/strategies/run-numbers.ts';
import { AS_LOGGED, IN_HINDSIGHT, SWEPT } from '../../src/analysis/strategies/run-strategy.ts';
import type { SweepRow } from '../../src/analysis/strategies/sweep-columns.ts';
import {
  type JobGroup,
  jobGroups,
  SEASON_WEATHER,
  type SweepPlan,
  shardGroups,
} from '../../src/analysis/strategies/sweep-plan.ts';
import { airOfRun } from '../../src/analysis/strategies/typical-year.ts';
import { yearStretch } from '../../src/analysis/strategies/weather-years.ts';
import { inTurn } from '../threads/in-turn.ts';
import { withSharedArrays } from '../threads/shared-arrays.ts';
import { hashOf } from './job-key.ts';
import type { SweepTask } from './sweep-task.ts';

/** Tasks that wait for each worker: enough that none is idle, few enough that memory holds only what is at hand. */
const WAITING = 2;

export interface JobOptions {
  shard: { index: number; of: number };
  workers: number;
  run: (task: SweepTask) => Promise<FinishedRun[]>;
  /** runs done before; what is done now goes there */
  finished: {
    get(key: string): FinishedRun | undefined;
    add(runs: readonly (readonly [key: string, run: FinishedRun])[]): void;
  };
  /** told as jobs are done */
  onDone: (jobs: number) => void;
}

/**
 * Run a plan's jobs, or a shard's part of them.
 *
 * @param binOf  a bin by its place in `plan.bins`; asked for once, those of the jobs alone
 * @returns     a row a job in the order of the plan, whatever the number of workers
 */
export async function runJobs(
  plan: SweepPlan,
  binOf: (index: number) => SweepBin | Promise<SweepBin>,
  air: OutdoorAir,
  { shard, workers, run, finished, onDone }: JobOptions,
): Promise<SweepRow[]> {
  const { strategies } = plan;
  const ways = strategies.filter((name) => !SWEPT.includes(name));
  const own = shardGroups(jobGroups(plan), shard);
  const rows: SweepRow[][] = new Array(own.length);
  const shared = withSharedArrays(air);
  const known = new Map<number, KnownBin>();
  await inTurn([...new Set(own.map(({ bin }) => bin))], workers, async (_, index) => {
    known.set(index, knowBin(plan, index, await binOf(index)));
  });

  const one = async (place: number, group: JobGroup): Promise<void> => {
    const { bin, plain, hash, loggedHash } = known.get(group.bin)!;
    const { id, bushels } = plan.bins[group.bin];
    const { weather, variant } = group;
    const told = (runs: readonly FinishedRun[], keys: readonly (string | null)[]) => {
      rows[place] = runs.map((done, i) => ({
        ...{ bin: id, strategy: strategies[i], weather, ...variant },
        ...rowOfRun(done, bin.site.zone),
        inputs: keys[i],
      }));
    };
    if (plain === null) {
      const nothing = { numbers: null, why: bin.why };
      told(
        strategies.map(() => nothing),
        strategies.map(() => null),
      );
      onDone(strategies.length);
      return;
    }
    const weathered = hashOf(hash, weather, variant, airOf(plain, bin, air, group));
    const logged = weather === SEASON_WEATHER && variant.fillDays === 0 ? bin.logged : null;
    const keys = strategies.map((strategy) => {
      const ofLog = logged !== null && (strategy === AS_LOGGED || strategy === IN_HINDSIGHT) ? loggedHash : null;
      return hashOf(weathered, strategy, ofLog, strategy === IN_HINDSIGHT ? ways : null);
    });
    const todo = strategies.filter((_, i) => finished.get(keys[i]) === undefined);
    onDone(strategies.length - todo.length);
    if (todo.length > 0) {
      const { zone, tariff } = bin.site;
      const timeZone = zone.name;
      const runs = await run({
        ...{
          plain,
          air: shared,
          timeZone,
          tariff,
          weather,
          variant,
          strategies: todo,
          fromLog: { logged, ways },
          bushels,
        },
      });
      finished.add(todo.map((strategy, i) => [keys[strategies.indexOf(strategy)], runs[i]]));
      onDone(todo.length);
    }
    told(
      keys.map((key) => finished.get(key)!),
      keys,
    );
  };

  await inTurn(own, WAITING * workers, one);
  return rows.flat();
}

/** A bin with what is the same for all its jobs. */
interface KnownBin {
  bin: SweepBin;
  plain: PlainSpec | null;
  hash: string;
  loggedHash: string;
}

function knowBin(plan: SweepPlan, index: number, bin: SweepBin): KnownBin {
  const { spec, site, logged } = bin;
  const plain = spec === null ? null : plainSpec(spec);
  const { bushels } = plan.bins[index];
  return {
    bin,
    plain: plain === null ? null : withSharedArrays(plain),
    hash: hashOf(plan.kit, plain, site.zone.name, site.tariff, bushels),
    loggedHash: hashOf(logged),
  };
}

/** The readings that a group's weather is made of; null where the season's own hours stand. */
function airOf({ spec }: PlainSpec, { site }: SweepBin, air: OutdoorAir, { weather, variant }: JobGroup) {
  const year = weatherYear(spec, site, weather, variant.fillDays);
  if (year === null) return null;
  const { startMs, endMs } = yearStretch(spec, site.zone, year, variant.fillDays);
  return airWithin(airOfRun(air, startMs, endMs), startMs, endMs);
}
