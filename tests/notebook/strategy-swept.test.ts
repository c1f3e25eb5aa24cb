import { beforeAll, describe, expect, it } from 'vitest';
import { madeFarm } from '../../scripts/bench/sweep/made-farm.ts';
import { runJobs } from '../../scripts/sweep/run-jobs.ts';
import sweepTask from '../../scripts/sweep/sweep-task.ts';
import type { FinishedRun } from '../../src/analysis/strategies/run-numbers.ts';
import type { SweepRow } from '../../src/analysis/strategies/sweep-columns.ts';
import { type SweepSummary, sweepSummary } from '../../src/analysis/strategies/sweep-summary.ts';
import type { BinReview } from '../../src/analysis/types.ts';
import { strategySweptSection } from '../../src/notebook/strategy-swept.ts';
import { Units } from '../../src/report/units.ts';

const UNITS = new Units('us', 'USD', 'America/Chicago');
const REVIEWS = ['B1', 'B2'].map((id) => ({ bin: { id, name: id, grain: { crop: 'corn' } } }) as unknown as BinReview);
const FARM = madeFarm({
  ...{ bins: 2, years: 11, days: 30, layers: 6 },
  strategies: ['always-on', 'night-hours', 'as-logged', 'best-in-hindsight'],
});
FARM.plan = { ...FARM.plan, by: ['10-20', '10-28'] };
// The second bin is to be cooled.
const [dry, other] = FARM.bins;
const cool = { ...other, spec: { ...other.spec!, goal: 'cool' as const, targetC: 5 } };
let rows: SweepRow[];
let summary: SweepSummary;

beforeAll(async () => {
  const done = new Map<string, FinishedRun>();
  rows = await runJobs(FARM.plan, (index) => [dry, cool][index], FARM.air, {
    ...{ shard: { index: 1, of: 1 }, workers: 1, onDone: () => {} },
    run: async (task) => sweepTask(task),
    finished: {
      get: (key) => done.get(key),
      add: (runs) => {
        for (const [key, run] of runs) done.set(key, run);
      },
    },
  });
  summary = sweepSummary(FARM.plan, rows);
}, 300_000);

/** Of a bin's strategy in all years: costs, rising. */
const costs = (bin: string, strategy: string) =>
  rows
    .filter((row) => row.bin === bin && row.strategy === strategy && row.cost !== null)
    .map((row) => Number(row.cost))
    .sort((a, b) => a - b);

describe('every strategy in other years, by a sweep', () => {
  it('tells the middle year with the range of the years, of bins to dry and to cool', () => {
    const { tables, entries } = strategySweptSection({ summary, why: null }, REVIEWS, UNITS);
    const told = tables?.[0].rows ?? [];
    // As logged has no log here; three strategies in two bins.
    expect(told.map(({ bin, way }) => `${bin} ${way}`)).toEqual(
      ['B1', 'B2'].flatMap((bin) => ['Always on', 'Night hours', 'Best in hindsight'].map((way) => `${bin} ${way}`)),
    );
    for (const [row, bin, strategy] of [
      [told[0], 'B1', 'always-on'],
      [told[4], 'B2', 'night-hours'],
    ] as const) {
      // Nearest rank of 11 years: the 2nd, the 6th and the 10th.
      const all = costs(bin, strategy);
      expect(all).toHaveLength(11);
      expect(row.cost).toMatchObject({ value: all[5], interval: [all[1], all[9]] });
    }
    expect(entries?.map(({ term }) => term)).toEqual(['B1', 'B2']);
  });

  it('tells regret against the best in hindsight of each year, which is never below 0', () => {
    const { tables, notes } = strategySweptSection({ summary, why: null }, REVIEWS, UNITS);
    expect(tables?.[0].columns.map(({ label }) => label)).toContain('Over best in hindsight');
    expect(notes?.join(' ')).toContain('the cheapest schedule found with that year’s weather known');
    const against = rows.filter((row) => row.strategy === 'best-in-hindsight' && row.reachedTarget === true);
    expect(against.length).toBeGreaterThan(10);
    for (const best of against) {
      const same = rows.filter(
        (row) => row.bin === best.bin && row.weather === best.weather && row.reachedTarget === true && row.bin === 'B1',
      );
      for (const row of same) expect(Number(row.cost)).toBeGreaterThanOrEqual(Number(best.cost) * (1 - 1e-9));
    }
  });

  it('names the good, the middle and the poor year, and how far seasons lie apart', () => {
    const { tables, entries } = strategySweptSection({ summary, why: null }, REVIEWS, UNITS);
    const of = (id: string) => tables?.find((table) => table.id === id)?.rows[0] ?? {};
    const sorted = rows
      .filter((row) => row.bin === 'B1' && row.strategy === 'always-on')
      .sort((a, b) => Number(a.cost) - Number(b.cost) || (String(a.weather) < String(b.weather) ? -1 : 1));
    const name = (at: number) => String(sorted[at].weather).replace('season', 'this season');
    expect(of('named-years')).toMatchObject({ good: name(1), middle: name(5), poor: name(9), low: sorted[1].cost });
    expect(entries?.[0].text).toMatch(/in the middle year, [a-z0-9 ]+\. A good year was [^,]+, a poor one [^,]+\./);
    // By the definition of a standard deviation, of 11 numbers per bushel.
    const each = sorted.map((row) => Number(row.costPerBushel));
    const mean = each.reduce((sum, one) => sum + one, 0) / 11;
    const sd = Math.sqrt(each.reduce((sum, one) => sum + (one - mean) ** 2, 0) / 10);
    const spread = of('spread') as Record<string, { value: number }>;
    expect([spread.mean.value, spread.sd.value]).toEqual([expect.closeTo(mean, 9), expect.closeTo(sd, 9)]);
    expect(spread.least.value).toBeCloseTo(Math.min(...each), 9);
  });

  it('tells the chance of being there by each day, and by the end', () => {
    const { tables } = strategySweptSection({ summary, why: null }, REVIEWS, UNITS);
    const chances = tables?.find(({ id }) => id === 'chances');
    expect(chances?.columns.map(({ label }) => label)).toEqual([
      ...['Bin', 'Strategy', 'Years', 'By 20 Oct', 'By 28 Oct', 'At the end'],
    ]);
    // The run begins on 1 October: each year's day is of that year.
    const by = (day: string) =>
      rows.filter(
        (row) =>
          row.bin === 'B1' &&
          row.strategy === 'always-on' &&
          row.reachedTarget === true &&
          String(row.reachedOn).slice(5) <= day,
      ).length / 11;
    const [first] = chances?.rows ?? [];
    for (const [key, day] of [
      ['10-20', '10-20'],
      ['10-28', '10-28'],
      ['end', '12-31'],
    ])
      expect(first[key], key).toMatchObject({ value: by(day) });
  });

  it('draws them, and says in words what it draws', () => {
    const [figure] = strategySweptSection({ summary, why: null }, REVIEWS, UNITS).figures ?? [];
    expect(figure.alt).toMatch(/B1: Always on .*; Night hours .*; Best in hindsight \(set apart\)/);
    expect(figure.draw({ width: 900, narrow: false, idPrefix: 'x-' }).match(/<circle/g)).toHaveLength(6);
  });

  it('marks this season’s best in hindsight by the review where the sweep searched none', () => {
    const best = { binId: 'B1', hindsight: { cost: { value: 550, interval: null }, outcome: { reachedTarget: true } } };
    const bare = { ...summary, regretAgainst: 'cheapest strategy that reached the target' as const };
    const altOf = (told: SweepSummary) =>
      strategySweptSection({ summary: told, why: null }, REVIEWS, UNITS, [best as never]).figures?.[0].alt;
    // 550 USD over 11,000 bushels.
    expect(altOf(bare)).toContain('Best in hindsight, this season (set apart) 0.050');
    expect(altOf(summary)).not.toContain('Best in hindsight, this season');
  });

  it('names a cheaper rule that misses some years, which a reader may take', () => {
    const surest = strategySweptSection({ summary, why: null }, REVIEWS, UNITS).entries?.[0].text ?? '';
    const [name] = surest.split(' reaches');
    const id = name === 'Always on' ? 'always-on' : 'night-hours';
    // The other rule at half the cost of the surest, in 9 of 11 years.
    const pick = summary.strategies.find((one) => one.bin === 'B1' && one.strategy === id)!;
    const half = { weather: '2020', value: Number(pick.byCost.p50?.value) / 2 };
    const other = (reached: number) =>
      summary.strategies.map((one) => {
        if (one.bin !== 'B1' || !['always-on', 'night-hours'].includes(one.strategy)) return one;
        const count = one === pick ? 11 : reached;
        const byCost = one === pick ? one.byCost : { ...one.byCost, p10: half, p50: half, p90: half, why: null };
        return { ...one, byCost, reached: [{ ...one.reached[0], reached: count, chance: count / 11 }] };
      });
    const said = (reached: number) =>
      strategySweptSection({ summary: { ...summary, strategies: other(reached) }, why: null }, REVIEWS, UNITS)
        .entries?.[0].text;
    expect(said(9)).toMatch(/ (Night hours|Always on) does in 9 of 11 years, for \d[\d.,]* USD\.$/);
    expect(said(5)).not.toContain(' does in ');
  });

  it('says why there is nothing to tell', () => {
    expect(strategySweptSection({ summary: null, why: 'No sweep stands here.' }, REVIEWS, UNITS).lead).toBe(
      'Can’t tell. No sweep stands here.',
    );
    expect(strategySweptSection(undefined, REVIEWS, UNITS).lead).toContain('Can’t tell here');
  });
});
