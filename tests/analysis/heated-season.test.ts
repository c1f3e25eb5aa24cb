import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { expect, it } from 'vitest';
import { flowOf } from '../../scripts/bench/coverage/draw-fan.ts';
import { drawSeason } from '../../scripts/bench/coverage/draw-season.ts';
import { logSeason } from '../../scripts/bench/coverage/log-season.ts';
import { openByTables } from '../../scripts/bench/coverage/open-season.ts';
import type { HeaterDraw } from '../../scripts/bench/coverage/plan.ts';
import { runBin } from '../../scripts/bench/coverage/run-bin.ts';
import { binTruth } from '../../scripts/bench/coverage/season-truth.ts';
import { DAY } from '../../scripts/sample/calendar.ts';
import { inventWeather } from '../../scripts/sample/weather.ts';
import { reviewSeason } from '../../src/analysis/review-season.ts';

const SEED = 9118;
const WARMED_K = 3;
const GALLON_KWH = (91_500 * 1055.05585262) / 3.6e6; // heat of burning as the trade bills it, common practice

/** Wheat dried at 20 hp, its air warmed by 3 K more; played by another, finer bed than the kit's. */
async function heated(plenum: boolean, heater: Omit<HeaterDraw, 'outputW'>) {
  const draw = drawSeason(SEED);
  const [bin] = draw.bins;
  const outputW = Math.round((WARMED_K * 1006 * flowOf(bin)) / 0.83);
  Object.assign(bin, { plenum, heater: { ...heater, outputW } });
  const weather = inventWeather(SEED, draw.startMs - 5 * DAY, draw.endMs + 6 * DAY);
  const trace = runBin(bin, weather);
  const folder = mkdtempSync(join(tmpdir(), 'fanbook-heated-'));
  try {
    const loaded = await openByTables(draw, logSeason(draw, [trace], weather), folder);
    const truth = binTruth(draw, trace);
    return { outputW, trace, truth, review: reviewSeason(loaded).bins[0] };
  } finally {
    rmSync(folder, { recursive: true, force: true });
  }
}

const PROPANE = { fuel: 'propane', efficiency: 0.95, price: '1.80 USD/gal', onFanLog: false } as const;
const ELECTRIC = { fuel: 'electric', efficiency: 1, price: null, onFanLog: false } as const;

it('a bin dried with a heater: fuel by hand, water by air holds the truth behind a logged plenum', async () => {
  const { outputW, truth, review } = await heated(true, PROPANE);
  const { heatCost, hours, unknownHours } = review.fan;
  // Hours that the log is silent about are in the upper end alone: so by the hours told.
  const gallons = ((outputW / 0.95 / 1000) * Number(hours.value)) / GALLON_KWH;
  expect(heatCost.value).toBeCloseTo(1.8 * gallons, 1);
  const [{ used, unit, hoursFrom }] = review.fan.heaters ?? [];
  expect([unit, hoursFrom]).toEqual(['gal', 'plenum']);
  expect(used.value).toBeCloseTo(gallons, 1);
  expect(unknownHours).toBeGreaterThan(0);
  const trueCost = (1.8 * ((outputW / 0.95 / 1000) * truth.fanHours)) / GALLON_KWH;
  expect(heatCost.interval![0]).toBeLessThan(trueCost);
  expect(heatCost.interval![1]).toBeGreaterThan(trueCost);
  const { value, interval } = review.water.byAir;
  expect(value).not.toBeNull();
  expect(interval![0]).toBeLessThan(truth.carriedKg);
  expect(interval![1]).toBeGreaterThan(truth.carriedKg);
});

it('without a plenum log neither the water by the air, what the hours did nor a front is told behind a heater of any fuel', async () => {
  for (const [heater, why] of [
    [ELECTRIC, /heater warms the entering air, and no plenum log/],
    [PROPANE, /burner warms the entering air and may add water/],
  ] as const) {
    const { review } = await heated(false, heater);
    expect(review.water.byAir).toMatchObject({ value: null, why: expect.stringMatching(why) });
    expect(review.useful!.hours.dry.why).toMatch(/by an amount that no plenum reading tells/);
    expect(review.fronts).toMatchObject({
      campaigns: [],
      why: expect.stringMatching(/no plenum log tells by how much/),
    });
  }
});

it('an electric heater is paid once: on the fan’s meter in its energy, else beside it', async () => {
  const metered = await heated(true, { ...ELECTRIC, onFanLog: true });
  const beside = await heated(true, ELECTRIC);
  const of = ({ review: { fan } }: typeof metered) => Number(fan.energyCost.value) + Number(fan.heatCost.value);
  expect(metered.review.fan.heatCost.value).toBe(0);
  expect(Number(beside.review.fan.heatCost.value)).toBeGreaterThan(0);
  // The log's clamp errs by some percent on all that it sees; counted twice it would be half as much again.
  expect(of(metered) / of(beside)).toBeGreaterThan(0.9);
  expect(of(metered) / of(beside)).toBeLessThan(1.1);
});
