import { describe, expect, it } from 'vitest';
import strategies from '../../notebooks/strategies.ts';
import type { FittedValues } from '../../src/analysis/model/fitted-values.ts';
import { NO_PRICE } from '../../src/analysis/what-if/what-if-types.ts';
import { withheld } from '../../src/base/estimate.ts';
import { HELD } from '../../src/notebook/no-rule.ts';
import { strategiesAnswer, strategyKeys } from '../../src/notebook/strategy-answer.ts';
import { hangsTable } from '../../src/notebook/strategy-hangs.ts';
import { runsTable, strategyFigure } from '../../src/notebook/strategy-runs.ts';
import { strategyTable } from '../../src/notebook/strategy-tables.ts';
import { adviceFor, playedBins } from '../../src/notebook/strategy-words.ts';
import { measuresOf } from '../../src/notebook/year-end/measures-of.ts';
import { Units } from '../../src/report/units.ts';
import type { Outcome } from '../../src/simulation/run/outcome.ts';
import { exampleInput } from '../report/example-review.ts';
import { WRITTEN_MODELS } from '../support/written-models.ts';
import { run, seasonOf } from './strategy-example.ts';

const UNITS = new Units('us', 'USD', 'America/Chicago');
const MISSED = 'No strategy reaches the target.';
const gone = (why: string) => ({ value: null, why });

const free = (id: string, title: string, reaches: boolean) => ({
  ...run(id, title, [0, 0, 0], reaches),
  cost: withheld(NO_PRICE),
});
const outcome = { endMoistureWb: 0.15, endTempC: 8, cost: Number.NaN, fanHours: 300 } as Outcome;
const hangsOn = [{ part: 'as fitted', title: 'as fitted', logged: outcome, pick: null }] as const;
const nothing = { pick: null, clear: false, near: [0, 0, 0], hangsOn };

/** Two of three reach, and nothing has a price. */
const unpriced = () =>
  playedBins(
    seasonOf({
      ...nothing,
      logged: free('as-logged', 'As logged', true),
      strategies: [
        free('always-on', 'Always on', true),
        free('humidity-limit', 'Humidity limit', true),
        free('night-hours', 'Night hours', false),
      ],
      hindsight: null,
    }),
  );

/** A bin without a target: no run reaches, and the search in hindsight rests. */
const held = () => {
  const season = seasonOf({
    ...nothing,
    logged: run('as-logged', 'As logged', [50, 50, 50], false),
    strategies: [run('always-on', 'Always on', [70, 60, 80], false)],
    near: [0],
    hindsight: run('best-in-hindsight', 'Best in hindsight', [0, 0, 0], false),
  });
  return playedBins({
    ...season,
    bins: season.bins.map((one) => ({ ...one, bin: { ...one.bin, goal: 'hold' as const } })),
  });
};

const none = () =>
  playedBins(
    seasonOf({ ...nothing, strategies: [run('night-hours', 'Night hours', [200, 190, 210], false)], near: [0] }),
  );

describe('a bin whose energy has no price', () => {
  it('is not told as one that no strategy brings to its target', () => {
    const bins = unpriced();
    expect(strategiesAnswer(bins, UNITS)).toBe(
      `Which strategy is cheapest can’t be told: ${NO_PRICE} In North 36, 2 of 3 strategies reach the target.`,
    );
    expect(strategyKeys(bins)[0]).toMatchObject({ amount: null, note: NO_PRICE });
    expect(adviceFor(bins[0], UNITS)).toBe(
      `2 of 3 strategies reach the target; which is cheapest can’t be told: ${NO_PRICE}`,
    );
  });

  it('carries that reason in every missing cell', () => {
    const bins = unpriced();
    expect(strategyTable(bins).rows[0]).toMatchObject({
      logged: gone(NO_PRICE),
      pick: '2 of 3 strategies reach the target, the cheapest not known',
      cost: gone(NO_PRICE),
      saving: gone(NO_PRICE),
      reached: gone(NO_PRICE),
      hindsight: gone(NO_PRICE),
    });
    const rows = runsTable(bins[0]).rows;
    expect(rows[2]).toMatchObject({ near: gone(NO_PRICE), runs: '5 of 6' });
    expect(hangsTable(bins[0]).rows[0]).toMatchObject({ hours: gone(NO_PRICE), cost: gone(NO_PRICE) });
    // Nothing to draw.
    expect(strategyFigure(bins[0], UNITS)).toEqual([]);
  });

  it('keeps the price’s reason where the search in hindsight found a schedule all the same', () => {
    const one = unpriced()[0];
    const whatIf = { ...one.whatIf, hindsight: free('best-in-hindsight', 'Best in hindsight', true) };
    expect(strategyTable([{ ...one, whatIf }]).rows[0].hindsight).toEqual(gone(NO_PRICE));
    expect(runsTable({ ...one, whatIf }).rows.map(({ way }) => way)).not.toContain('Best in hindsight');
  });

  it('is told by its rule where only the log’s cost is not known', () => {
    const bins = playedBins(seasonOf({ logged: free('as-logged', 'As logged', true) }));
    const rest = `What that is less than as it was run can’t be told: ${NO_PRICE}`;
    expect(strategiesAnswer(bins, UNITS)).toBe(
      `Run by the rule “humidity limit”, North 36 would have come to 15.0 % for 400 USD (380 to 450). ${rest}`,
    );
    expect(strategyKeys(bins)[0].note).toBe(NO_PRICE);
    expect(adviceFor(bins[0], UNITS)).toContain(rest);
    expect(strategyFigure(bins[0], UNITS)[0].notShown).toBe(`“As logged”: ${NO_PRICE}`);
  });
});

describe('a bin to be held', () => {
  it('has nothing to reach, in every place', () => {
    const bins = held();
    expect(strategiesAnswer(bins, UNITS)).toBe('North 36 is to be held: there is nothing to reach.');
    expect(strategyKeys(bins)[0]).toMatchObject({ amount: null, note: HELD });
    expect(adviceFor(bins[0], UNITS)).toBe(`${HELD} As run it cost 50 USD by the model.`);
    expect(strategyTable(bins).rows[0]).toMatchObject({
      logged: 50,
      pick: 'none: to be held',
      cost: gone(HELD),
      saving: gone(HELD),
      hindsight: gone(HELD),
    });
    const { rows } = runsTable(bins[0]);
    expect(rows.map(({ way }) => way)).toEqual(['As logged', 'Always on']);
    expect(rows[1]).toMatchObject({ reached: gone(HELD), runs: gone(HELD), near: gone(HELD) });
  });

  it('is drawn without a word of a target', () => {
    const [figure] = strategyFigure(held()[0], UNITS);
    expect(figure.title).toBe('North 36: to be held, there is nothing to reach');
    const words = [figure.subtitle, figure.alt, ...figure.legend.map(({ label }) => label)].join(' ');
    expect(words).not.toMatch(/target|does not|hindsight/);
  });
});

describe('a bin that no strategy brings to its target', () => {
  it('is told so, and not of a price', () => {
    const bins = none();
    expect(strategiesAnswer(bins, UNITS)).toMatch(/^None of the strategies would have brought North 36 to the target/);
    expect(strategyKeys(bins)[0].note).toBe('No bin has a strategy that reaches its target.');
    expect(strategyTable(bins).rows[0]).toMatchObject({ pick: 'none reaches the target', cost: gone(MISSED) });
    expect(hangsTable(bins[0]).rows[0].hours).toEqual(gone(MISSED));
  });

  it('gives no cost of a schedule in hindsight that does not reach either', () => {
    const bins = playedBins(
      seasonOf({ ...nothing, strategies: [], near: [], hindsight: run('best-in-hindsight', 'Best', [9, 9, 9], false) }),
    );
    expect(strategyTable(bins).rows[0].hindsight).toEqual(gone('No schedule tried reaches the target.'));
  });
});

it('bins of each kind are told apart in one answer', () => {
  const named = (some: ReturnType<typeof none>, name: string) =>
    some.map((one) => ({ ...one, review: { ...one.review, bin: { ...one.review.bin, name } } }));
  expect(
    strategiesAnswer(
      [...named(unpriced(), 'A'), ...named(none(), 'B'), ...named(held(), 'C'), ...named(unpriced(), 'D')],
      UNITS,
    ),
  ).toBe(
    `Which strategy is cheapest can’t be told: ${NO_PRICE} In A, 2 of 3 strategies reach the target; in D, 2 of 3 strategies reach the target. None of the strategies would have brought B to the target in this season’s weather. C is to be held: there is nothing to reach.`,
  );
});

describe('measures of the year', () => {
  const input = exampleInput();
  const otherRule = (whatIf: (typeof WRITTEN_MODELS)[number], goal: 'dry' | 'hold') => {
    const bins = input.review.bins.map((one) => ({ ...one, bin: { ...one.bin, goal } }));
    const review = { ...input.review, bins, whatIf: [{ ...whatIf, binId: bins[0].bin.id }] };
    return measuresOf(input.loaded, review, input.units).find(({ kind }) => kind === 'other-rule');
  };
  const { whatIf } = unpriced()[0];

  it('do not send a bin without a price to look at its airflow', () => {
    const told = otherRule(whatIf, 'dry');
    expect(told?.todo).toMatch(/price for every hour/);
    expect(told?.energy.why).toBe(NO_PRICE);
    expect(told?.saving.why).toBe(NO_PRICE);
  });

  it('leave a bin to be held as it is', () => {
    const told = otherRule(held()[0].whatIf, 'hold');
    expect(told?.todo).toBe('Keep the rule of North 36 as it is: a bin to be held has no target to reach.');
    expect(told?.saving.why).toBe(HELD);
  });
});

describe('the page of strategies', () => {
  const input = exampleInput();
  const of = (whatIf: typeof WRITTEN_MODELS) => {
    const page = strategies.page({ ...input, review: { ...input.review, whatIf } });
    expect(page.failure).toBeUndefined();
    return page;
  };

  it('says nothing of twelve runs, picks and factors where no bin is trusted', () => {
    const [trusted, without] = WRITTEN_MODELS;
    const mayBes = [
      { fitted: {} as FittedValues, doubt: { airFactor: 1, moistureWb: 0, rateFactor: 1, shortFactor: 1 } },
    ];
    const not = { ...without, model: { ...without.model, mayBes } };
    const said = (whatIf: typeof WRITTEN_MODELS) => JSON.stringify(of(whatIf));
    expect(said([trusted, not])).toMatch(/12 runs.*truth is known/s);
    expect(said([not])).not.toMatch(/12 runs|truth is known|four factors/);
    expect(of([not]).ranges).toBeUndefined();
  });
});
