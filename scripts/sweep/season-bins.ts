import { standardPressurePa } from '../../src/air/pressure.ts';
import { type BinLog, binLog } from '../../src/analysis/model/bin-log.ts';
import { runSpecOf } from '../../src/analysis/model/run-spec-of.ts';
import { tariffOf } from '../../src/analysis/model/tariff-of.ts';
import { localYear } from '../../src/analysis/strategies/carry-date.ts';
import type { SweepBin } from '../../src/analysis/strategies/group-spec.ts';
import { type OutdoorAir, outdoorAir } from '../../src/analysis/strategies/outdoor-air.ts';
import { type PlannedBin, SEASON_WEATHER } from '../../src/analysis/strategies/sweep-plan.ts';
import { yearsOnFile } from '../../src/analysis/strategies/weather-years.ts';
import type { BinReview } from '../../src/analysis/types.ts';
import { listed } from '../../src/base/listed.ts';
import { toLocalMs, zoneOf } from '../../src/base/zone.ts';
import type { LoadedSeason } from '../../src/season/loaded.ts';
import { UsageError } from '../command-line.ts';
import type { KeptFit, KeptFits } from './kept-fits.ts';
import { monthEndsWithin } from './month-ends.ts';

/** A season's bins ready to be planned, each fitted when it is asked for. */
export interface SeasonBins {
  planned: PlannedBin[];
  binOf: (index: number) => Promise<SweepBin>;
  air: OutdoorAir;
  /** days by which to tell the chance of being at the target, `MM-DD` */
  by: readonly string[];
}

/**
 * @param all       the season's bins, reviewed
 * @param ids       of the bins to take, null: all
 * @param weathers  asked for; null: the season and all years on file
 * @param kept      fits that were made before; asked for when the first bin is
 * @param fitOne    fits a bin that was not
 * @throws          UsageError of years without any weather
 */
export function seasonBins(
  loaded: LoadedSeason,
  all: readonly BinReview[],
  ids: readonly string[] | null,
  weathers: readonly string[] | null,
  say: (line: string) => void,
  kept: () => KeptFits,
  fitOne: (loaded: LoadedSeason, review: BinReview) => Promise<KeptFit>,
): SeasonBins {
  const { season } = loaded;
  const zone = zoneOf(season.site.timeZone);
  const reviews = all.filter(({ bin }) => ids === null || ids.includes(bin.id));
  const logs = reviews.map((review) => (review.failure === null ? binLog(loaded, review) : review.failure));
  const driven = logs.filter((log): log is BinLog => typeof log !== 'string');
  const pressurePa = driven[0]?.weather.hours.pressurePa ?? standardPressurePa(season.site.elevationM ?? 0);
  const air = outdoorAir(loaded, pressurePa);
  const onFile = logs.map((log) => (typeof log === 'string' ? [] : yearsOnFile(log.startMs, log.endMs, air, zone)));
  if (weathers !== null && driven.length > 0) assertOnFile(weathers, onFile.flat());

  const planned = reviews.map(({ bin, grain }, i): PlannedBin => {
    const log = logs[i];
    const common = { id: bin.id, name: bin.name, bushels: grain.bushels };
    if (typeof log === 'string') return { ...common, startOn: null, weathers: [SEASON_WEATHER] };
    const own = localYear(zone, log.startMs);
    const startOn = new Date(toLocalMs(zone, log.startMs)).toISOString().slice(0, 10);
    return { ...common, startOn, weathers: weathersOf(weathers, onFile[i], own) };
  });
  const site = (review: BinReview) => ({ zone, tariff: tariffOf(season, review.bin) });
  const made = async (index: number, before: Promise<unknown>): Promise<SweepBin> => {
    const review = reviews[index];
    const withheld = (why: string): SweepBin => ({ site: site(review), spec: null, why, logged: null });
    const log = logs[index];
    if (typeof log === 'string') return withheld(log);
    const known = kept().get(review.bin.id);
    const model = known ?? (await fitOne(loaded, review));
    // Whichever is done first, they are told and kept in order.
    await before;
    if (known === undefined) kept().add(review.bin.id, model);
    const verdict = `${model.trusted ? 'trusted' : 'not trusted'}${known === undefined ? '' : ', as fitted before'}`;
    say(`Model    ${review.bin.name}: ${verdict}. ${model.why}`);
    if (!model.trusted || model.fitted === null) return withheld(`The model of the bin is not trusted: ${model.why}`);
    const run = runSpecOf(loaded, review, model.fitted);
    if (run.spec === null) return withheld(run.why);
    const { spec, logged } = run;
    return { site: site(review), spec, why: null, logged };
  };
  const asked = new Map<number, Promise<SweepBin>>();
  let last: Promise<unknown> = Promise.resolve();
  const binOf = (index: number): Promise<SweepBin> => {
    const bin = asked.get(index) ?? made(index, last);
    if (!asked.has(index)) last = bin.catch(() => undefined);
    asked.set(index, bin);
    return bin;
  };
  return { planned, binOf, air, by: monthEndsWithin(driven, zone) };
}

/** The season's own year is the season; the season comes first. */
function weathersOf(asked: readonly string[] | null, onFile: readonly number[], own: number): string[] {
  const names = asked ?? [SEASON_WEATHER, ...onFile.map(String)];
  const told = names.map((name) => (name === String(own) ? SEASON_WEATHER : name));
  return [...new Set([...told.filter((name) => name === SEASON_WEATHER), ...told])];
}

function assertOnFile(weathers: readonly string[], onFile: readonly number[]): void {
  const years = [...new Set(onFile)].sort((a, b) => a - b);
  const lacking = weathers.filter((name) => name !== SEASON_WEATHER && !years.includes(Number(name)));
  if (lacking.length === 0) return;
  const there =
    years.length === 0
      ? 'no file tells of any'
      : `weather on file begins with ${years[0]} and ends with ${years[years.length - 1]}`;
  throw new UsageError([
    {
      code: 'SWEEP_WEATHER',
      message: `--years has ${listed(spansOf(lacking.map(Number)))}, for which no weather is on file; ${there}. Add archives to season.yaml under files with role: history, or leave such years out.`,
    },
  ]);
}

/** `1900 to 1903`, `1907`: a command line of many years is told in few words. @param years  rising */
function spansOf(years: readonly number[]): string[] {
  const firsts = years.filter((year, i) => year !== years[i - 1] + 1);
  const lasts = years.filter((year, i) => year !== years[i + 1] - 1);
  return firsts.map((first, i) => (first === lasts[i] ? String(first) : `${first} to ${lasts[i]}`));
}
