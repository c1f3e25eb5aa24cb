import type { LoadedSeason } from '../season/loaded.ts';
import type { Bin, Season } from '../season/season.ts';
import { statedHeaters } from '../season/stated-heaters.ts';
import type { SensorSeries } from '../tables/sensors.ts';
import { type AirRows, plenumRows } from './air-rows.ts';
import { binCondition } from './condition/bin-condition.ts';
import { binFan } from './energy/bin-fan.ts';
import { whileGrain } from './energy/outside-storage.ts';
import { binSpans } from './fan/bin-spans.ts';
import { binFronts } from './fronts/bin-fronts.ts';
import { moistureFronts } from './fronts/moisture-fronts.ts';
import { grainAmount } from './grain/grain-amount.ts';
import { bushelsOf } from './grain/per-bushel.ts';
import { concludeMoisture, spreadOfOthers } from './moisture/bin-moisture.ts';
import { binTemperature } from './moisture/bin-temperature.ts';
import { type ObservedMoisture, observeMoisture } from './moisture/observed-moisture.ts';
import { ticketsOf } from './moisture/tickets.ts';
import { binProbes } from './probes/bin-probes.ts';
import { moistureRates } from './rates/moisture-rates.ts';
import { grainSurface } from './surface/grain-surface.ts';
import type { BinFan, BinFronts, BinMoisture, BinReview, FanSeason, FanSpans } from './types.ts';
import { dryingEnergy } from './unit-costs/drying-energy.ts';
import { unitCosts } from './unit-costs/unit-costs.ts';
import { usefulHours } from './useful/useful-hours.ts';
import type { UsefulHours } from './useful/useful-hours-types.ts';
import { airAndWater } from './water/air-and-water.ts';

/** What is known of a bin before the season's other bins are heard. */
export interface HalfBin {
  bin: Bin;
  series: SensorSeries[];
  /** null where no fan of the bin has a log, or where that of one is left out */
  spans: FanSpans | null;
  fan: BinFan;
  observed: ObservedMoisture;
  plenum: AirRows;
}

/** What a bin's own logs tell: what the season's other bins are judged by too. */
export function firstHalf(
  loaded: LoadedSeason,
  bin: Bin,
  fans: readonly FanSeason[],
  all: readonly SensorSeries[],
): HalfBin {
  const { season, tables } = loaded;
  const series = all.filter((one) => one.bin === bin.id);
  const logged = fans.filter((fan) => bin.fanIds.includes(fan.fanId) && fan.runsFrom !== null);
  const tickets = ticketsOf(tables.tickets, bin.id);
  const fan = binFan(bin, season, fans, bushelsOf(grainAmount(bin, null, tickets)));
  // Where the log of one fan is left out, those of the others do not tell when the bin had air.
  const spans = logged.length === 0 || fan.doubt !== undefined ? null : binSpans(logged.map((one) => one.spans));
  const observed = observeMoisture({
    bin,
    season,
    series,
    spans,
    logLeftOut: fan.doubt !== undefined,
    fanHours: whileGrain(fan).hours,
    tickets,
  });
  return { bin, series, spans, fan, observed, plenum: plenumRows(tables, bin.id) };
}

/** The rest of a bin, by what all bins show. @param observed  of every bin whose points are known */
export function secondHalf(
  loaded: LoadedSeason,
  half: HalfBin,
  observed: readonly ObservedMoisture[],
  fans: readonly FanSeason[],
  weather: AirRows,
): BinReview {
  const { season } = loaded;
  const { bin, series, spans, fan, plenum } = half;
  const { tickets } = half.observed.input;
  const moisture = concludeMoisture(half.observed, spreadOfOthers(half.observed, observed));
  const grain = grainAmount(bin, moisture.start, tickets);
  const temperature = binTemperature(bin, series, spans, {
    errors: season.sensors.temperature,
    weather: weather.temperatures,
  });
  const review: BinReview = {
    bin,
    failure: null,
    grain,
    fan,
    moisture,
    temperature,
    unitCosts: unitCosts(bin, fan, moisture, bushelsOf(grain)),
    fronts: frontsOf(season, half, weather),
    ...airAndWater({ bin, season, series, spans, fan, grain, moisture, tickets, plenum, weather }),
    probes: binProbes(loaded.tables.probes, half.observed.input, moisture),
    useful: usefulOf(season, half, moisture, fans, weather),
    rates: spans === null ? null : moistureRates(fan, moisture, season.site.timeZone),
    condition: binCondition({
      bin,
      season,
      series,
      spans,
      fansTold: allLogged(half, fans),
      moisture,
      temperature,
      weather,
    }),
    surface: grainSurface({
      bin,
      series,
      spans: allLogged(half, fans) ? spans : null,
      weather,
      moistureWb: moisture.start.value,
    }),
  };
  return { ...review, unitEnergy: dryingEnergy(review, season) };
}

/** Of a fan without a log nobody knows which hours it ran. */
function allLogged({ bin }: Pick<HalfBin, 'bin'>, fans: readonly FanSeason[]): boolean {
  return bin.fanIds.every((id) => fans.some(({ fanId, runsFrom }) => fanId === id && runsFrom !== null));
}

function usefulOf(
  season: Season,
  { bin, series, spans, fan, plenum }: HalfBin,
  moisture: BinMoisture,
  fans: readonly FanSeason[],
  weather: AirRows,
): UsefulHours | null {
  if (spans === null || !allLogged({ bin }, fans)) return null;
  const input = { bin, season, series, spans, fan, fans, moisture };
  return usefulHours({ ...input, plenum: plenum.rows, weather: weather.rows });
}

function frontsOf(season: Season, { bin, series, spans, fan, plenum }: HalfBin, weather: AirRows): BinFronts {
  if (spans === null)
    return { campaigns: [], why: fan.doubt ?? 'No fan of this bin has a log, so no campaign can be told.' };
  const heated = statedHeaters(season, bin).length > 0;
  const fronts = binFronts({
    bin,
    sensors: series,
    fan: spans,
    heated,
    plenum: plenum.temperatures,
    weather: weather.temperatures,
  });
  return { ...fronts, moisture: moistureFronts({ bin, series, spans, number: fronts.campaigns.length + 1 }) };
}
