import { mkdtempSync, readFileSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { max, mean, median, min, sampleStandardDeviation } from 'simple-statistics';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import firstLook from '../../notebooks/first-look.ts';
import { madeBy, unitsOf } from '../../scripts/review/made-by.ts';
import type { BinModel } from '../../src/analysis/model/model-types.ts';
import { reviewSeason } from '../../src/analysis/review-season.ts';
import { type NotebookInput, notebook } from '../../src/notebook.ts';
import { renderPages } from '../../src/report/html/pages.ts';
import type { Page, Table } from '../../src/report/page.ts';
import { Units } from '../../src/report/units.ts';
import { loadSeason } from '../../src/season/load-season.ts';
import { readSeason } from '../../src/season/read-season.ts';
import { integers } from '../../src/tables/arrow.ts';
import { makeSeasonFolder, SMALL_SEASON } from '../support/season-folder.ts';
import { statedModel } from '../support/stated-model.ts';
import byFrame from './user/by-frame.ts';
import byVerbs from './user/by-verbs.ts';
import ownRule from './user/own-rule.ts';

// Three notebooks as their users write them, on logs that this file reads again by itself: split lines, the runtime's own calendar, and
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

const clock = new Intl.DateTimeFormat('en-CA', {
  timeZone: 'America/Chicago',
  year: 'numeric',
  month: '2-digit',
  day: '2-digit',
  hour: '2-digit',
  hourCycle: 'h23',
});

function localOf(ms: number): { day: string; hour: number } {
  const part = Object.fromEntries(clock.formatToParts(ms).map(({ type, value }) => [type, value]));
  return { day: `${part.year}-${part.month}-${part.day}`, hour: Number(part.hour) };
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
  return readFileSync(join(work, 'logs', `${id}.csv`), 'utf8')
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

const work = mkdtempSync(join(tmpdir(), 'fanbook-user-'));
let input: NotebookInput;
let fanHours: number;

beforeAll(async () => {
  ({ fanHours } = makeSeasonFolder(work, { ...SMALL_SEASON, bins: 2, hours: 24 * 34 }));
  const loaded = await loadSeason(await readSeason(work));
  input = { loaded, review: reviewSeason(loaded), units: unitsOf(loaded), made: madeBy(loaded, 'a test', 0) };
});
afterAll(() => rmSync(work, { recursive: true, force: true }));

const bin1 = () => rowsOf('B1');
const tableOf = (page: Page, caption: string): Table => {
  const found = page.sections.flatMap(({ tables = [] }) => tables).find((one) => one.caption === caption);
  if (found === undefined)
    throw new Error(
      `no table ${caption} among ${page.sections.flatMap(({ tables = [] }) => tables.map((one) => one.caption))}`,
    );
  return found;
};
const meanC = (rows: readonly Row[]) => ((mean(temps(rows)) - 32) * 5) / 9;
const whole = (page: Page) => {
  const [{ html, failures }] = renderPages([page]);
  expect(failures).toEqual([]);
  return html;
};

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

// A bed as a fit would leave it, so that nothing waits for one: what a clock's rule costs hangs on hours, power and tariff alone.
const model = statedModel({ flowM3S: 5, isotherm: 'modified Henderson D245.5' });
const withBed = (of: BinModel) => ({ ...input, beds: { get: () => of, keep: () => {} } });

describe('a notebook with a rule of its own', () => {
  it('costs what its hours cost by the tariff', async () => {
    const page = await ownRule.page(withBed(model));
    const [early, half, logged] = tableOf(page, 'Three ways').rows;
    // From filling, local midnight of 4 October, to the last row of the log.
    const firstMs = Date.UTC(2024, 9, 4, 5);
    const hours = Array.from({ length: 24 * 34 - 1 }, (_, h) => localOf(firstMs + h * 3_600_000).hour);
    const kw = (Math.sqrt(3) * 230 * 38.5 * 0.85) / 1000;
    const price = (hour: number) => (hour >= 22 || hour < 6 ? 0.08 : 0.11);
    const run = hours.filter((hour) => hour >= 4 && hour < 9);
    const money = (of: readonly number[], share: number) => of.reduce((sum, hour) => sum + share * kw * price(hour), 0);
    expect(early.fanHours).toBe(run.length);
    expect(early.energy).toBeCloseTo(run.length * kw, 6);
    expect(early.cost).toMatchObject({ value: expect.closeTo(money(run, 1), 6) });
    expect(half.fanHours).toBe(hours.length / 2);
    expect(half.cost).toMatchObject({ value: expect.closeTo(money(hours, 0.5), 6) });
    // As the log's samples say it, each on until the next.
    const on = readFileSync(join(work, 'logs', 'fans.csv'), 'utf8')
      .split('\n')
      .filter((line) => line.includes(',F1,38.5')).length;
    expect(logged.fanHours).toBeCloseTo(on, 6);
    expect(page.answer).toContain(`Before breakfast runs ${run.length} h`);
    expect(whole(page)).toContain('by the model');
  });

  it('is withheld where the bed is not trusted, and says why in the answer and the warnings', async () => {
    const page = await ownRule.page(withBed({ ...model, trusted: false, why: 'The fan’s clock cannot be.' }));
    expect(page.answer).toBe('Can’t tell: The fan’s clock cannot be.');
    expect(page.warnings.join()).toContain('withheld. The fan’s clock cannot be.');
    expect(page.sections.flatMap(({ tables = [] }) => tables)).toEqual([]);
  });
});

describe('a notebook with a rule of the kit as it sets it', () => {
  const page = (ways: readonly unknown[]) =>
    notebook({ title: 'Clocks', question: 'Which clock?' }, ({ bins, tryWays, answer, table }) => {
      const tried = tryWays(bins[0], ways as never);
      answer`${tried.ways.length} ways.`;
      table(tried.ways, { title: 'Clocks' });
    }).page(withBed(model));

  it('runs its hours, beside the rule as it is usual, each by its name in words', async () => {
    const early = {
      id: 'early',
      title: 'Early',
      fan: (now: { localHour: number }) => now.localHour >= 4 && now.localHour < 9,
    };
    const clock = { id: 'night-hours', parameters: { from: 4, to: '9 h' } };
    const rows = tableOf(await page([early, clock, 'night-hours', 'night-hours with from 22 h']), 'Clocks').rows;
    expect(rows.map(({ way }) => way)).toEqual([
      'Early',
      'Night hours, from 4 h',
      'Night hours',
      'Night hours, from 22 h',
    ]);
    expect({ ...rows[1], way: 'Early' }).toEqual(rows[0]);
    expect(Number(rows[3].fanHours)).toBeLessThan(Number(rows[2].fanHours));
    // Kept from the time before, under the same name.
    expect(tableOf(await page([clock]), 'Clocks').rows).toEqual([rows[1]]);
  });

  it('says all that is wrong with its ways', async () => {
    const [{ failures }] = renderPages([await page([{ id: 'night-hours', parameters: { form: 4, to: 30 } }])]);
    const told = failures.join();
    expect(told).toContain('night-hours has no parameter "form"');
    expect(told).toContain('night-hours: to is 30; 0 h to 24 h is allowed, 9 h is usual.');
  });
});

describe('the first look', () => {
  it('tells what the log’s samples say, in the units of either reader', async () => {
    const { season } = input.loaded;
    for (const system of ['us', 'si'] as const) {
      const units = new Units(system, season.currency, season.site.timeZone);
      const page = await firstLook.page({ ...withBed(model), units });
      expect(whole(page)).toContain(system === 'us' ? '°F' : '°C');
      // As the made log has them, each sample on until the next.
      expect(page.answer).toMatch(new RegExp(`^Bin 1 ran ${fanHours} h`));
      expect(page.sections.map(({ title }) => title)).toEqual([
        'Every bin',
        'What its cables read',
        'The days in numbers',
        'Another rule',
      ]);
      const ways = tableOf(page, 'Bin 1, three ways to run its fans').rows;
      expect(ways.map(({ way }) => way)).toEqual(['As logged', 'Humidity limit', 'Dry afternoons']);
      expect(ways[0].fanHours).toBeCloseTo(fanHours, 6);
    }
  });

  it('goes on where a bed is not trusted', async () => {
    const page = await firstLook.page(withBed({ ...model, trusted: false, why: 'The depth cannot be.' }));
    expect(whole(page)).toContain('Not told for Bin 1: The depth cannot be.');
  });
});
