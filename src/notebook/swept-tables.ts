import { IN_HINDSIGHT } from '../analysis/strategies/run-strategy.ts';
import type { StrategyYears } from '../analysis/strategies/strategy-years.ts';
import type { SweepSummary } from '../analysis/strategies/sweep-summary.ts';
import { NO_PRICE } from '../analysis/what-if/what-if-types.ts';
import { withheld } from '../base/estimate.ts';
import { monthName } from '../report/date-text.ts';
import type { Cell, Column, Table } from '../report/page.ts';
import type { Units } from '../report/units.ts';
import { grainOf, MODEL, moneyOf, type SweptBin, titleOf, weatherSaid } from './swept-bins.ts';

const NAMED: readonly Column[] = [
  { key: 'bin', label: 'Bin', quantity: null },
  { key: 'way', label: 'Strategy', quantity: null },
];

/** A cheap rule that misses its target must not pass for a good one. */
const AT_TARGET: Column = { key: 'reached', label: 'Years at target', quantity: null };
const atTarget = ({ reached: [{ reached, years }] }: StrategyYears) => `${reached} of ${years}`;

/** A row a strategy of each bin, bin and strategy named. */
function rowsOf(
  run: readonly SweptBin[],
  units: Units,
  cells: (one: StrategyYears, bin: SweptBin) => Record<string, Cell>,
) {
  return run.flatMap((bin) =>
    bin.told.map((one) => ({ bin: bin.planned.name, way: titleOf(one.strategy, units), ...cells(one, bin) })),
  );
}

/** What each strategy came to over the years, in a line. */
export function overYearsTable(run: readonly SweptBin[], { regretAgainst }: SweepSummary, units: Units): Table {
  const over = regretAgainst === IN_HINDSIGHT ? 'Over best in hindsight' : 'Over best';
  return {
    id: 'swept',
    caption: 'Every strategy over the years',
    folded: true,
    columns: [
      ...NAMED,
      AT_TARGET,
      { key: 'cost', label: 'Cost, middle year', quantity: 'money', known: MODEL },
      { key: 'grain', label: 'The same per grain', quantity: 'money per grain', known: MODEL },
      { key: 'over', label: over, quantity: 'money', known: MODEL },
      { key: 'hours', label: 'Fan hours', quantity: 'hours', known: MODEL },
    ],
    rows: rowsOf(run, units, (one, bin) => ({
      reached: atTarget(one),
      cost: moneyOf(one),
      grain: grainOf(moneyOf(one), bin, units),
      over: ranged(one.regret, unheldWhy(one)),
      hours: ranged(one.fanHours, 'No year was run.'),
    })),
  };
}

/** Why a strategy is not held against the best. */
function unheldWhy({ cost, reached: [{ reached }] }: StrategyYears): string {
  if (reached === 0) return 'It reached its target in no year.';
  return cost.mean === null ? NO_PRICE : 'Nothing to hold it against reached the target in its years.';
}

/** The good, the middle and the poor year of each strategy, by name. */
export function namedYearsTable(run: readonly SweptBin[], units: Units): Table {
  const money = (key: string, label: string): Column => ({ key, label, quantity: 'money', known: MODEL });
  return {
    id: 'named-years',
    caption: 'The good, the middle and the poor year of each strategy, by what it cost in it',
    folded: true,
    columns: [
      ...NAMED,
      AT_TARGET,
      { key: 'good', label: 'Good year', quantity: null },
      money('low', 'Cost, good year'),
      { key: 'middle', label: 'Middle year', quantity: null },
      money('mid', 'Cost, middle year'),
      { key: 'poor', label: 'Poor year', quantity: null },
      money('high', 'Cost, poor year'),
    ],
    rows: rowsOf(run, units, (one) => {
      const { p10, p50, p90, why } = one.byCost;
      const none = { value: null, why: one.cost.mean === null ? NO_PRICE : (why ?? 'No year has a cost.') };
      const [good, middle, poor] = [p10, p50, p90].map((year) => (year === null ? none : weatherSaid(year.weather)));
      return {
        reached: atTarget(one),
        ...{ good, middle, poor },
        low: p10?.value ?? none,
        mid: p50?.value ?? none,
        high: p90?.value ?? none,
      };
    }),
  };
}

/** What a measure of grain costs, and how far seasons lie apart. */
export function spreadTable(run: readonly SweptBin[], units: Units): Table {
  const grain = (key: string, label: string): Column => ({ key, label, quantity: 'money per grain', known: MODEL });
  return {
    id: 'spread',
    caption:
      'Cost of the grain from season to season: mean, standard deviation between years, cheapest and dearest year',
    folded: true,
    columns: [
      ...NAMED,
      AT_TARGET,
      grain('mean', 'Mean'),
      grain('sd', 'From season to season ±'),
      grain('least', 'Cheapest year'),
      grain('most', 'Dearest year'),
    ],
    rows: rowsOf(run, units, (one, bin) => {
      const { cost } = one;
      const said = (value: number | null, why: string): Cell =>
        value === null ? withheld(why) : grainOf({ value, interval: null, why: null }, bin, units);
      return {
        reached: atTarget(one),
        mean: said(cost.mean, NO_PRICE),
        sd: said(cost.sd, cost.years === 0 ? NO_PRICE : 'It takes three years to tell how far they lie apart.'),
        least: said(cost.least, NO_PRICE),
        most: said(cost.most, NO_PRICE),
      };
    }),
  };
}

/** How often each strategy had reached the target for good by each day, and by the end. */
export function chanceTable(run: readonly SweptBin[], units: Units): Table {
  const [first] = run.flatMap(({ told }) => told);
  const days = (first?.reached ?? []).map(({ by }) => by);
  const order = [...days.filter((by) => by !== null), ...days.filter((by) => by === null)];
  return {
    id: 'chances',
    caption: 'Share of the years in which the target was reached for good by the end of a day',
    folded: true,
    columns: [
      ...NAMED,
      { key: 'years', label: 'Years', quantity: 'count' },
      ...order.map((by) => ({
        key: by ?? 'end',
        label: by === null ? 'At the end' : `By ${daySaid(by)}`,
        quantity: 'share' as const,
      })),
    ],
    rows: rowsOf(run, units, ({ years, reached }) => ({
      years,
      ...Object.fromEntries(
        reached.map(({ by, chance, chanceInterval }) => [
          by ?? 'end',
          { value: chance, interval: chanceInterval, why: chance === null ? 'No year was run.' : null },
        ]),
      ),
    })),
  };
}

/** `15 Nov` for `11-15`. */
export function daySaid(by: string): string {
  const [month, day] = by.split('-').map(Number);
  return `${day} ${monthName(month)}`;
}

/** Mean over the years, from the least to the most. */
export function ranged({ mean, least, most }: StrategyYears['fanHours'], why: string, scale = 1): Cell {
  if (mean === null) return { value: null, why };
  return {
    value: scale * mean,
    interval: least === null || most === null ? null : [scale * least, scale * most],
    why: null,
  };
}
