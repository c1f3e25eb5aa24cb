import { describe, expect, it } from 'vitest';
import { percentileYears } from '../../src/analysis/strategies/percentile-years.ts';
import { type StrategyYears, spreadOf } from '../../src/analysis/strategies/strategy-years.ts';
import type { SweepSummary } from '../../src/analysis/strategies/sweep-summary.ts';
import type { BinReview } from '../../src/analysis/types.ts';
import { strategySweptSection } from '../../src/notebook/strategy-swept.ts';
import { Units } from '../../src/report/units.ts';
import { STRATEGIES } from '../../src/simulation/strategies/strategies.ts';

const UNITS = new Units('us', 'USD', 'America/Chicago');
const REVIEWS = [
  ['N1', 'North'],
  ['S1', 'South'],
].map(([id, name]) => ({ bin: { id, name, grain: { crop: 'corn' } } }) as unknown as BinReview);
const NONE = spreadOf([]);

/** A rule of North's in the years from 2020 on: its cost in each, and in how many it reaches. */
function rule(strategy: string, costs: readonly (number | null)[], reached = costs.length): StrategyYears {
  const values = costs.flatMap((value, i) => (value === null ? [] : [{ weather: String(2020 + i), value }]));
  const years = costs.length;
  return {
    ...{ bin: 'N1', strategy, years, why: null },
    ...{ byCost: percentileYears(values), byEndMoisture: percentileYears([]), cost: spreadOf(values) },
    ...{ costPerBushel: NONE, fanHours: NONE, storageLifeUsed: NONE, regret: { ...NONE, notComparable: 0 } },
    reached: [{ by: null, years, reached, chance: reached / years, chanceInterval: null }],
  };
}

function told(rules: readonly StrategyYears[], strategies = STRATEGIES.map(({ id }) => id), bins = ['N1', 'S1']) {
  const planned = (id: string) => ({
    ...{ id, name: id === 'N1' ? 'North' : 'South', bushels: 10_000, startOn: '2024-10-01', weathers: ['season'] },
  });
  const plan = { strategies, by: [], variants: [], bins: bins.map(planned) };
  const regretAgainst = 'cheapest strategy that reached the target' as const;
  const summary = { plan, strategies: rules, leftOut: [], sensitivity: [], regretAgainst } as unknown as SweepSummary;
  const section = strategySweptSection({ summary, why: null }, REVIEWS, UNITS);
  return { ...section, text: section.entries?.[0].text, lead: String(section.lead) };
}

describe('a sweep of few years, or without a price', () => {
  it('tells of one year what a rule costs in it', () => {
    const { lead, text, figures } = told([rule('always-on', [87]), rule('night-hours', [46])]);
    expect(lead).toContain(
      'At target in the one year that could be run, and of these for the least: North by night hours.',
    );
    expect(text).toBe(
      'Night hours reaches the target in the one year that could be run, more surely than the others or for less: 46 USD.',
    );
    // 46 USD over 10,000 bu, in the unit of the figure's axis
    expect(figures?.[0].title).toBe('North, night hours: 0.0046 USD a bushel');
    expect(figures?.[0].legend?.[0].label).toBe('target reached');
  });

  it('tells of two years their mean, and that it is no middle one', () => {
    const { text, notes, tables } = told([rule('always-on', [87, 91]), rule('night-hours', [40, 60])]);
    expect(text).toContain('in all 2 years');
    expect(text).toContain('50 USD (40 to 60) on average, as two years are too few for a middle one.');
    expect(notes?.join(' ')).toContain('Two years have no middle one');
    expect(tables?.[0].rows[1].cost).toMatchObject({ value: 50, interval: [40, 60] });
  });

  it('tells without prices which rules reach, and that their costs lack', () => {
    const { lead, text, figures, tables } = told([
      rule('always-on', [null, null, null]),
      rule('night-hours', [null, null, null]),
      rule('humidity-limit', [null, null, null], 2),
    ]);
    expect(lead).toContain('Most surely at target over the years: North by always on or night hours.');
    expect(lead).toContain('What they cost can’t be told. A price of the energy');
    expect(text).toMatch(/^Always on or night hours reaches? the target in all 3 years, no other more surely\./);
    expect(figures).toEqual([]);
    expect(tables?.[0].rows[0].over).toEqual({
      value: null,
      why: 'A price of the energy is not known for all of its hours.',
    });
  });

  it('says that none reaches only where none does', () => {
    expect(told([rule('always-on', [80, 90, 99], 0)]).lead).toContain('No strategy reaches its target in any year.');
    expect(told([rule('always-on', [80], 0)]).text).toBe(
      'No strategy reaches the target in the one year that could be run.',
    );
  });
});

describe('rules that cost about the same', () => {
  it('are named together within 5 %, as the season’s own section does', () => {
    const years = (of: number) => [of - 50, of - 20, of, of + 30, of + 60];
    const { lead, text } = told([
      rule('daytime-hours', years(844)),
      rule('humidity-limit', years(870)),
      rule('always-on', years(890)),
    ]);
    // 870 is 3.1 % over 844, 890 is 5.5 % over it.
    expect(lead).toContain('North by daytime hours or humidity limit.');
    expect(text).toContain('Within 5 % of that, and as often: humidity limit for 870 USD (820 to 930)');
    expect(text).not.toContain('always on');
    // A title with a comma of its own reads as one.
    const two = told([rule('daytime-hours', years(844)), rule('drying-then-cooling', years(850))]);
    expect(two.lead).toContain('North by daytime hours or “drying, then cooling”.');
  });
});

describe('a sweep of a part of the season', () => {
  it('names the bins and rules that were not swept, and holds one rule against no other', () => {
    const { lead, text } = told([rule('always-on', [80, 90, 99])], ['always-on'], ['N1']);
    expect(lead).toContain('At target over the years, by the one rule that was swept: North by always on.');
    expect(lead).toMatch(
      / Not swept: South\. Rules not swept: daytime hours, night hours, .*, “drying, then cooling” and warmed air\.$/,
    );
    expect(text).toBe('Always on reaches the target in all 3 years, for 90 USD (80 to 99) in the middle year, 2021.');
    expect(told([rule('always-on', [80, 90, 99])]).lead).not.toMatch(/not swept/i);
  });
});

describe('tables over the years', () => {
  it('say beside each cost in how many years the target is reached', () => {
    const { tables } = told([rule('always-on', [800, 844, 900]), rule('cheap-hours', [100, 115, 130], 1)]);
    for (const id of ['swept', 'named-years', 'spread']) {
      const table = tables?.find((one) => one.id === id);
      expect(table?.columns.map(({ label }) => label)).toContain('Years at target');
      expect(table?.rows.map(({ reached }) => reached)).toEqual(['3 of 3', '1 of 3']);
    }
  });
});
