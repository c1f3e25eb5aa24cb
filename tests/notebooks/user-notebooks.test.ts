import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { max, mean, median, min, sampleStandardDeviation } from 'simple-statistics';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import type { NotebookInput } from '../../src/notebook.ts';
import { renderPages } from '../../src/report/html/pages.ts';
import { Units } from '../../src/report/units.ts';
import { integers } from '../../src/tables/arrow.ts';
import { SMALL_SEASON } from '../support/season-folder.ts';
import byFrame from './user/by-frame.ts';
import byVerbs from './user/by-verbs.ts';
import { localOf, type TwoBins, tableOf, twoBins, whole } from './user/two-bins.ts';

// Notebooks as their users write them, on logs that this file reads again by itself: split lines, the runtime's own calendar, and
// statistics by the library simple-statistics. Nothing of the kit makes an expected value here.
interface Row {
  ms: number;
  day: string;
  hour: number;
  cable: string;
  /** NaN where a check of the loader does not believe it: which ones those are is not this test's question */
  tempF: number;
  moisturePct: number;
}

/** A bin's log, line by line. The readings table has the lines of all bins in the order of their files. */
function rowsOf(id: 'B1' | 'B2'): Row[] {
  const { readings } = input.loaded.tables;
  const flags = { temp: integers(readings, 'temp_flags'), moisture: integers(readings, 'moisture_flags') };
  const lines = linesOf(id);
  const first = id === 'B1' ? 0 : linesOf('B1').length;
  return lines.map((line, i) => {
    const [time, , cable, , t, mc] = line.split(',');
    const ms = Date.parse(time);
    const believed = (of: Int16Array, text: string) => (of[first + i] === 0 ? Number(text) : Number.NaN);
    const tempF = believed(flags.temp, t);
    return { ms, ...localOf(ms), cable, tempF, moisturePct: believed(flags.moisture, mc) };
  });
}

function linesOf(id: string): string[] {
  return readFileSync(join(bins.folder, 'logs', `${id}.csv`), 'utf8')
    .trim()
    .split('\n')
    .slice(1);
}

/** What is there. */
const temps = (rows: readonly Row[]) => rows.map(({ tempF }) => tempF).filter((value) => !Number.isNaN(value));
const moistures = (rows: readonly Row[]) =>
  rows.map(({ moisturePct }) => moisturePct).filter((value) => !Number.isNaN(value));

function groups(rows: readonly Row[], key: (row: Row) => string): Map<string, Row[]> {
  const out = new Map<string, Row[]>();
  for (const row of rows) out.set(key(row), [...(out.get(key(row)) ?? []), row]);
  return out;
}

let bins: TwoBins;
let input: NotebookInput;

beforeAll(async () => {
  bins = await twoBins();
  input = bins.input;
});
afterAll(() => bins?.clear());

const bin1 = () => rowsOf('B1');
const meanC = (rows: readonly Row[]) => ((mean(temps(rows)) - 32) * 5) / 9;
describe('a notebook by verbs', () => {
  it('tells means, lowest and counts of each cable, in the page’s own kinds', async () => {
    const page = await byVerbs.page(input);
    const { columns, rows } = tableOf(page, 'By cable');
    expect(columns.map(({ quantity }) => quantity)).toEqual([null, 'count', 'temperature', 'moisture']);
    const cables = groups(bin1(), ({ cable }) => cable);
    expect(rows).toHaveLength(cables.size);
    for (const row of rows) {
      const of = cables.get(row.cable as string) ?? [];
      expect(row.readings).toBe(of.length);
      expect(row.mean_temp_f).toBeCloseTo(meanC(of), 9);
      expect(row.driest_moisture_pct).toBeCloseTo(min(moistures(of)) / 100, 12);
    }
    const [warmest] = [...cables].sort((a, b) => meanC(b[1]) - meanC(a[1]));
    expect(page.answer).toBe(`Cable ${warmest[0]} of Bin 1 is the warmest of ${cables.size}.`);
  });

  it('cuts days and hours by the site’s clock, the day that autumn makes longer among them', async () => {
    const page = await byVerbs.page(input);
    const days = groups(bin1(), ({ day, cable }) => `${day} ${cable}`);
    const { columns, rows } = tableOf(page, 'Days');
    expect(columns[0].quantity).toBe('day');
    expect(rows).toHaveLength(days.size);
    // 3 November 2024: clocks went back at 2:00, so the day has 25 hours.
    expect(days.get('2024-11-03 C1')).toHaveLength(25 * SMALL_SEASON.sensors);
    for (const row of rows) {
      const of = days.get(`${localOf(row.day as number).day} ${row.cable}`) ?? [];
      // A day of which no reading is believed is told as missing, not as a number.
      if (temps(of).length === 0) expect(row.temp_f).toEqual({ value: null, why: 'Not known.' });
      else expect(row.temp_f).toBeCloseTo(meanC(of), 9);
    }
    expect(rows.filter(({ temp_f }) => typeof temp_f === 'number').length).toBeGreaterThan(10);
    const hours = groups(bin1(), ({ hour }) => String(hour));
    for (const row of tableOf(page, 'Hours').rows) {
      const of = hours.get(String(row.hour)) ?? [];
      expect(row.temp_f).toBeCloseTo(meanC(of), 9);
    }
  });

  it('is drawn whole, with a text alternative that tells the range', async () => {
    const page = await byVerbs.page(input);
    const html = whole(page);
    const groupsOfDays = [...groups(bin1(), ({ day, cable }) => `${day} ${cable}`).values()];
    const days = groupsOfDays.map(temps).flatMap((of) => (of.length === 0 ? [] : [mean(of)]));
    const [figure] = page.sections.flatMap(({ figures = [] }) => figures);
    expect(figure.alt).toContain(`From ${Math.round(min(days))} °F (`);
    expect(figure.alt).toContain(`to ${Math.round(max(days))} °F (`);
    expect(figure.notShown).toBe(
      `${groupsOfDays.length - days.length} of ${groupsOfDays.length} rows not shown: no number.`,
    );
    expect(html).toContain('<h2 id="by-day');
  });

  it('is told in the units of its reader, from the same lines', async () => {
    const { season } = input.loaded;
    const si = new Units('si', season.currency, season.site.timeZone);
    const page = await byVerbs.page({ ...input, units: si });
    // The columns have other names there, so the notebook says which it lacks, and where.
    expect(renderPages([page])[0].failures.join()).toMatch(/by-verbs\.ts:\d+: Invalid column reference: "d\.temp_f"/);
    const frames = await byFrame.page({ ...input, units: si });
    expect(renderPages([frames])[0].failures.join()).toMatch(
      /by-frame\.ts:\d+.*there is no column temp_f; the rows have .*temp_c/,
    );
  });
});

describe('a notebook by data frames', () => {
  it('describes what the log holds as simple-statistics does', async () => {
    const page = await byFrame.page(input);
    const { rows } = tableOf(page, 'Bin 1, all readings');
    const all = temps(bin1());
    const said = Object.fromEntries(rows.map((row) => [row.row, row]));
    expect(Object.keys(said)).toEqual(['count', 'mean', 'std', 'min', 'median', 'max']);
    expect(said.count.temp_f).toBe(all.length.toLocaleString('en-US'));
    // Said to the degree; a spread is a difference, to the tenth.
    expect(said.mean.temp_f).toBe(`${Math.round(mean(all))} °F`);
    expect(said.median.temp_f).toBe(`${Math.round(median(all))} °F`);
    expect(said.min.temp_f).toBe(`${Math.round(min(all))} °F`);
    expect(said.max.temp_f).toBe(`${Math.round(max(all))} °F`);
    expect(said.std.temp_f).toBe(`${sampleStandardDeviation(all).toFixed(1)} °F`);
    expect(said.std.moisture_pct).toBe(`${sampleStandardDeviation(moistures(bin1())).toFixed(1)} points`);
    whole(page);
  });

  it('keeps groups of a frame as rows', async () => {
    const { rows } = tableOf(await byFrame.page(input), 'Wettest hours');
    const of = (id: 'B1' | 'B2') => mean(moistures(rowsOf(id))) / 100;
    expect(rows.map(({ bin_name }) => bin_name)).toEqual(['Bin 1', 'Bin 2']);
    expect(rows[0].moisture_pct_mean).toBeCloseTo(of('B1'), 9);
    expect(rows[1].moisture_pct_mean).toBeCloseTo(of('B2'), 9);
  });
});
