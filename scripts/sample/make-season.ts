import { gzipSync } from 'node:zlib';
import { cableReadings, type Reading, within } from './cable-log.ts';
import { DAY, fromLocal, isoMinute, localClock, localText, standardClock, usMinute, utcText } from './calendar.ts';
import type { FarmPlan } from './farm-types.ts';
import { aboveLevel, celsius, cutOut, hangOut, type PlantedFault, spike, stick } from './faults.ts';
import { type FanRow, fanRows, type PlenumRow, plenumRows, stationRows } from './machine-log.ts';
import { billsCsv, PROBE_DAYS, probesCsv, ticketsCsv } from './paper.ts';
import { randomStream } from './random.ts';
import { type BinRun, runBin } from './run-bin.ts';
import { binTruth, farmEnergy, seasonMonths, tariffTruth } from './truth.ts';
import { isdLite, type Weather } from './weather.ts';

/** A file of the sample, as text; `.gz` ones are packed when written. */
export interface SampleFile {
  path: string;
  text: string;
}

const num = (value: number | null, digits: number): string => (value === null ? '' : value.toFixed(digits));

/** Long cable file: one row a sensor and moment. */
export function longCsv(readings: readonly Reading[], stamp: (ms: number) => string): string[] {
  return [
    'Stamp,Bin,Cable,No,T,MC',
    ...readings.map(
      (one) => `${stamp(one.ms)},${one.bin},${one.cable},${one.sensor},${num(one.temp, 1)},${num(one.moisture, 1)}`,
    ),
  ];
}

/** Wide cable file: one row a moment, `T C1-1 … M C1-1 …`. */
export function wideCsv(readings: readonly Reading[], run: BinRun): string[] {
  const keys = run.sensors.map((one) => `${one.cable}-${one.sensor}`);
  const lines = [['DateTime', ...keys.map((key) => `T ${key}`), ...keys.map((key) => `M ${key}`)].join(',')];
  for (let i = 0; i < readings.length; i += keys.length) {
    const row = readings.slice(i, i + keys.length);
    lines.push(
      [
        usMinute(localClock(row[0].ms)),
        ...row.map((one) => num(one.temp, 1)),
        ...row.map((one) => num(one.moisture, 1)),
      ].join(','),
    );
  }
  return lines;
}

const text = (lines: readonly string[], end = '\n'): string => lines.join(end) + end;

/** Replace or add lines, counted as they stand in the file; the header is line 1. */
function spoil(
  lines: string[],
  file: string,
  changes: readonly { at: number; what: string; change: (line: string) => string | readonly string[] }[],
  faults: PlantedFault[],
): void {
  // From the end on, so that earlier line numbers stay.
  for (const { at, change } of [...changes].sort((a, b) => b.at - a.at)) {
    const made = change(lines[at - 1]);
    lines.splice(at - 1, 1, ...(typeof made === 'string' ? [made] : made));
  }
  faults.push({
    kind: 'reject',
    where: file,
    bin: null,
    quantity: null,
    fromMs: Number.NaN,
    toMs: Number.NaN,
    count: changes.length,
    expect: `in rejects.csv: ${changes.map((one) => one.what).join('; ')}`,
  });
}

const cell = (line: string, index: number, value: string): string => {
  const cells = line.split(',');
  cells[index] = value;
  return cells.join(',');
};

/** Simulate all bins of a farm. */
export function runFarm(farm: FarmPlan, weather: Weather): BinRun[] {
  return farm.bins.map((plan) =>
    runBin(
      plan,
      farm.fans,
      weather,
      farm.seed,
      fromLocal(farm.logsEnd),
      (farm.history ? (PROBE_DAYS[plan.id] ?? []) : []).map(fromLocal),
    ),
  );
}

const fanLogOf = (farm: FarmPlan, runs: readonly BinRun[], weather: Weather, everyMin: number) => {
  const energy = farmEnergy(farm, runs, weather);
  return (id: string): FanRow[] => {
    const fan = farm.fans.find((one) => one.id === id)!;
    const run = runs.find((one) => one.runs.has(id))!;
    return fanRows(
      fan,
      run.runs.get(id)!,
      energy.minutes.get(id)!,
      weather,
      farm.seed,
      run.startMs,
      fromLocal(farm.logsEnd),
      everyMin,
    );
  };
};

const byTime = <T extends { ms: number }>(rows: T[]): T[] => rows.sort((a, b) => a.ms - b.ms);

const plenumCsv = (rows: readonly PlenumRow[], stamp: (ms: number) => string): string[] => [
  'time,bin,t,rh,sp',
  ...rows.map(
    (one) => `${stamp(one.ms)},${one.bin},${one.temp.toFixed(1)},${one.rh.toFixed(1)},${one.pressure.toFixed(2)}`,
  ),
];

/** The season with all planted faults. */
export function make2024(
  farm: FarmPlan,
  weather: Weather,
  runs: readonly BinRun[],
): { files: SampleFile[]; truth: unknown; faults: PlantedFault[]; fileLines: string[] } {
  const faults: PlantedFault[] = [];
  const chance = randomStream(farm.seed, 'faults');
  const endMs = fromLocal(farm.ends) + DAY;
  const logsEnd = fromLocal(farm.logsEnd);
  const run = (id: string) => runs.find((one) => one.plan.id === id)!;
  const read = (id: string) => cableReadings(run(id), farm.seed, logsEnd);

  const b1 = read('B1');
  faults.push(stick(b1, { bin: 'B1', cable: 'C3', sensor: 4 }, 'temperature', '2024-10-19 06:00', '2024-11-09 18:00'));
  faults.push(spike(b1, { bin: 'B1' }, 'moisture', '2024-12-15', '2025-05-10', 6, [14, 24], chance));
  let b2 = read('B2');
  faults.push(stick(b2, { bin: 'B2', cable: 'C2', sensor: 3 }, 'moisture', '2024-10-08 06:00', '2024-11-08 18:00'));
  faults.push(hangOut(b2, run('B2'), 'C3', '2025-02-10 10:00'));
  let b3 = read('B3');
  faults.push(spike(b3, { bin: 'B3' }, 'temperature', '2025-01-28', '2025-05-10', 9, [30, 55], chance));
  const gap = cutOut(b3, () => true, '2025-01-20 08:00', '2025-01-26 16:00', 'B3', 'B3');
  b3 = gap.kept;
  faults.push(gap.fault);
  const b4 = read('B4');
  faults.push(celsius(b4, { bin: 'B4', cable: 'C2' }, '2024-10-18 12:00', '2024-11-05 12:00'));
  const b5 = read('B5');
  const b6 = read('B6');
  for (const [id, readings] of [
    ['B1', b1],
    ['B2', b2],
    ['B3', b3],
    ['B4', b4],
    ['B5', b5],
    ['B6', b6],
  ] as const) {
    faults.push(...aboveLevel(readings, run(id), endMs));
  }
  b2 = byTime([...b2, ...b3]);
  const cables = longCsv(b2, localText);
  // A day that the logger sent twice: the same rows once more, right behind.
  const twice = b2.filter((one) => within(one.ms, '2024-12-12', '2024-12-13'));
  const after = b2.indexOf(twice.at(-1)!) + 2;
  cables.splice(after, 0, ...longCsv(twice, localText).slice(1));
  faults.push({
    kind: 'duplicate',
    where: 'logs/cables-lane.csv.gz',
    bin: null,
    quantity: 'both',
    fromMs: twice[0].ms,
    toMs: twice.at(-1)!.ms,
    count: twice.length,
    expect: 'the second copies of one day of B2 and B3 flagged duplicate',
  });
  spoil(
    cables,
    'logs/cables-lane.csv.gz',
    [
      { at: 4021, what: 'text in a temperature cell (ERR)', change: (line) => cell(line, 4, 'ERR') },
      { at: 9112, what: 'text in a moisture cell (open circuit)', change: (line) => cell(line, 5, 'open circuit') },
      { at: 15007, what: 'unknown bin B9', change: (line) => [line, cell(line, 1, 'B9')] },
      {
        at: 21500,
        what: 'a row cut off after the bin',
        change: (line) => [line, line.split(',').slice(0, 2).join(',')],
      },
      {
        at: 30333,
        what: 'an unreadable time (2024-13-45 99:10)',
        change: (line) => [line, cell(line, 0, '2024-13-45 99:10')],
      },
    ],
    faults,
  );
  const shop = longCsv(byTime([...b4, ...b5, ...b6]), utcText);

  const fanLog = fanLogOf(farm, runs, weather, 10);
  const fanLog15 = fanLogOf(farm, runs, weather, 15);
  const f1 = fanLog15('F1');
  const died = f1.filter((row) => row.ms >= fromLocal('2024-11-07 14:00'));
  for (const row of died) row.amps = 0;
  faults.push({
    kind: 'silent',
    where: 'fan F1',
    bin: 'B1',
    quantity: null,
    fromMs: died[0].ms,
    toMs: Math.min(endMs, died.at(-1)!.ms),
    count: died.filter((row) => row.ms < endMs).length,
    expect: 'the current reads 0 A while the energy meter runs on: hours and kWh from the meter',
  });
  const resetAt = fromLocal('2024-10-29 11:00');
  const stood = f1.filter((row) => row.ms < resetAt).at(-1)!.kwh!;
  for (const row of f1) if (row.ms >= resetAt) row.kwh = Math.round(10 * (row.kwh! - stood)) / 10;
  faults.push({
    kind: 'meter-reset',
    where: 'fan F1',
    bin: 'B1',
    quantity: null,
    fromMs: resetAt,
    toMs: resetAt,
    count: 1,
    expect: 'the energy meter jumped back to 0 and was reset; no energy lost or made up but that of the interval',
  });
  const f1Lines = [
    'time,fan,amps,kwh',
    ...f1.map((row) => `${isoMinute(standardClock(row.ms))},F1,${num(row.amps, 1)},${num(row.kwh, 1)}`),
  ];
  let lane = byTime(['F2A', 'F2B', 'F3', 'F6'].flatMap(fanLog));
  const fanGap = cutOut(lane, (row) => row.fan === 'F6', '2025-02-03 09:00', '2025-02-06 17:00', 'fan F6', 'B6');
  lane = fanGap.kept;
  faults.push(fanGap.fault);
  const laneLines = [
    'time,fan,kw,amps',
    ...lane.map((row) => `${localText(row.ms)},${row.fan},${num(row.kw, 2)},${num(row.amps, 1)}`),
  ];
  spoil(
    laneLines,
    'logs/fans-lane.csv.gz',
    [
      { at: 50_021, what: 'unknown fan F9', change: (line) => [line, cell(line, 1, 'F9')] },
      { at: 60_002, what: 'an unreadable time (??)', change: (line) => [line, cell(line, 0, '??')] },
    ],
    faults,
  );
  const shopFans = byTime(['F4', 'F5'].flatMap(fanLog15));
  const shopFanLines = [
    'time,fan,on,hours',
    ...shopFans.map((row) => `${utcText(row.ms)},${row.fan},${num(row.state, 0)},${num(row.hours, 2)}`),
  ];

  const plenum = byTime(['B1', 'B3', 'B4', 'B5', 'B6'].flatMap((id) => plenumRows(run(id), farm.seed, logsEnd)));
  const plenumLines = plenumCsv(plenum, localText);
  spoil(
    plenumLines,
    'logs/plenum.csv',
    [
      { at: 1203, what: 'text in a temperature cell (ERR)', change: (line) => cell(line, 2, 'ERR') },
      { at: 5208, what: 'a row cut off in the middle', change: (line) => [line, line.slice(0, 12)] },
      { at: 9001, what: 'text in a humidity cell (**)', change: (line) => cell(line, 3, '**') },
    ],
    faults,
  );
  const b2Plenum = plenumRows(run('B2'), farm.seed, logsEnd);
  const daylight = b2Plenum.filter((one) => localText(one.ms) !== isoMinute(standardClock(one.ms)) && one.ms < endMs);
  faults.push({
    kind: 'clock',
    where: 'logs/plenum-b2.csv',
    bin: 'B2',
    quantity: null,
    fromMs: b2Plenum[0].ms,
    toMs: endMs,
    count: daylight.length,
    expect:
      "this logger keeps standard time while the file is read as local time: an hour early under daylight saving (count), one stamp in spring's missing hour, no hour twice in fall; advice: time_zone: local standard",
  });
  faults.push({
    kind: 'repeated-hour',
    where: 'logs/fans-lane.csv.gz, logs/plenum.csv',
    bin: null,
    quantity: null,
    fromMs: Date.UTC(2024, 10, 3, 6),
    toMs: Date.UTC(2024, 10, 3, 8),
    count: lane.filter((row) => row.ms >= Date.UTC(2024, 10, 3, 7) && row.ms < Date.UTC(2024, 10, 3, 8)).length,
    expect:
      'the hour from 1 to 2 in the morning of 3 November stands twice, and rightly: NO duplicate, NO lost fan time',
  });

  const station = stationRows(weather, farm.seed, fromLocal(farm.starts) - 2 * DAY, logsEnd);
  const stationLines = [
    'time,temp,rh,hpa',
    ...station.map((row) => `${localText(row.ms)},${row.temp.toFixed(1)},${row.rh},${row.hpa.toFixed(1)}`),
  ];
  const beyond = <T extends { ms: number }>(rows: readonly T[], cells: (row: T) => number) =>
    rows.filter((row) => row.ms >= endMs || row.ms < fromLocal(farm.starts)).reduce((sum, row) => sum + cells(row), 0);
  const fanCells = (row: FanRow) =>
    [row.amps, row.kw, row.kwh, row.state, row.hours].filter((value) => value !== null).length;
  const outside: [string, number][] = [
    ['logs/b1-cables.csv', beyond(b1, () => 2)],
    ['logs/cables-lane.csv.gz', beyond(b2, () => 2)],
    ['logs/cables-shop.csv.gz', beyond([...b4, ...b5, ...b6], () => 2)],
    ['logs/fan-f1.csv.gz', beyond(f1, fanCells)],
    ['logs/fans-lane.csv.gz', beyond(lane, fanCells)],
    ['logs/fans-shop.csv.gz', beyond(shopFans, fanCells)],
    ['logs/plenum.csv', beyond(plenum, () => 3)],
    ['weather/station.csv', beyond(station, () => 3)],
  ];
  for (const [where, count] of outside) {
    faults.push({
      kind: 'outside',
      where,
      bin: null,
      quantity: null,
      fromMs: endMs,
      toMs: logsEnd,
      count,
      expect:
        'readings outside starts … ends are counted and left out (count: cells with a reading, times and ids not counted)',
    });
  }

  const energy = farmEnergy(farm, runs, weather);
  const months = seasonMonths(farm);
  const truth = {
    madeBy: 'scripts/make-sample.ts; the kit does not read this file',
    seed: farm.seed,
    season: farm.title,
    bins: runs.map((one) => binTruth(farm, one, energy, months)),
    tariffs: tariffTruth(farm, energy, months),
    faults: faults.map((one) => ({
      ...one,
      fromMs: Number.isNaN(one.fromMs) ? null : one.fromMs,
      toMs: Number.isNaN(one.toMs) ? null : one.toMs,
    })),
  };
  const history: SampleFile[] = [];
  if (farm.history) {
    for (let year = farm.history[0]; year <= farm.history[1]; year++) {
      history.push({ path: `weather/history/999901-99999-${year}.gz`, text: isdLite(weather, year, farm.seed) });
    }
  }
  return {
    files: [
      { path: 'logs/b1-cables.csv', text: text(wideCsv(b1, run('B1')), '\r\n') },
      { path: 'logs/cables-lane.csv.gz', text: text(cables) },
      { path: 'logs/cables-shop.csv.gz', text: text(shop) },
      { path: 'logs/fan-f1.csv.gz', text: text(f1Lines) },
      { path: 'logs/fans-lane.csv.gz', text: text(laneLines) },
      { path: 'logs/fans-shop.csv.gz', text: text(shopFanLines) },
      { path: 'logs/plenum.csv', text: text(plenumLines) },
      { path: 'logs/plenum-b2.csv', text: text(plenumCsv(b2Plenum, (ms) => isoMinute(standardClock(ms)))) },
      { path: 'weather/station.csv', text: text(stationLines) },
      ...history,
      { path: 'tickets.csv', text: ticketsCsv(runs, farm.seed) },
      { path: 'probes.csv', text: probesCsv(runs, farm.seed) },
      { path: 'bills.csv', text: billsCsv(farm, energy.loads, months, farm.seed) },
    ],
    truth,
    faults,
    fileLines: FILE_LINES_2024,
  };
}

const FILE_LINES_2024 = [
  '  - path: logs/b1-cables.csv',
  '    holds: grain',
  '    bin: B1',
  '    shape: wide',
  '    columns:',
  '      time: DateTime',
  '      temperature: { headers: "T {cable}-{sensor}", unit: degF }',
  '      moisture: { headers: "M {cable}-{sensor}", unit: "%" }',
  '    time_format: MM/dd/yyyy hh:mm a',
  '  - path: logs/cables-*.csv.gz # the lane file in local time, the shop file in UTC (its stamps end in Z)',
  '    holds: grain',
  '    shape: long',
  '    columns: { time: Stamp, bin: Bin, cable: Cable, sensor: No, temperature: { column: T, unit: degF }, moisture: { column: MC, unit: "%" } }',
  '  - path: logs/fan-f1.csv.gz',
  '    holds: fan',
  '    time_zone: local standard',
  '    columns: { time: time, fan: fan, current: { column: amps, unit: A }, energy: { column: kwh, unit: kWh } }',
  '  - path: logs/fans-lane.csv.gz',
  '    holds: fan',
  '    columns: { time: time, fan: fan, power: { column: kw, unit: kW }, current: { column: amps, unit: A } }',
  '  - path: logs/fans-shop.csv.gz',
  '    holds: fan',
  '    columns: { time: time, fan: fan, state: on, run_hours: { column: hours, unit: h } }',
  '  - path: logs/plenum*.csv',
  '    holds: plenum',
  '    columns: { time: time, bin: bin, temperature: { column: t, unit: degF }, humidity: { column: rh, unit: "%" }, static_pressure: { column: sp, unit: inH2O } }',
  '  - path: weather/station.csv',
  '    holds: weather',
  '    columns: { time: time, temperature: { column: temp, unit: degF }, humidity: { column: rh, unit: "%" }, pressure: { column: hpa, unit: hPa } }',
  '  - path: weather/history/999901-99999-*.gz',
  '    holds: weather',
  '    format: isd-lite',
  '    role: history',
  '  - path: tickets.csv',
  '    holds: tickets',
  '    columns: { time: date, bin: bin, direction: way, net: { column: lb, unit: lb }, moisture: { column: mc, unit: "%" } }',
  '  - path: probes.csv',
  '    holds: probes',
  '    columns: { time: date, bin: bin, height: { column: ft, unit: ft }, from_centre: { column: r, unit: ft }, moisture: { column: mc, unit: "%" }, temperature: { column: t, unit: degF } }',
  '  - path: bills.csv',
  '    holds: bills',
  '    columns: { from: from, to: to, tariff: tariff, energy: { column: kwh, unit: kWh }, demand: { column: kw, unit: kW }, amount: { column: usd, unit: USD } }',
];

/** A smaller season before, without planted faults. */
export function make2023(
  farm: FarmPlan,
  weather: Weather,
  runs: readonly BinRun[],
): { files: SampleFile[]; truth: unknown; fileLines: string[] } {
  const logsEnd = fromLocal(farm.logsEnd);
  const cables = byTime(runs.flatMap((run) => cableReadings(run, farm.seed, logsEnd)));
  const fanLog = fanLogOf(farm, runs, weather, 15);
  const fans = byTime(farm.fans.flatMap((fan) => fanLog(fan.id)));
  const plenum = byTime(runs.flatMap((run) => plenumRows(run, farm.seed, logsEnd)));
  const station = stationRows(weather, farm.seed, fromLocal(farm.starts), logsEnd);
  const energy = farmEnergy(farm, runs, weather);
  const months = seasonMonths(farm);
  return {
    files: [
      { path: 'logs/cables.csv.gz', text: text(longCsv(cables, localText)) },
      {
        path: 'logs/fans.csv.gz',
        text: text([
          'time,fan,amps,kwh',
          ...fans.map((row) => `${localText(row.ms)},${row.fan},${num(row.amps, 1)},${num(row.kwh, 1)}`),
        ]),
      },
      { path: 'logs/plenum.csv.gz', text: text(plenumCsv(plenum, localText)) },
      {
        path: 'weather/station.csv',
        text: text([
          'time,temp,rh,hpa',
          ...station.map((row) => `${localText(row.ms)},${row.temp.toFixed(1)},${row.rh},${row.hpa.toFixed(1)}`),
        ]),
      },
      { path: 'tickets.csv', text: ticketsCsv(runs, farm.seed) },
      { path: 'bills.csv', text: billsCsv(farm, energy.loads, months, farm.seed) },
    ],
    truth: {
      madeBy: 'scripts/make-sample.ts; the kit does not read this file',
      seed: farm.seed,
      season: farm.title,
      bins: runs.map((run) => binTruth(farm, run, energy, months)),
      tariffs: tariffTruth(farm, energy, months),
      faults: [],
    },
    fileLines: [
      '  - path: logs/cables.csv.gz',
      '    holds: grain',
      '    columns: { time: Stamp, bin: Bin, cable: Cable, sensor: No, temperature: { column: T, unit: degF }, moisture: { column: MC, unit: "%" } }',
      '  - path: logs/fans.csv.gz',
      '    holds: fan',
      '    columns: { time: time, fan: fan, current: { column: amps, unit: A }, energy: { column: kwh, unit: kWh } }',
      '  - path: logs/plenum.csv.gz',
      '    holds: plenum',
      '    columns: { time: time, bin: bin, temperature: { column: t, unit: degF }, humidity: { column: rh, unit: "%" }, static_pressure: { column: sp, unit: inH2O } }',
      ...FILE_LINES_2024.slice(
        FILE_LINES_2024.indexOf('  - path: weather/station.csv'),
        FILE_LINES_2024.indexOf('  - path: weather/history/999901-99999-*.gz'),
      ),
      ...FILE_LINES_2024.slice(
        FILE_LINES_2024.indexOf('  - path: tickets.csv'),
        FILE_LINES_2024.indexOf('  - path: probes.csv'),
      ),
      ...FILE_LINES_2024.slice(FILE_LINES_2024.indexOf('  - path: bills.csv')),
    ],
  };
}

/** Bytes of a file as it is written: gzip without a time in its header, so that the same text gives the same bytes. */
export const fileBytes = (file: SampleFile): Buffer =>
  file.path.endsWith('.gz') ? gzipSync(Buffer.from(file.text), { level: 9 }) : Buffer.from(file.text);
