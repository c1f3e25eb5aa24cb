import { DAY, fromLocal, isoMinute, localText, standardClock } from './calendar.ts';
import { byTime, plenumCsv, stationCsv, text } from './log-text.ts';
import { plenumRows, stationRows } from './machine-log.ts';
import { type SeasonLog, tellOutside } from './season-log.ts';
import { cell, spoil } from './spoil.ts';
import { isdLite } from './weather.ts';

/** Plenum, station and past years of 2024, with their faults. */
export function airFiles(log: SeasonLog): void {
  const { farm, weather, run, endMs, logsEnd, faults } = log;
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
  const station = stationRows(weather, farm.seed, fromLocal(farm.starts) - 2 * DAY, logsEnd);
  log.files.push(
    { path: 'logs/plenum.csv', text: text(plenumLines) },
    { path: 'logs/plenum-b2.csv', text: text(plenumCsv(b2Plenum, (ms) => isoMinute(standardClock(ms)))) },
    { path: 'weather/station.csv', text: text(stationCsv(station)) },
  );
  tellOutside(log, 'logs/plenum.csv', plenum, () => 3);
  tellOutside(log, 'weather/station.csv', station, () => 3);
  if (farm.history === null) return;
  for (let year = farm.history[0]; year <= farm.history[1]; year++) {
    log.files.push({ path: `weather/history/999901-99999-${year}.gz`, text: isdLite(weather, year, farm.seed) });
  }
}
