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
}

/** A way with what runs it on another bin. */
export interface Carried extends CarriedWay {
  /** null where it cannot run there */
  on(spec: RunSpec): Strategy | null;
}

/** The ways by which bins were run: one for each strategy that some bin states, one for each bin of logged hours alone. */
export function carriedWays(runs: readonly BinRun[]): Carried[] {
  const ways: Carried[] = [];
  for (const run of runs) {
    const kit = STRATEGIES.find(({ id }) => id === run.strategy);
    const same = ways.findIndex(({ id }) => id === kit?.id);
    if (same >= 0) ways[same] = { ...ways[same], binIds: [...ways[same].binIds, run.binId] };
    else ways.push(kit === undefined ? byHours(run) : byStrategy(kit, run.binId));
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

function byHours({ binId, binName, logged, why }: BinRun): Carried {
  const id = `hours of ${binId}`;
  const title = `Hours of ${binName}`;
  if (logged === null) return { id, title, binIds: [binId], why, on: () => null };
  const on = (spec: RunSpec) => {
    if (logged.heated && !hasHeater(spec)) return null;
    const at = (of: ArrayLike<number>) => byClock(of, logged.startMs, spec.hours.startMs, spec.endHour);
    const share = at(logged.share);
    const burnt = logged.burnt === undefined ? burntWith(share) : at(logged.burnt);
    return scheduled(id, title, share, logged.heated ? burnt : undefined);
  };
  return { id, title, binIds: [binId], why: null, on };
}

/** Logged hours at the same moments of another bin's run; before and after the log the fan rests. */
function byClock(logged: ArrayLike<number>, startMs: number, toMs: number, count: number): Float64Array {
  const shift = Math.round((toMs - startMs) / HOUR_MS);
  return Float64Array.from({ length: count }, (_, hour) => logged[hour + shift] ?? 0);
}
