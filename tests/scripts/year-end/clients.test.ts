import { spawnSync } from 'node:child_process';
import { createHash } from 'node:crypto';
import { existsSync, mkdirSync, mkdtempSync, readdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { runYearEnd } from '../../../scripts/year-end/run-year-end.ts';
import type { YearEndWishes } from '../../../scripts/year-end/wishes.ts';
import { InputError } from '../../../src/base/errors.ts';
import { makeSeasonFolder, SMALL_SEASON } from '../../support/season-folder.ts';

const work = mkdtempSync(join(tmpdir(), 'fanbook-clients-'));
const clients = join(work, 'clients');
const MADE_S = 1_747_699_200;
const PLAIN: YearEndWishes = {
  out: null,
  summary: null,
  previous: null,
  models: false,
  keep: false,
  preparedFor: null,
  preparedBy: null,
  date: null,
  pdf: null,
  units: 'us',
};

function client(name: string, made: Partial<typeof SMALL_SEASON>, change: (yaml: string) => string): string {
  const folder = join(clients, name);
  makeSeasonFolder(folder, { ...SMALL_SEASON, ...made });
  const file = join(folder, 'season.yaml');
  writeFileSync(file, change(readFileSync(file, 'utf8')));
  return folder;
}

/** Every file below a folder, by its path. */
function filesOf(folder: string): Map<string, string> {
  return new Map(
    readdirSync(folder, { recursive: true, withFileTypes: true })
      .filter((entry) => entry.isFile())
      .map((entry) => join(entry.parentPath, entry.name))
      .map((path) => [path.slice(folder.length + 1), readFileSync(path, 'utf8')]),
  );
}

const hashes = (folder: string) =>
  Object.fromEntries(
    [...filesOf(folder)].map(([path, text]) => [path, createHash('sha256').update(text).digest('hex')]),
  );

let ran: ReturnType<typeof spawnSync>;

beforeAll(() => {
  mkdirSync(clients);
  client('vexholm', { hours: 24 * 31 }, (yaml) =>
    yaml
      .replace('Made for a test', 'Vexholm harvest\nprepared_for: Vexholm Ground (invented)')
      .replace('name: Bin 1', 'name: Vex tower'),
  );
  client('quillmoor', { bins: 2, hours: 24 * 40 }, (yaml) =>
    yaml
      .replace('Made for a test', 'Quillmoor harvest\nprepared_for: Quillmoor Bottom (invented)')
      .replace('name: Bin 1', 'name: Quillmoor east')
      .replace('name: Bin 2', 'name: Quillmoor west')
      .replace('diameter: 36 ft', 'diameter: 27 ft'),
  );
  client('tarnwick', {}, (yaml) => yaml.replace('diameter: 36 ft', 'diameter: 36').replace('crop: corn', 'crop: hay'));
  writeFileSync(join(clients, 'notes.txt'), 'not a client');
  // As the shell gives it: clients/*
  const all = readdirSync(clients)
    .sort()
    .map((name) => join(clients, name));
  ran = spawnSync(process.execPath, ['--import', 'tsx', 'scripts/year-end.ts', ...all, '--no-model', '--fresh'], {
    encoding: 'utf8',
    env: { ...process.env, SOURCE_DATE_EPOCH: String(MADE_S) },
  });
});
afterAll(() => rmSync(work, { recursive: true, force: true }));

describe('year-end of a consultant’s list of farms', () => {
  it('lists every problem of a broken client, makes the others, and says so by its status', () => {
    expect(ran.status).toBe(3);
    const told = String(ran.stderr);
    expect(told).toMatch(/tarnwick: 2 problems; nothing of it was written/);
    expect(told).toMatch(/SEASON_UNIT season\.yaml:\d+:\d+/);
    expect(told).toMatch(/SEASON_CROP season\.yaml:\d+:\d+/);
    expect(told).toMatch(/Skip .*notes\.txt/);
    expect(existsSync(join(clients, 'tarnwick', 'year-end'))).toBe(false);
    for (const name of ['vexholm', 'quillmoor']) {
      expect(Object.keys(hashes(join(clients, name, 'year-end')))).toEqual(
        expect.arrayContaining([
          'year-end.html',
          'summary.json',
          'summary.schema.json',
          'tables/year-end-summary-summary.csv',
        ]),
      );
    }
    expect(readdirSync(clients).sort()).toEqual(['notes.txt', 'quillmoor', 'tarnwick', 'vexholm']);
  });

  it('gives no client a word or a number of another: each report is the bytes that it is when made alone', async () => {
    for (const name of ['vexholm', 'quillmoor']) {
      const alone = join(work, `alone-${name}`);
      await runYearEnd({
        seasons: [join(clients, name)],
        wishes: { ...PLAIN, out: alone },
        generatedAtMs: MADE_S * 1000,
        say: () => {},
      });
      expect(hashes(join(clients, name, 'year-end'))).toEqual(hashes(alone));
      // The command that a report names would make its numbers again.
      const html = filesOf(alone).get('year-end.html') ?? '';
      expect(html).toContain(`npm run year-end -- ${name} --no-model`);
    }
    const words = { vexholm: /vexholm|vex tower/i, quillmoor: /quillmoor/i, tarnwick: /tarnwick/i };
    for (const [name, others] of [
      ['vexholm', ['quillmoor', 'tarnwick']],
      ['quillmoor', ['vexholm', 'tarnwick']],
    ] as const) {
      const files = [...filesOf(join(clients, name, 'year-end'))];
      // The test sees names where they are.
      expect(files.some(([, text]) => words[name].test(text))).toBe(true);
      for (const other of others)
        for (const [path, text] of files) expect(words[other].test(text), `${other} in ${name}/${path}`).toBe(false);
    }
  });

  it('writes the consultant’s summary apart, with every client and the one that failed', () => {
    const summary = filesOf(join(work, 'clients-year-end'));
    expect([...summary.keys()].sort()).toEqual([
      'clients.json',
      'index.html',
      'tables/overview-bins-ranked.csv',
      'tables/overview-clients-clients.csv',
    ]);
    const page = summary.get('index.html') ?? '';
    for (const word of ['Vexholm Ground', 'Quillmoor Bottom', 'Vex tower', 'tarnwick', 'SEASON_UNIT'])
      expect(page).toContain(word);
    // What it tells of a client is what that client's own summary.json says.
    const { clients: lines } = JSON.parse(summary.get('clients.json') ?? '{}');
    for (const line of lines) {
      const own = JSON.parse(readFileSync(join(clients, line.client, 'year-end', 'summary.json'), 'utf8'));
      const hours = own.bins.reduce((sum: number, bin: { fan: { hours: number } }) => sum + bin.fan.hours, 0);
      const cost = own.bins.reduce((sum: number, bin: { fan: { cost: number } }) => sum + bin.fan.cost, 0);
      expect(line.hours.total.value).toBeCloseTo(hours, 2);
      expect(line.cost.total.value).toBeCloseTo(cost, 2);
      expect(line.bins).toBe(own.bins.length);
      // Cost over grain by hand, its interval no narrower than the money's own.
      const grain = own.bins.reduce((sum: number, bin: { grain: { bushels: number } }) => sum + bin.grain.bushels, 0);
      expect(line.costPerGrain.value).toBeCloseTo(cost / grain, 6);
      // Numbers of both files are told to seven figures.
      const slack = 1e-6 * line.costPerGrain.value;
      expect(line.costPerGrain.interval[0]).toBeLessThanOrEqual(line.cost.total.interval[0] / grain + slack);
      expect(line.costPerGrain.interval[1]).toBeGreaterThanOrEqual(line.cost.total.interval[1] / grain - slack);
    }
    // Its first sentence says where a visit is worth most, or that nothing tells; what it was made from names each client's files.
    const worth = lines.filter((line: { worth: unknown }) => line.worth !== null);
    expect(page).toMatch(
      worth.length === 0
        ? /No client’s numbers show a clear saving/
        : new RegExp(`worth most at (${lines.map((line: { client: string }) => line.client).join('|')})`),
    );
    const figures = (summary.get('clients.json') ?? '').match(/-?\d+\.\d+/g) ?? [];
    expect(figures.length).toBeGreaterThan(0);
    for (const one of figures) expect(one.replace(/^-?0\.0*|[-.]/g, '').length, one).toBeLessThanOrEqual(7);
    expect(page).toMatch(/quillmoor\/[\w./-]+\.csv/);
    expect(page).toMatch(/Ranges are 90\s% intervals/);
    expect(lines.map((line: { client: string }) => line.client)).toEqual(['quillmoor', 'vexholm']);
  });

  it('refuses a summary in a client’s folder, and two clients of one name', async () => {
    const seasons = ['vexholm', 'quillmoor'].map((name) => join(clients, name));
    const run = (wishes: Partial<YearEndWishes>, of = seasons) =>
      runYearEnd({ seasons: of, wishes: { ...PLAIN, ...wishes }, generatedAtMs: 0, say: () => {} }).catch(
        (error) => error,
      );
    const inside = await run({ summary: join(clients, 'quillmoor', 'all') });
    expect(inside).toBeInstanceOf(InputError);
    expect(inside.message).toMatch(/^SUMMARY_FOLDER .*quillmoor, which is a client’s/);
    expect(existsSync(join(clients, 'quillmoor', 'all'))).toBe(false);
    const twice = join(work, 'other', 'vexholm');
    mkdirSync(twice, { recursive: true });
    for (const out of [join(work, 'reports'), null]) {
      const same = await run({ out }, [seasons[0], twice]);
      expect(same.message).toMatch(/^OUT_FOLDER two clients’ folders are named vexholm/);
      expect(existsSync(join(work, 'reports'))).toBe(false);
    }
  });
});
