import { mkdirSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { checkSeason } from '../../../src/season/checks/check-season.ts';
import { joinFlags } from '../../../src/season/join-flags.ts';
import { loadSeason } from '../../../src/season/load-season.ts';
import type { LoadedSeason, SeasonTables } from '../../../src/season/loaded.ts';
import { readSeason } from '../../../src/season/read-season.ts';
import { fillHumidity } from '../../../src/season/readers/fill-humidity.ts';
import { TableBuilder } from '../../../src/season/readers/table-builder.ts';
import { TABLES, type TableName } from '../../../src/tables/columns.ts';
import type { Logs } from './log-season.ts';
import type { SeasonDraw } from './plan.ts';
import { fanPath, PATHS, seasonText } from './season-text.ts';

const stamp = (ms: number) => `${new Date(ms).toISOString().slice(0, 16)}`;
const cell = (value: number) => (Number.isNaN(value) ? '' : String(value));

/** Through the true door: a folder of CSV files, read by the kit. */
export async function openByFiles(draw: SeasonDraw, logs: Logs, folder: string): Promise<LoadedSeason> {
  writeFolder(draw, logs, folder, true);
  return loadSeason(await readSeason(folder));
}

/** season.yaml through the kit's parser, the logs straight into its tables, then its checks: the same but for the reading of CSV. */
export async function openByTables(draw: SeasonDraw, logs: Logs, folder: string): Promise<LoadedSeason> {
  writeFolder(draw, logs, folder, false);
  const season = await readSeason(folder);
  const builders = new Map<TableName, TableBuilder>();
  for (const name of Object.keys(TABLES) as TableName[]) builders.set(name, new TableBuilder(name));
  const add = (table: TableName, ms: number, texts: Record<string, string>, numbers: Record<string, number>) => {
    const builder = builders.get(table)!;
    const row = builder.addRow();
    builder.setNumber('time', row, ms);
    for (const [column, value] of Object.entries(texts)) builder.setText(column, row, value);
    for (const [column, value] of Object.entries(numbers)) {
      builder.setNumber(column, row, value);
      builder.keepCell(row);
    }
  };
  for (const one of logs.grain) {
    const { bin, cable } = one;
    const readings = { temp_c: one.temp, moisture_wb: one.moisture / 100 };
    add(
      'readings',
      one.ms,
      { bin, cable, file: PATHS.grain },
      { sensor: one.sensor, height_m: one.heightM, ...readings },
    );
  }
  const COLUMNS = { power: 'power_w', current: 'current_a', energy: 'energy_j', state: 'on' } as const;
  const SCALES = { power: 1000, current: 1, energy: 3.6e6, state: 1 } as const;
  for (const { ms, fan, what, value } of logs.fan) {
    add('fan', ms, { fan, file: fanPath(what) }, { [COLUMNS[what]]: value * SCALES[what] });
  }
  for (const { ms, bin, temp, rh, pressure } of logs.plenum) {
    const numbers = { temp_c: temp, rh: rh / 100, static_pressure_pa: pressure };
    add('plenum', ms, { bin, file: PATHS.plenum }, numbers);
  }
  for (const { ms, temp, rh } of logs.weather) {
    add('weather', ms, { role: 'season', file: PATHS.weather }, { temp_c: temp, rh: rh / 100 });
  }
  for (const { ms, bin, direction, kg, moisture } of logs.tickets ?? []) {
    add('tickets', ms, { bin, direction, file: PATHS.tickets }, { net_kg: kg, moisture_wb: moisture / 100 });
  }
  fillHumidity(builders.get('weather')!);
  const build = () => Object.fromEntries([...builders].map(([name, one]) => [name, one.table()])) as SeasonTables;
  const checked = checkSeason(season, build());
  const flagged = joinFlags(builders, checked.flags);
  const totals = { rows: 0, cells: 0, missing: 0, rejected: 0, outside: 0, flagged };
  return { season, tables: build(), load: { files: [], rejects: [], findings: checked.findings, totals } };
}

/** A season's folder, its logs in it or only their headers. */
export function writeFolder(draw: SeasonDraw, logs: Logs, folder: string, whole: boolean): void {
  mkdirSync(join(folder, 'logs'), { recursive: true });
  writeFileSync(join(folder, 'season.yaml'), seasonText(draw, (logs.tickets ?? []).length > 0));
  const file = (path: string, header: string, lines: () => string[]) =>
    writeFileSync(join(folder, path), `${header}\n${whole ? `${lines().join('\n')}\n` : ''}`);
  file(PATHS.grain, 'time,bin,cable,sensor,t,mc', () =>
    logs.grain.map((one) =>
      [stamp(one.ms), one.bin, one.cable, one.sensor, cell(one.temp), cell(one.moisture)].join(','),
    ),
  );
  for (const what of new Set(logs.fan.map((one) => one.what))) {
    file(fanPath(what), 'time,fan,value', () =>
      logs.fan.filter((one) => one.what === what).map((one) => [stamp(one.ms), one.fan, one.value].join(',')),
    );
  }
  if (logs.plenum.length > 0) {
    file(PATHS.plenum, 'time,bin,t,rh,sp', () =>
      logs.plenum.map((one) => [stamp(one.ms), one.bin, one.temp, one.rh, one.pressure].join(',')),
    );
  }
  if (logs.tickets !== undefined && logs.tickets.length > 0) {
    const { tickets } = logs;
    file(PATHS.tickets, 'time,bin,way,kg,mc', () =>
      tickets.map((one) => [stamp(one.ms), one.bin, one.direction, one.kg, cell(one.moisture)].join(',')),
    );
  }
  file(PATHS.weather, 'time,t,rh', () => logs.weather.map((one) => [stamp(one.ms), one.temp, one.rh].join(',')));
}
