import { textColumn } from '../../tables/arrow.ts';
import { sensorSeries } from '../../tables/sensors.ts';
import type { Finding, SeasonTables } from '../loaded.ts';
import type { Season } from '../season.ts';
import { type AirLog, airLog, checkPlenum, checkWeather } from './check-air.ts';
import { checkBills } from './check-bills.ts';
import { checkDoubtedColumns } from './check-doubted-columns.ts';
import { checkFanClock } from './check-fan-clock.ts';
import { binOf, checkFans, type FanSeen, fansSeen } from './check-fans.ts';
import { boundsOf, checkFanGaps, checkGrainGaps, checkLogGaps } from './check-gaps.ts';
import { checkGrain } from './check-grain.ts';
import { checkProbes } from './check-probes.ts';
import { checkSilent } from './check-silent.ts';
import { checkSwappedAir } from './check-swapped-air.ts';
import { checkSwappedColumns } from './check-swapped-columns.ts';
import { checkTariffs } from './check-tariffs.ts';
import { checkTickets } from './check-tickets.ts';
import { checkZone } from './check-zone.ts';
import { type BinCheck, type Checked, checkedOf } from './checked.ts';
import { airAt, type FanHistory, fanHistory } from './fan-state.ts';
import { rosterOf } from './places.ts';
import { type Rows, rowsBy } from './rows.ts';
import { saidBy, saidFraction, saidUnits } from './said-unit.ts';
import { SPIKE_OUTDOOR_K, SPIKE_PLENUM_K } from './spikes.ts';
import { airSwing } from './swing.ts';
import { dailyMedians } from './unit-level.ts';

/** Flags by table row, to be OR-ed with those that the loader set. */
export interface SeasonFlags {
  readings: { temp: Uint8Array; moisture: Uint8Array };
  fan: Uint8Array;
  plenum: Uint8Array;
  weather: Uint8Array;
  probes?: Uint8Array;
  tickets?: Uint8Array;
}

/**
 * Look at every reading of a loaded season and say which can be read but not believed.
 * The tables' own flag columns (duplicate, clock) are respected and not repeated; history weather is not looked at.
 */
export function checkSeason(season: Season, tables: SeasonTables): { flags: SeasonFlags; findings: Finding[] } {
  const flags = {
    readings: { temp: new Uint8Array(tables.readings.numRows), moisture: new Uint8Array(tables.readings.numRows) },
    fan: new Uint8Array(tables.fan.numRows),
    plenum: new Uint8Array(tables.plenum.numRows),
    weather: new Uint8Array(tables.weather.numRows),
    probes: new Uint8Array(tables.probes.numRows),
    tickets: new Uint8Array(tables.tickets.numRows),
  } satisfies SeasonFlags;
  const findings: Finding[] = [];
  const units = saidUnits(season);
  const unitOf = (table: SeasonTables['readings']) => {
    const files = textColumn(table, 'file');
    return (rows: Int32Array) => {
      const codes = new Set<number>();
      for (const row of rows) codes.add(files.codes[row]);
      return saidBy(
        [...codes].map((code) => files.values[code]),
        units,
      );
    };
  };

  findings.push(...checkZone(season), ...checkTariffs(season, tables.bills));
  const fans = fansSeen(season, rowsBy(tables.fan, 'fan'));
  const plenums = rowsBy(tables.plenum, 'bin');
  // First, for what the fans did is asked by the checks that follow.
  // A log on another clock looks dead where the pressure is high, so its clock is asked before its sensor.
  const clocks = checkFanClock(season, fans, plenums, tables.fan, tables.plenum);
  const doubted = new Set(clocks.map((one) => one.binId));
  const trusted = plenums.filter((one) => !doubted.has(one.id));
  findings.push(...clocks, ...checkFans(season, fans, trusted, flags.fan));
  const weatherRows = rowsBy(tables.weather, 'role').find((one) => one.id === 'season');
  const weatherUnit = unitOf(tables.weather);
  const logOf = (
    rows: Rows,
    where: string,
    binId: string | null,
    table: 'plenum' | 'weather',
    said: AirLog['saidUnit'],
  ) => airLog({ where, binId, rows, flags: flags[table], show: season.showUnits, saidUnit: said });
  const weather =
    weatherRows === undefined ? null : logOf(weatherRows, 'weather', null, 'weather', weatherUnit(weatherRows.rows));
  if (weather !== null) findings.push(...checkWeather(weather, SPIKE_OUTDOOR_K));
  const outdoor =
    weather === null
      ? null
      : {
          swing: airSwing(weather.temp.timeMs, weather.temp.values, weather.temp.use),
          daily: dailyMedians([weather.temp]),
        };

  const fansOf = (binId: string) =>
    (season.bins.find((one) => one.id === binId)?.fanIds ?? []).map((id) => samplesOf(fans, id));
  const plenumUnit = unitOf(tables.plenum);
  const plenumLogs = plenums.map((rows) => logOf(rows, `${rows.id} plenum`, rows.id, 'plenum', plenumUnit(rows.rows)));
  const plenumFiles = textColumn(tables.plenum, 'file');
  // Before the units: a swapped column is in no unit of its own quantity.
  findings.push(
    ...checkSwappedAir(
      plenumLogs,
      (row) => plenumFiles.values[plenumFiles.codes[row]],
      (path) => !saidFraction(season, path),
      weather,
    ),
  );
  for (const log of plenumLogs) {
    findings.push(...checkPlenum(log, airAt(log.rows.time, fansOf(log.rows.id)), weather, SPIKE_PLENUM_K));
  }

  const readingUnit = unitOf(tables.readings);
  const series = sensorSeries(tables.readings);
  const roster = rosterOf(series);
  const bounds = new Map<string, { fromMs: number; toMs: number } | null>();
  const checked = new Map(
    season.bins.map((bin) => {
      const samples = fansOf(bin.id);
      const its = series.filter((one) => one.bin === bin.id).map((one) => checkedOf(one, airAt(one.timeMs, samples)));
      return [bin.id, its];
    }),
  );
  const files = textColumn(tables.readings, 'file');
  const fileOf = (row: number) => files.values[files.codes[row]];
  const everySensor = [...checked.values()].flat();
  // Before the units: a swapped column is in no unit of its own quantity.
  findings.push(...checkSwappedColumns(everySensor, fileOf, (path) => units.get(path) ?? null, outdoor?.daily ?? null));
  for (const bin of season.bins) {
    const sensors = checked.get(bin.id)!;
    const said = new Map(sensors.map((sensor) => [sensor, readingUnit(sensor.series.rows)]));
    const saidUnit = (sensor: Checked) => said.get(sensor) ?? null;
    const check: BinCheck = { bin, sensors, roster, show: season.showUnits, outdoor, saidUnit };
    findings.push(...checkGrain(check), ...checkGrainGaps(check));
    bounds.set(bin.id, boundsOf(sensors.map((sensor) => sensor.series.timeMs)));
    for (const sensor of sensors) {
      sensor.series.rows.forEach((row, i) => {
        flags.readings.temp[row] |= sensor.tempBits[i];
        flags.readings.moisture[row] |= sensor.moistureBits[i];
      });
    }
  }

  findings.push(...checkDoubtedColumns(everySensor, fileOf));

  const farm = boundsOf(
    [...bounds.values()].flatMap((one) => (one === null ? [] : [Float64Array.of(one.fromMs, one.toMs)])),
  );
  for (const fan of fans) {
    const binId = binOf(season, fan.id);
    findings.push(...checkFanGaps(fan, binId, binId === null ? farm : (bounds.get(binId) ?? null)));
  }
  for (const rows of plenums) {
    findings.push(...checkLogGaps(`${rows.id} plenum`, rows.id, rows.time, bounds.get(rows.id) ?? null));
  }
  findings.push(...checkProbes(season, tables.probes, flags.probes));
  findings.push(...checkTickets(season, tables.tickets, flags.tickets), ...checkBills(tables.bills));
  if (weatherRows !== undefined) findings.push(...checkLogGaps('weather', null, weatherRows.time, farm));
  findings.push(
    ...checkSilent(season, {
      sensors: new Set(series.filter(hasValue).map((one) => `${one.bin} ${one.cable} ${one.sensor}`)),
      fans: new Set(fans.map((fan) => fan.id)),
      plenums: new Set(plenums.map((rows) => rows.id)),
      weather: weatherRows !== undefined,
    }),
  );
  return { flags, findings: inOrder(findings) };
}

function samplesOf(fans: readonly FanSeen[], id: string): FanHistory | null {
  const fan = fans.find((one) => one.id === id);
  return fan === undefined ? null : fanHistory(fan.log.time, fan.state);
}

function hasValue({ tempC, moistureWb }: { tempC: Float64Array; moistureWb: Float64Array }): boolean {
  return tempC.some(Number.isFinite) || moistureWb.some(Number.isFinite);
}

/** By bin (the farm's own last), then by time. */
function inOrder(findings: readonly Finding[]): Finding[] {
  const last = '\u{10ffff}';
  const key = (finding: Finding) => finding.binId ?? last;
  const time = (finding: Finding) => finding.fromMs ?? Number.MAX_VALUE;
  return [...findings].sort((a, b) => (key(a) < key(b) ? -1 : key(a) > key(b) ? 1 : time(a) - time(b)));
}
