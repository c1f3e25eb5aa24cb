import { beforeAll, describe, expect, it } from 'vitest';
import { madeFarm } from '../../scripts/bench/sweep/made-farm.ts';
import { runJobs } from '../../scripts/sweep/run-jobs.ts';
import { sweepOptions } from '../../scripts/sweep/sweep-options.ts';
import sweepTask from '../../scripts/sweep/sweep-task.ts';
import type { FinishedRun } from '../../src/analysis/strategies/run-numbers.ts';
import type { SensitivityStep } from '../../src/analysis/strategies/sensitivity.ts';
import { type SweepSummary, sweepSummary } from '../../src/analysis/strategies/sweep-summary.ts';
import type { BinReview } from '../../src/analysis/types.ts';
import { isMoved, movedSection } from '../../src/notebook/swept-moved.ts';
import { Units } from '../../src/report/units.ts';

const UNITS = new Units('us', 'USD', 'America/Chicago');
const REVIEWS = [{ bin: { id: 'B1', name: 'B1', grain: { crop: 'corn' } } } as unknown as BinReview];
let summary: SweepSummary;

// Three years of a bin, everything moved that --vary all moves; as it is it gets there in time.
beforeAll(async () => {
  const farm = madeFarm({ bins: 1, years: 3, days: 60, layers: 6, strategies: ['always-on', 'night-hours'] });
  const plan = { ...farm.plan, variants: sweepOptions({ vary: 'all' }).variants };
  const done = new Map<string, FinishedRun>();
  const rows = await runJobs(plan, (index) => farm.bins[index], farm.air, {
    ...{ shard: { index: 1, of: 1 }, workers: 1, onDone: () => {} },
    run: async (task) => sweepTask(task),
    finished: {
      get: (key) => done.get(key),
      add: (runs) => {
        for (const [key, run] of runs) done.set(key, run);
      },
    },
  });
  summary = sweepSummary(plan, rows);
}, 120_000);

const swept = () => ({ summary, why: null }) as const;

interface Air {
  step: number;
  reached: number;
  costChange: number | null;
  daysLater?: number;
  reachedOn?: { first: string; last: string };
  /** dry matter lost, so many times that of the bin as it is */
  loss?: number;
  varied?: 'airflow' | 'start-moisture';
}

/** The sweep with numbers of our own for the steps of airflow; the bin as it is reaches from 10 to 21 November. */
function withAir(airs: readonly Air[], reached: number) {
  const [sample] = summary.sensitivity;
  const usual = {
    ...{ ...sample.base, years: 3, reached, reachedOn: { first: '11-10', last: '11-21' } },
    dryMatterLossPct: { ...sample.base.dryMatterLossPct, mean: 0.2 },
  };
  const sensitivity = airs.map(
    ({ loss = 1, daysLater = 0, ...one }): SensitivityStep => ({
      ...{ ...sample, ...usual, strategy: 'always-on', varied: 'airflow', base: usual, daysLater },
      dryMatterLossPct: { ...usual.dryMatterLossPct, mean: 0.2 * loss },
      ...one,
    }),
  );
  const strategies = summary.strategies
    .filter(({ strategy }) => strategy === 'always-on')
    .map((one) => ({ ...one, reached: [{ ...one.reached[0], years: 3, reached, chance: reached / 3 }] }));
  return { summary: { ...summary, sensitivity, strategies }, why: null } as const;
}

describe('what another fan, fill date or start moisture would do', () => {
  it('has a row for each step, its cost over the bin as it is in the same years', () => {
    const { tables } = movedSection('airflow', swept(), REVIEWS, UNITS);
    expect(tables?.[0].rows.map(({ step }) => step)).toEqual([
      'nothing, as it is',
      'half the air',
      'three quarters of the air',
      'a quarter more air',
      'half as much air again',
      'twice the air',
    ]);
    const rule = tables?.[0].rows[0].rule === 'Always on' ? 'always-on' : 'night-hours';
    const usual = summary.strategies.find(({ strategy }) => strategy === rule);
    for (const row of tables?.[0].rows ?? []) {
      const cost = row.cost as { value: number };
      // All three years run in each step: the mean of the changes is the change of the means.
      expect(row.change as number).toBeCloseTo(cost.value - Number(usual?.cost.mean), 6);
      expect(row.reached).toMatch(/^[0-3] of 3$/);
    }
    // The bin as it is stands in the first row, by the same mean.
    expect(tables?.[0].rows[0]).toMatchObject({ change: 0, cost: { value: usual?.cost.mean } });
    expect(movedSection('fill-date', swept(), REVIEWS, UNITS).tables?.[0].rows.map(({ step }) => step)).toEqual([
      'nothing, as it is',
      'filled 14 days earlier',
      'filled 7 days earlier',
      'filled 7 days later',
      'filled 14 days later',
    ]);
    expect(movedSection('start-moisture', swept(), REVIEWS, UNITS).tables?.[0].rows[1].step).toBe(
      'put in 2 points drier',
    );
  });

  it('leads with the step that brings a bin there more often', () => {
    const { lead, entries } = movedSection(
      'airflow',
      withAir(
        [
          { step: 0.5, reached: 0, costChange: -300 },
          { step: 1.5, reached: 3, costChange: 240 },
          { step: 2, reached: 3, costChange: 900 },
        ],
        1,
      ),
      REVIEWS,
      UNITS,
    );
    // The cheaper of the two that reach in all years; half the air is cheaper, and no gain.
    expect(lead).toBe(
      'With half as much air again, B1 would come to its target in 3 of 3 years in place of 1 of 3, from 10 Nov to 21 Nov, for 240 USD a season more on average, by always on.',
    );
    expect(entries?.[0].text).toContain('With half the air: at the target in 0 of 3 years in place of 1 of 3');
  });

  it('leads with the step that costs less where the target is reached as often', () => {
    const said = (steps: Parameters<typeof withAir>[0]) =>
      movedSection('airflow', withAir(steps, 3), REVIEWS, UNITS).lead;
    expect(said([{ step: 0.75, reached: 3, costChange: -120 }])).toBe(
      'With three quarters of the air, B1 would come to its target as often (3 of 3 years), from 10 Nov to 21 Nov, for 120 USD a season less on average, by always on.',
    );
    expect(said([{ step: 0.75, reached: 2, costChange: -120 }])).toBe(
      'Nothing that was moved brings a bin to its target more often, or as often for less.',
    );
  });

  it('leads with no step that comes weeks later or loses more of the grain, where another does better', () => {
    const late = { daysLater: 92, reachedOn: { first: '01-10', last: '04-07' }, loss: 1.8 };
    const half = { step: 0.5, reached: 3, costChange: -364, ...late };
    const some = { step: 0.75, reached: 3, costChange: -100, daysLater: 9 };
    const lead = (steps: Parameters<typeof withAir>[0]) =>
      movedSection('airflow', withAir(steps, 3), REVIEWS, UNITS).lead;
    expect(lead([half, some])).toMatch(/^With three quarters of the air/);
    // Either alone is harm enough.
    expect(lead([{ ...half, loss: 1 }, some])).toMatch(/^With three quarters of the air/);
    expect(lead([{ ...half, daysLater: 0 }, some])).toMatch(/^With three quarters of the air/);
    expect(lead([half])).toBe(
      'With half the air, B1 would come to its target 92 days later (from 10 Jan to 7 Apr in place of 10 Nov to 21 Nov), with 1.80 times the dry-matter loss: the price of reaching it as often (3 of 3 years), for 364 USD a season less on average, by always on.',
    );
    const [, row] = movedSection('airflow', withAir([half], 3), REVIEWS, UNITS).tables?.[0].rows ?? [];
    expect(row).toMatchObject({ when: '10 Jan to 7 Apr', loss: { value: expect.closeTo(0.0036, 12) } });
  });

  it('leads without prices with what reaches more often, and claims nothing of costs', () => {
    const lead = (reached: number) =>
      movedSection('airflow', withAir([{ step: 1.5, reached, costChange: null }], 2), REVIEWS, UNITS).lead;
    expect(lead(3)).toMatch(/in 3 of 3 years in place of 2 of 3, .*, at a cost that can’t be told, by always on\.$/);
    expect(lead(2)).toBe('Nothing that was moved brings a bin to its target more often; what it costs can’t be told.');
  });

  it('says that drying the grain first has its price', () => {
    const drier = withAir([{ step: -2, reached: 3, costChange: -829, varied: 'start-moisture' }], 3);
    const { lead, notes } = movedSection('start-moisture', drier, REVIEWS, UNITS);
    expect(lead).toContain('for 829 USD a season less on average, before what drying it first costs');
    expect(notes?.join(' ')).toContain('Grain put in drier has to be dried first');
  });

  it('says of a sweep that can’t be taken what the section above says', () => {
    const why = 'The sweep beside this season was made when its files were others.';
    expect(movedSection('airflow', { summary: null, why }, REVIEWS, UNITS).lead).toContain(`Can’t tell. ${why}`);
  });

  it('says by which command what was not moved would be', () => {
    const only = withAir([{ step: 2, reached: 3, costChange: 10 }], 3);
    expect(isMoved('fill-date', only)).toBe(false);
    expect(movedSection('airflow', only, REVIEWS, UNITS).notes?.join(' ')).toMatch(
      /--vary fill-date.*--vary start-moisture/,
    );
    expect(movedSection('fill-date', only, REVIEWS, UNITS).lead).toMatch(
      /^Can’t tell: .* did not move the fill date\. .*--vary fill-date/,
    );
    expect(movedSection('airflow', { summary: null, why: 'None.' }, REVIEWS, UNITS).lead).toContain('--vary all');
    expect(isMoved('airflow', swept())).toBe(true);
  });
});
