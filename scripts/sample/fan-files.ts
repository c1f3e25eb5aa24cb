import { fromLocal, isoMinute, localText, standardClock, utcText } from './calendar.ts';
import { cutOut } from './faults.ts';
import { byTime, num, text } from './log-text.ts';
import type { FanRow } from './machine-log.ts';
import { fanLogOf } from './run-farm.ts';
import { type SeasonLog, tellOutside } from './season-log.ts';
import { cell, spoil } from './spoil.ts';

/** The fan files of 2024 with their faults. */
export function fanFiles(log: SeasonLog): void {
  const { farm, weather, runs, endMs, faults } = log;
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
  log.files.push(
    { path: 'logs/fan-f1.csv.gz', text: text(f1Lines) },
    { path: 'logs/fans-lane.csv.gz', text: text(laneLines) },
    { path: 'logs/fans-shop.csv.gz', text: text(shopFanLines) },
  );
  const fanCells = (row: FanRow) =>
    [row.amps, row.kw, row.kwh, row.state, row.hours].filter((value) => value !== null).length;
  tellOutside(log, 'logs/fan-f1.csv.gz', f1, fanCells);
  tellOutside(log, 'logs/fans-lane.csv.gz', lane, fanCells);
  tellOutside(log, 'logs/fans-shop.csv.gz', shopFans, fanCells);
}
