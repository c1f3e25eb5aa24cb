import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { type Case, QUANTITIES, type Quantity } from '../../scripts/bench/coverage/cases.ts';
import { drawOf, limit95, SHAPES } from '../../scripts/bench/coverage/chance.ts';
import { drawSeason } from '../../scripts/bench/coverage/draw-season.ts';
import { type Played, playSeason } from '../../scripts/bench/coverage/play-season.ts';
import { runBin } from '../../scripts/bench/coverage/run-bin.ts';
import { knowingHalves, scoreOf, told } from '../../scripts/bench/coverage/score.ts';
import { DAY } from '../../scripts/sample/calendar.ts';
import { randomStream } from '../../scripts/sample/random.ts';
import { inventWeather } from '../../scripts/sample/weather.ts';
import { leastHits } from './binomial.ts';

/** Seasons apart from those of `npm run bench -- coverage`, which has 200 and prints them by stratum. */
const SEEDS = Array.from({ length: 20 }, (_, i) => 5001 + i);
/** An honest 90 % interval may hold the truth in as few as 84 of 100 cases (the owner's limit, for what is assumed). */
const LEAST_SHARE = 0.84;
/** Chance that a kit at that limit fails a line of this test by its draw; the seeds are fixed, so a draw fails always or never. */
const ALARM = 0.005;

const work = mkdtempSync(join(tmpdir(), 'fanbook-drawn-'));
const played: Played[] = [];

beforeAll(async () => {
  for (const seed of SEEDS) played.push(await playSeason(seed, work, false));
}, 600_000);
afterAll(() => rmSync(work, { recursive: true, force: true }));

const casesOf = (quantity: Quantity): Case[] =>
  played.flatMap((one) => one.cases).filter((one) => one.quantity === quantity);

describe('20 drawn seasons whose truth is known', () => {
  it('break no bin', () => {
    expect(played.flatMap((one) => one.broken)).toEqual([]);
    expect(casesOf('points removed').length).toBeGreaterThan(20);
  });

  it.each(QUANTITIES)('%s: intervals hold the truth as often as they say', (quantity) => {
    const cases = casesOf(quantity);
    const all = told(cases);
    const hits = all.filter((one) => one.low <= one.truth && one.truth <= one.high).length;
    // Two bins of a season share little (weather, make of the cables): they are counted as independent.
    expect(hits).toBeGreaterThanOrEqual(leastHits(all.length, LEAST_SHARE, ALARM));
    // Something must be told, and most of what the data carry.
    expect(all.length).toBeGreaterThan(cases.length / 3);
  });

  it('are no wider than half as much again as those of an estimator that knows the error structure, with room for so few bins', () => {
    for (const quantity of ['points removed', 'cost per point'] as const) {
      // Few bins: one group for those that changed and one for the others, so that the yardstick does not fit itself to single bins.
      const cases = casesOf(quantity).map((one) => ({
        ...one,
        group: one.group.split(' ').at(-1)! === 'kept' ? 'kept' : 'changed',
      }));
      const { widthRatio } = scoreOf(cases, knowingHalves(cases));
      // The bench holds 1.5 over 200 seasons. The 90 % quantile of some 30 errors, the yardstick's factor, has itself a standard error of about a fifth: 1.5 + 2 x 0.3.
      expect(widthRatio).toBeLessThan(2.1);
    }
  });

  it('show no airflow by fronts that is more than 20 % off, 15 % on average, and show most of them', () => {
    const cases = casesOf('airflow by front');
    const off = told(cases).map((one) => Math.abs(one.value / one.truth - 1));
    expect(Math.max(...off)).toBeLessThan(0.2);
    expect(off.reduce((sum, one) => sum + one, 0) / off.length).toBeLessThan(0.15);
    // Bins on hold run eight hours a week, which carries no change from sensor to sensor; of the others two in three are due, and
    // so few bins leave a standard error of a tenth.
    const timed = cases.filter((one) => one.goal !== 'hold');
    expect(off.length / timed.length).toBeGreaterThan(0.5);
  });

  it('tell the arrivals of fronts within 6 fan hours', () => {
    const fronts = played.flatMap((one) => one.fronts);
    const bins = new Set(fronts.map((one) => one.season)).size;
    const near = fronts.filter((one) => one.offHours !== null && Math.abs(one.offHours) <= 6).length;
    expect(bins).toBeGreaterThan(3);
    // Sensors of a bin fail together, so a handful of bins says less than their many sensors: nine of ten are due (the bench
    // prints how often over 200 seasons), and one bin in six may miss its front here.
    expect(near / fronts.length).toBeGreaterThan(0.75);
  });

  it('say the same through files as straight into the tables', async () => {
    const byFiles = await playSeason(SEEDS[0], work, true);
    expect(byFiles.cases.length).toBe(played[0].cases.length);
    byFiles.cases.forEach((one, i) => {
      expect(one.value).toBeCloseTo(played[0].cases[i].value!, 6);
      expect(one.low).toBeCloseTo(played[0].cases[i].low, 6);
    });
  });
});

describe('the generator', () => {
  it('loses no water: what the air carried off is what the grain lost', () => {
    const draw = drawSeason(5001);
    const bin = { ...draw.bins[0], fanFromMs: draw.bins[0].filledMs + DAY };
    const trace = runBin(bin, inventWeather(5001, draw.startMs - 5 * DAY, draw.endMs + 6 * DAY));
    const lost = (trace.dryKg * (trace.meanDb[0] - trace.meanDb[trace.steps - 1])) / 100;
    expect(Math.abs(lost)).toBeGreaterThan(10);
    expect(trace.waterByAirKg).toBeCloseTo(lost, 3);
  });

  it.each(SHAPES)('states limits that 95 in 100 of its sensors keep: %s errors', (shape) => {
    const random = randomStream(11, `check ${shape}`);
    const limit = limit95(shape, 0);
    const kept = Array.from({ length: 20_000 }, () => Math.abs(drawOf(shape, random))).filter((one) => one <= limit);
    // Both the limit (40,000 draws) and this share are counted: together a standard error of 0.19 %, four of them.
    expect(kept.length / 20_000).toBeGreaterThan(0.942);
    expect(kept.length / 20_000).toBeLessThan(0.958);
  });
});

describe('the least number of hits', () => {
  it('is that of exact binomial sums', () => {
    // By hand: 4 tosses of a fair coin give none in 1/16 of cases, one or none in 5/16.
    expect(leastHits(4, 0.5, 0.06)).toBe(0);
    expect(leastHits(4, 0.5, 0.07)).toBe(1);
    expect(leastHits(4, 0.5, 0.32)).toBe(2);
  });
});
