import { errorText } from '../base/error-text.ts';
import type { LoadedSeason } from '../season/loaded.ts';
import { type SensorSeries, sensorSeries } from '../tables/sensors.ts';
import { type AirRows, weatherRows } from './air-rows.ts';
import { compareBins } from './compare/compare-bins.ts';
import { billShares } from './energy/bill-shares.ts';
import { staggeredDemand } from './energy/staggered-demand.ts';
import { tariffMonths } from './energy/tariff-months.ts';
import { withHeaterHours } from './energy/with-heater-hours.ts';
import { failedBin } from './failed-bin.ts';
import { doubtedFans, withDoubts } from './fan/doubted-fans.ts';
import { fanSeason } from './fan/fan-season.ts';
import { logsEnd } from './fan/logs-end.ts';
import { firstHalf, secondHalf } from './review-bin.ts';
import type { BinReview, FanSeason, SeasonReview } from './types.ts';
import { impossibleDrying } from './water/impossible-drying.ts';
import { crossedRuns } from './what-if/crossed-runs.ts';
import { seasonWhatIf, type WhatIfs, type WhatIfTold, whatIfsHere } from './what-if/season-what-if.ts';

/** What the logs tell, before any bed is fitted. */
interface OfLogs {
  bins: readonly BinReview[];
  fans: readonly FanSeason[];
  brokenFans: readonly { id: string; text: string }[];
}

/**
 * Everything the kit says of a loaded season. One bin that breaks does not take the others down: it comes back with
 * `failure` set and every number missing; a fan that breaks takes its bins with it, and no others.
 *
 * @param onBin   told the bin's name before its work begins
 * @param models  fit the bins' beds to their logs and run them in other ways; some seconds a bin
 */
export function reviewSeason(
  loaded: LoadedSeason,
  onBin: (name: string) => void = () => {},
  { models = false }: { models?: boolean } = {},
): SeasonReview {
  const logs = ofLogs(loaded, onBin);
  return conclude(loaded, logs, models ? whatIfsHere(loaded, sound(logs), onBin) : null);
}

/** The same with models, their work done by `whatIfs`. */
export async function reviewSeasonBy(
  whatIfs: WhatIfs,
  loaded: LoadedSeason,
  onBin: (name: string) => void = () => {},
): Promise<SeasonReview> {
  const logs = ofLogs(loaded, onBin);
  return conclude(loaded, logs, await whatIfs(loaded, sound(logs), onBin));
}

const sound = ({ bins }: OfLogs) => bins.filter(({ failure }) => failure === null);

function ofLogs(loaded: LoadedSeason, onBin: (name: string) => void): OfLogs {
  const { season, tables } = loaded;
  const series = sensorSeries(tables.readings);
  const weather = weatherRows(loaded);
  const endMs = logsEnd(loaded);
  const told = season.fans.map((fan) => ({
    fan,
    ...attempt(() => withHeaterHours(loaded, fan, fanSeason(fan, tables.fan, endMs), weather)),
  }));
  const fans = doubtedFans(
    loaded,
    told.flatMap((one) => (one.ok ? [one.value] : [])),
  );
  const brokenFans = told.flatMap((one) =>
    one.ok ? [] : [{ id: one.fan.id, text: `fan ${one.fan.id}: ${one.reason}` }],
  );
  const binsBy = (fans: readonly FanSeason[], onBin: (name: string) => void) =>
    binsOf(loaded, fans, brokenFans, { series, weather }, onBin);
  const bins = binsBy(fans, onBin);
  // A log that cannot be whole is left out, and its bins are worked out anew without it.
  const doubts = new Map<string, string>();
  for (const review of bins) {
    const why = attempt(() => (review.failure === null ? impossibleDrying(review, season) : null));
    if (why.ok && why.value !== null) for (const id of review.bin.fanIds) doubts.set(id, why.value);
  }
  if (doubts.size === 0) return { bins, fans, brokenFans };
  const left = withDoubts(fans, doubts);
  return { bins: binsBy(left, () => {}), fans: left, brokenFans };
}

function binsOf(
  loaded: LoadedSeason,
  fans: readonly FanSeason[],
  brokenFans: OfLogs['brokenFans'],
  { series, weather }: { series: readonly SensorSeries[]; weather: AirRows },
  onBin: (name: string) => void,
): BinReview[] {
  const { season } = loaded;
  const halves = season.bins.map((bin) =>
    attempt(() => {
      onBin(bin.name);
      const broken = brokenFans.find((one) => bin.fanIds.includes(one.id));
      if (broken !== undefined) throw new Error(broken.text);
      return firstHalf(loaded, bin, fans, series);
    }),
  );
  const observed = halves.flatMap((half) =>
    half.ok && !Number.isNaN(half.value.observed.points) ? [half.value.observed] : [],
  );
  return halves.map((half, i) => {
    if (!half.ok) return failedBin(season.bins[i], half.reason);
    const whole = attempt(() => secondHalf(loaded, half.value, observed, fans, weather));
    return whole.ok ? whole.value : failedBin(season.bins[i], whole.reason);
  });
}

function conclude(
  loaded: LoadedSeason,
  { bins: reviewed, fans, brokenFans }: OfLogs,
  told: readonly WhatIfTold[] | null,
): SeasonReview {
  const { season, tables } = loaded;
  const { bins, whatIf, broken } =
    told === null ? { bins: reviewed, whatIf: undefined, broken: [] } : seasonWhatIf(reviewed, told);
  const crossed = attempt(() => (whatIf === undefined ? undefined : crossedRuns(loaded, bins, whatIf)));
  const months = attempt(() => tariffMonths(season, fans));
  const bills = attempt(() => billShares(season, tables.bills, fans));
  const ways = attempt(() => staggeredDemand(season, fans));
  const compared = attempt(() => compareBins(loaded, bins));
  const failures = [
    ...brokenFans.map((one) => one.text),
    ...broken,
    ...(crossed.ok ? [] : [`each bin’s way on the others: ${crossed.reason}`]),
    ...(months.ok ? [] : [`tariff months: ${months.reason}`]),
    ...(bills.ok ? [] : [`bills: ${bills.reason}`]),
    ...(ways.ok ? [] : [`demand charges: ${ways.reason}`]),
    ...(compared.ok ? [] : [`bins compared: ${compared.reason}`]),
  ];
  return {
    bins,
    fans,
    tariffMonths: months.ok ? months.value : [],
    bills: bills.ok ? bills.value : undefined,
    demandWays: ways.ok ? ways.value : undefined,
    compared: compared.ok ? compared.value : undefined,
    whatIf,
    crossed: crossed.ok ? crossed.value : undefined,
    failures,
  };
}

type Outcome<T> = { ok: true; value: T } | { ok: false; reason: string };

function attempt<T>(work: () => T): Outcome<T> {
  try {
    return { ok: true, value: work() };
  } catch (error) {
    return { ok: false, reason: errorText(error) };
  }
}
