import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { failedBin } from '../../src/analysis/failed-bin.ts';
import { reviewSeason } from '../../src/analysis/review-season.ts';
import { summaryOf } from '../../src/analysis/summary.ts';
import { SUMMARY_SHAPE } from '../../src/analysis/summary-shape.ts';
import { loadSeason } from '../../src/season/load-season.ts';
import type { LoadedSeason } from '../../src/season/loaded.ts';
import { readSeason } from '../../src/season/read-season.ts';
import type { Season } from '../../src/season/season.ts';
import { makeSeasonFolder, SMALL_SEASON } from '../support/season-folder.ts';

/** Blocks and keys of `summary.json` as the season format's contract lists them. */
const CONTRACT: Record<string, string> = {
  grain: 'dryMatterKg volumeM3 bushels depthM',
  fan: 'hours unknownHours starts energyKwh energyFrom energyCost demandCost connectedCost heatCost cost kwhPerBushel costPerBushel why',
  moisture: 'startPct endPct pointsRemoved interval perHundredFanHours overdryingLossBushels overdryingLoss why',
  temperature: 'startC endC why',
  usefulHours: 'dry rewet cool warm little unknown empty forGoal against againstShare againstCost offWouldHavePaid why',
  water: 'bySensorsKg bySensorsKgInterval byAirKg byAirKgInterval byTicketsKg agree why',
  costPerPoint: 'value interval perBushelPoint perBushelPointInterval why',
  costPerPointAdded: 'value perBushelPoint why',
  airflow: 'byPressureM3S byFrontM3S byModelM3S cfmPerBushel from agree why',
  condition: 'dryMatterLossPct worstLayerLossPct alerts why',
  model: 'temperatureRmseC moistureRmsePct trusted why',
};

const folder = mkdtempSync(join(tmpdir(), 'fanbook-summary-'));
let loaded: LoadedSeason;
beforeAll(async () => {
  makeSeasonFolder(folder, { ...SMALL_SEASON, bins: 2, cables: 2, sensors: 3, hours: 24 * 20 });
  loaded = await loadSeason(await readSeason(folder));
});
afterAll(() => rmSync(folder, { recursive: true, force: true }));

const summaryWith = (change: (season: Season) => Partial<Season>) => {
  const changed = { ...loaded, season: { ...loaded.season, ...change(loaded.season) } };
  return summaryOf(changed, reviewSeason(changed));
};
const bare: Record<string, (season: Season) => Partial<Season>> = {
  'as it is': () => ({}),
  'without prices and tariffs': (season) => ({
    prices: {},
    tariffs: [],
    fans: season.fans.map((fan) => ({ ...fan, tariffId: null })),
  }),
  'without depths': (season) => ({
    bins: season.bins.map((bin) => ({ ...bin, grain: { ...bin.grain, depthSteps: [] } })),
  }),
  'without fans': (season) => ({ bins: season.bins.map((bin) => ({ ...bin, fanIds: [] })), fans: [] }),
  'with a heater': (season) => ({
    fans: season.fans.map((fan) => ({
      ...fan,
      heater: { fuel: 'propane', outputW: 10_000, efficiency: 1, pricePerJ: 1e-8, sold: { unit: 'L', unitJ: 2.55e7 } },
    })),
  }),
  'without target and with another goal': (season) => ({
    prices: {},
    bins: season.bins.map((bin) => ({ ...bin, goal: 'hold', grain: { ...bin.grain, targetMoistureWb: null } })),
  }),
};

describe.each(Object.keys(bare))('summary.json of a season %s', (name) => {
  it('has every key of the contract and keeps its own schema', () => {
    const summary = summaryWith(bare[name]);
    expect(SUMMARY_SHAPE.safeParse(summary).error?.issues ?? []).toEqual([]);
    for (const bin of summary.bins) {
      for (const [block, keys] of Object.entries(CONTRACT)) {
        for (const key of keys.split(' ')) expect(bin[block as keyof typeof bin], block).toHaveProperty(key);
      }
    }
  });

  it('says why wherever a number is null', () => {
    const summary = summaryWith(bare[name]);
    const silent = summary.bins.flatMap((bin) =>
      Object.keys(CONTRACT).filter((block) => {
        const of = bin[block as keyof typeof bin] as unknown as Record<string, unknown>;
        const lacking = Object.entries(of).some(([key, value]) => key !== 'why' && value === null);
        return lacking && !/\w.*\.$/.test(String(of.why ?? ''));
      }),
    );
    expect(silent).toEqual([]);
    if (summary.strategies.length === 0) expect(summary.strategiesWhy).toMatch(/\w/);
    for (const bin of summary.bins) if (bin.fronts.length === 0) expect(bin.frontsWhy).toMatch(/\w/);
  });

  it('gives no interval that leaves its number out', () => {
    for (const bin of summaryWith(bare[name]).bins) {
      for (const block of Object.keys(CONTRACT)) {
        const of = bin[block as keyof typeof bin] as unknown as Record<string, number | [number, number] | null>;
        for (const key of Object.keys(of).filter((one) => `${one}Interval` in of)) {
          const interval = of[`${key}Interval`] as [number, number] | null;
          if (interval === null) continue;
          expect(interval[0], `${block}.${key}`).toBeLessThanOrEqual(of[key] as number);
          expect(interval[1], `${block}.${key}`).toBeGreaterThanOrEqual(of[key] as number);
        }
      }
    }
  });
});

it('fuel of a heater stands beside its cost, in the unit of its price: so many fan hours at 10 kW over 25.5 MJ a litre', () => {
  const [bin] = summaryWith(bare['with a heater']).bins;
  const [heater, ...others] = bin.fan.heaters;
  expect(others).toEqual([]);
  expect(heater).toMatchObject({ fuel: 'propane', unit: 'L', why: null });
  expect(heater.used).toBeCloseTo((Number(heater.hours) * 3600 * 10_000) / 2.55e7, 3);
  expect(heater.usedInterval?.map((end) => end * 2.55e7 * 1e-8)).toEqual(
    bin.fan.heatCostInterval?.map((end) => expect.closeTo(end, 3)),
  );
  expect(summaryWith(bare['as it is']).bins[0].fan.heaters).toEqual([]);
});

it('intervals stand beside bushels, dry matter and temperatures where these are known', () => {
  const [bin] = summaryWith(bare['as it is']).bins;
  expect(bin.grain.from).toBe('volume');
  for (const interval of [bin.grain.bushelsInterval, bin.grain.dryMatterKgInterval]) expect(interval).toHaveLength(2);
  expect(bin.temperature.startCInterval).toHaveLength(2);
  expect(bin.temperature.endCInterval).toHaveLength(2);
});

it('fan hours by month, by hour of the day and by outdoor air add up to those of the bin', () => {
  const [bin] = summaryWith(bare['as it is']).bins;
  const sum = (parts: readonly { hours: number | null }[]) => parts.reduce((all, one) => all + (one.hours ?? 0), 0);
  expect(bin.fan.hours).toBeGreaterThan(10);
  expect(sum(bin.fan.months)).toBeCloseTo(bin.fan.hours ?? 0, 2);
  for (const [by, part] of [
    ['month', /^2\d{3}-\d\d$/],
    ['hour of the day', /^\d\d-\d\d$/],
    ['outdoor air', /^(under|from|\d+ to) \d+ C, (under|from|\d+ to) \d+ %$/],
  ] as const) {
    const groups = bin.usefulHours.groups.filter((one) => one.by === by);
    expect(sum(groups), by).toBeCloseTo(bin.fan.hours ?? 0, 2);
    for (const group of groups) expect(group.part).toMatch(part);
  }
});

it('a bin that broke keeps every key, null with why', () => {
  const bins = loaded.season.bins.map((bin) => failedBin(bin, 'planted'));
  const summary = summaryOf(loaded, { bins, fans: [], tariffMonths: [] });
  expect(SUMMARY_SHAPE.safeParse(summary).success).toBe(true);
  expect(summary.bins[0].grain.why).toContain('planted');
  expect(summary.bins[0].temperature.why).toContain('planted');
});
