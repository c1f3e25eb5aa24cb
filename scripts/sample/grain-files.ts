import { cableReadings, within } from './cable-log.ts';
import { localText, utcText } from './calendar.ts';
import { aboveLevel, celsius, cutOut, hangOut, spike, stick } from './faults.ts';
import { byTime, longCsv, text, wideCsv } from './log-text.ts';
import { randomStream } from './random.ts';
import { type SeasonLog, tellOutside } from './season-log.ts';
import { cell, spoil } from './spoil.ts';

/** The cable files of 2024 with their faults. */
export function grainFiles(log: SeasonLog): void {
  const { farm, run, endMs, logsEnd, faults } = log;
  const chance = randomStream(farm.seed, 'faults');
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
  log.files.push(
    { path: 'logs/b1-cables.csv', text: text(wideCsv(b1, run('B1')), '\r\n') },
    { path: 'logs/cables-lane.csv.gz', text: text(cables) },
    { path: 'logs/cables-shop.csv.gz', text: text(shop) },
  );
  tellOutside(log, 'logs/b1-cables.csv', b1, () => 2);
  tellOutside(log, 'logs/cables-lane.csv.gz', b2, () => 2);
  tellOutside(log, 'logs/cables-shop.csv.gz', [...b4, ...b5, ...b6], () => 2);
}
