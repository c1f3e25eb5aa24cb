import { listed } from '../../base/listed.ts';
import { hasHeater, type RunSpec } from '../../simulation/run/run-spec.ts';
import { burntWith } from '../../simulation/strategies/as-logged.ts';
import { runsOn } from '../../simulation/strategies/runs-on.ts';
import { scheduled } from '../../simulation/strategies/scheduled.ts';
import { STRATEGIES } from '../../simulation/strategies/strategies.ts';
import type { Strategy } from '../../simulation/strategies/strategy.ts';
import { untilReached } from '../../simulation/strategies/until-reached.ts';
import type { CarriedWay } from './crossed-types.ts';

const HOUR_MS = 3_600_000;

/** How a bin was run: the strategy that it states, and its logged hours. */
export interface BinRun {
  binId: string;
  binName: string;
  strategy: string | null;
  /** part of each hour in which its fan ran, when the first hour began, whether the fan has a heater, and in which hours it burnt (left out: with the fan); null where not known, with why */
  logged: { share: Float64Array; startMs: number; heated: boolean; burnt?: Uint8Array } | null;
  why: string | null;
  /** its fans; bins that have the same ones are run in the same hours */
  fanIds?: readonly string[];
}

/** A way with what runs it on another bin. */
export interface Carried extends CarriedWay {
  /** null where it cannot run there */
  on(spec: RunSpec): Strategy | null;
}

/** The ways by which bins were run: one for each strategy that some bin states, one for the bins of the same fans of logged hours alone. */
export function carriedWays(runs: readonly BinRun[]): Carried[] {
  const ways: Carried[] = [];
  const alone = runs.filter(({ strategy }) => !STRATEGIES.some(({ id }) => id === strategy));
  for (const run of runs) {
    if (ways.some(({ binIds }) => binIds.includes(run.binId))) continue;
    const kit = STRATEGIES.find(({ id }) => id === run.strategy);
    const same = ways.findIndex(({ id }) => id === kit?.id);
    if (same >= 0) ways[same] = { ...ways[same], binIds: [...ways[same].binIds, run.binId] };
    else ways.push(kit === undefined ? byHours(alone.filter((one) => sameFans(one, run))) : byStrategy(kit, run.binId));
  }
  return ways;
}

function byStrategy(kit: Strategy, binId: string): Carried {
  const { id, title } = kit;
  return {
    id,
    title,
    binIds: [binId],
    why: null,
    on: (spec) => (runsOn(kit, spec) ? untilReached(kit, spec.goal) : null),
  };
}

/** Whether two bins were run in the same hours; the log of both must be known. */
function sameFans(one: BinRun, other: BinRun): boolean {
  if (one.binId === other.binId) return true;
  const [a, b] = [one, other].map(({ fanIds = [] }) => [...fanIds].sort().join(' '));
  return a !== '' && a === b && one.logged !== null && other.logged !== null;
}

/** @param runs  of bins with the same fans, the first gives the way its id */
function byHours(runs: readonly BinRun[]): Carried {
  const binIds = runs.map(({ binId }) => binId);
  const id = `hours of ${binIds[0]}`;
  const title = `Hours of ${listed(runs.map(({ binName }) => binName))}`;
  const [{ why }] = runs;
  // The bin that was filled first has the longest log.
  const [logged] = runs.map((run) => run.logged).sort((a, b) => (a?.startMs ?? 0) - (b?.startMs ?? 0));
  if (logged === null) return { id, title, binIds, why, on: () => null };
  const on = (spec: RunSpec) => {
    if (logged.heated && !hasHeater(spec)) return null;
    const at = (of: ArrayLike<number>) => byClock(of, logged.startMs, spec.hours.startMs, spec.endHour);
    const share = at(logged.share);
    const burnt = logged.burnt === undefined ? burntWith(share) : at(logged.burnt);
    return scheduled(id, title, share, logged.heated ? burnt : undefined);
  };
  return { id, title, binIds, why: null, on };
}

/** Logged hours at the same moments of another bin's run; before and after the log the fan rests. */
function byClock(logged: ArrayLike<number>, startMs: number, toMs: number, count: number): Float64Array {
  const shift = Math.round((toMs - startMs) / HOUR_MS);
  return Float64Array.from({ length: count }, (_, hour) => logged[hour + shift] ?? 0);
}
