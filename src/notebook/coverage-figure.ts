import { listed } from '../base/listed.ts';
import { onceFor } from '../base/once-for.ts';
import { localDayOf, type Zone } from '../base/zone.ts';
import { coverage } from '../report/figures/coverage.ts';
import type { LocalSpan } from '../report/figures/time-axis.ts';
import type { Figure } from '../report/page.ts';
import type { Units } from '../report/units.ts';
import { fansSeen } from '../season/checks/check-fans.ts';
import { isByChange } from '../season/checks/fan-state.ts';
import { rowsBy } from '../season/checks/rows.ts';
import type { LoadedSeason } from '../season/loaded.ts';
import { integers, numbers, textColumn } from '../tables/arrow.ts';
import { counted } from './words.ts';

const DAY_MS = 86_400_000;

interface Day {
  kept: number;
  flagged: number;
}

/** Readings by group and local day: kept or flagged. */
function tally(
  loaded: LoadedSeason,
  name: 'readings' | 'fan' | 'plenum' | 'weather',
  by: string,
  flags: readonly string[],
  zone: Zone,
): Map<string, Map<number, Day>> {
  const table = loaded.tables[name];
  const time = numbers(table, 'time');
  const { codes, values } = textColumn(table, by);
  const bits = flags.map((flag) => integers(table, flag));
  const out = new Map<string, Map<number, Day>>();
  for (let row = 0; row < time.length; row++) {
    const key = values[codes[row]];
    const days = out.get(key) ?? new Map<number, Day>();
    out.set(key, days);
    const at = localDayOf(zone, time[row]);
    const day = days.get(at) ?? { kept: 0, flagged: 0 };
    days.set(at, day);
    if (bits.some((of) => of[row] !== 0)) day.flagged += 1;
    else day.kept += 1;
  }
  return out;
}

/** The days on which a group of sensors had something to log: while its bins held grain, else all. */
function dueSpan(bins: readonly string[], loaded: LoadedSeason, all: LocalSpan, zone: Zone): LocalSpan {
  const of = loaded.season.bins.filter((bin) => bins.includes(bin.id)).map((bin) => bin.grain);
  if (of.length === 0) return all;
  const day = (ms: number) => localDayOf(zone, ms);
  const from = of.map((grain) => (grain.filledMs === null ? all.fromMs : day(grain.filledMs)));
  const to = of.map((grain) => (grain.unloadedMs === null ? all.toMs : day(grain.unloadedMs) + DAY_MS));
  return { fromMs: Math.max(all.fromMs, Math.min(...from)), toMs: Math.min(all.toMs, Math.max(...to)) };
}

function usual(counts: readonly number[]): number {
  const sorted = [...counts].sort((a, b) => a - b);
  return sorted[Math.floor(sorted.length / 2)] ?? 0;
}

/** What was logged when: a strip for each bin's cables and plenum, each fan, and the weather; null when nothing was. */
export function coverageFigure(loaded: LoadedSeason, { zone }: Units): Figure | null {
  return drawnOf(loaded)(zone);
}

const drawnOf = onceFor((loaded: LoadedSeason) => onceFor((zone: Zone) => coverageOf(loaded, zone)));

function coverageOf(loaded: LoadedSeason, zone: Zone): Figure | null {
  const nameOf = new Map(loaded.season.bins.map((bin) => [bin.id, bin.name]));
  const groups = [
    ...[...tally(loaded, 'readings', 'bin', ['temp_flags', 'moisture_flags'], zone)].map(([bin, days]) => ({
      name: `${nameOf.get(bin) ?? bin}, cables`,
      bins: [bin],
      days,
    })),
    ...[...tally(loaded, 'plenum', 'bin', ['flags'], zone)].map(([bin, days]) => ({
      name: `${nameOf.get(bin) ?? bin}, plenum`,
      bins: [bin],
      days,
    })),
    ...[...tally(loaded, 'fan', 'fan', ['flags'], zone)].map(([fan, days]) => ({
      name: `Fan ${fan}`,
      bins: loaded.season.bins.filter((bin) => bin.fanIds.includes(fan)).map((bin) => bin.id),
      days,
    })),
    ...[...tally(loaded, 'weather', 'role', ['flags'], zone)]
      .filter(([role]) => role === 'season')
      .map(([, days]) => ({ name: 'Weather', bins: [], days })),
  ];
  const all = groups.flatMap((group) => [...group.days.keys()]);
  if (all.length === 0) return null;
  let fromMs = all[0];
  let toMs = all[0];
  for (const day of all) {
    fromMs = Math.min(fromMs, day);
    toMs = Math.max(toMs, day);
  }
  const spans = groups.map((group) => dueSpan(group.bins, loaded, { fromMs, toMs: toMs + DAY_MS }, zone));
  const byChange = new Set(
    fansSeen(loaded.season, rowsBy(loaded.tables.fan, 'fan'))
      .filter(({ state }) => isByChange(state))
      .map(({ id }) => `Fan ${id}`),
  );
  const silent = groups
    .map((group, g) => {
      // A log that writes only changes is silent for as long as a fan stands or runs.
      if (byChange.has(group.name)) return { name: group.name, days: 0 };
      const { fromMs: first, toMs: end } = spans[g];
      const logged = [...group.days.keys()].filter((day) => day >= first && day < end).length;
      return { name: group.name, days: Math.max(0, (end - first) / DAY_MS - logged) };
    })
    .filter(({ days }) => days > 0)
    .sort((a, b) => b.days - a.days);
  return coverage({
    id: 'coverage',
    title: silentTitle(silent),
    span: { fromMs, toMs: toMs + DAY_MS },
    groups: groups.map(({ name, days }, g) => {
      // What is due on a day is what the group gives on its usual day; a log of changes alone has no usual day.
      const due = usual([...days.values()].map((day) => day.kept + day.flagged));
      return {
        name,
        due: spans[g],
        days: [...days].map(([dayMs, day]) => ({ dayMs, ...day, due: name.startsWith('Fan') ? 0 : due })),
      };
    }),
  });
}

/** Who said nothing on whole days, the longest first. */
function silentTitle(silent: readonly { name: string; days: number }[]): string {
  if (silent.length === 0) return 'Every log has readings on every day';
  const first = silent.slice(0, 3).map(({ name, days }) => `${name} (${counted(days, 'day')})`);
  const more = silent.length > 3 ? [`${silent.length - 3} more`] : [];
  return `Whole days without a reading: ${listed([...first, ...more])}`;
}
