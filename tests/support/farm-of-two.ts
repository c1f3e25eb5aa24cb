import { readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { makeSeasonFolder, SMALL_SEASON } from './season-folder.ts';

/**
 * A season folder of two bins and 30 days with all that season.yaml can say of money: corn run to dry, soybeans to be cooled, scale
 * tickets, a bill. Small, so that its pages can be read through. The last digit of a machine's exponentials and sines moves nothing
 * that is shown: no two numbers that are held against each other are alike, and no log has two levels alone to find a threshold between.
 */
export function makeFarmOfTwo(folder: string): void {
  makeSeasonFolder(folder, { ...SMALL_SEASON, bins: 2, sensors: 5 });
  const path = join(folder, 'season.yaml');
  const [head, first, second] = readFileSync(path, 'utf8').split(/(?= {2}- id: B\d)/);
  const text = [
    head.replace('site:', `prepared_for: Thistle Reach (invented)\n${PRICES}site:`),
    first.replace('goal: dry', 'goal: dry\n    managed_as: two days on, one off'),
    second
      .replace('name: Bin 2', 'name: Long shed')
      .replace('crop: corn', 'crop: soybean')
      .replace('target_moisture: 15 %', 'target_moisture: 13 %, target_temperature: 45 degF')
      .replace('diameter: 36 ft', 'diameter: 33 ft')
      .replace('goal: dry', 'goal: cool')
      .replace(/(?<start>id: F2,.*power_factor: )0.85/, '$<start>0.8'),
  ].join('');
  writeFileSync(path, `${text.replaceAll('nameplate: 15 hp,', 'nameplate: 15 hp, running_above: 5 A,')}${FILES}`);
  writeFileSync(join(folder, 'tickets.csv'), TICKETS);
  writeFileSync(
    join(folder, 'bills.csv'),
    'from,to,tariff,kwh,kw,usd\n2024-09-01,2024-10-01,farm,16240,31.5,1688.40\n',
  );
}

const PRICES = `prices:
  corn: { price: 4.35 USD/bu, base_moisture: 15 %, shrink: 1.4 %/point, discount: 0.03 USD/bu/point }
  soybean: { price: 10.60 USD/bu, base_moisture: 13 %, shrink: 1.3 %/point, discount: 0.12 USD/bu/point }
drying_alternative: { commercial: 0.05 USD/bu/point }
`;

const FILES = `  - path: tickets.csv
    holds: tickets
    columns: { time: date, bin: bin, direction: way, net: { column: lb, unit: lb }, moisture: { column: mc, unit: "%" } }
  - path: bills.csv
    holds: bills
    columns: { from: from, to: to, tariff: tariff, energy: { column: kwh, unit: kWh }, demand: { column: kw, unit: kW }, amount: { column: usd, unit: USD } }
`;

/** 16 loads that fill the corn bin, one short of what its volume holds. */
const TICKETS = `date,bin,way,lb,mc\n${Array.from(
  { length: 16 },
  (_, i) =>
    `2024-09-04 ${String(8 + Math.floor(i / 2)).padStart(2, '0')}:${i % 2 === 0 ? '05' : '35'},B1,in,${53_000 + 40 * i},${(17.8 + (i % 5) / 10).toFixed(1)}\n`,
).join('')}`;
