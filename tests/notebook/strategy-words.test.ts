import { describe, expect, it } from 'vitest';
import strategies from '../../notebooks/strategies.ts';
import { FAN_ON, type FanSpans } from '../../src/analysis/types.ts';
import type { BinWhatIf } from '../../src/analysis/what-if/what-if-types.ts';
import { nextSeasonLead, strategiesAnswer, strategyKeys } from '../../src/notebook/strategy-answer.ts';
import { strategyFigure } from '../../src/notebook/strategy-runs.ts';
import { aloneNotes, beforeNotes, dearerAlone } from '../../src/notebook/strategy-saving.ts';
import { skillTable, strategyTable } from '../../src/notebook/strategy-tables.ts';
import { adviceFor, ofRuns, playedBins, ruleSaid } from '../../src/notebook/strategy-words.ts';
import { Units } from '../../src/report/units.ts';
import { run, seasonOf } from './strategy-example.ts';

const UNITS = new Units('us', 'USD', 'America/Chicago');

describe('what another way would have cost', () => {
  // 500 as run less 400 (380 to 450): 100 (50 to 120) less.
  it('is told with its saving, when it reaches, what is in doubt, and what hindsight would have needed', () => {
    const bins = playedBins(seasonOf({}));
    expect(bins[0].saving).toEqual({ value: 100, interval: [50, 120], why: null });
    expect(strategiesAnswer(bins, UNITS)).toBe(
      'Run by the rule “humidity limit”, North 36 would have come to 15.0 % for 400 USD (380 to 450), 100 USD (50 to 120) less than as it was run.',
    );
    const advice = adviceFor(bins[0], UNITS);
    expect(advice).toContain('by 2 Nov 2024 for 400 USD (380 to 450), 100 USD (50 to 120) less than as it was run.');
    expect(advice).toContain('in 5 of 6 runs');
    expect(advice).toContain('With the weather known ahead 350 USD would have done, by 2 Nov 2024.');
    expect(strategyKeys(bins)[0].amount).toEqual(bins[0].saving);
  });

  it('sends a farm of either hemisphere to its next season', () => {
    // Wheat of the south is put up in December, rice in March: no fall of theirs.
    const season = seasonOf({ why: 'No log.' });
    const two = {
      bins: [...season.bins, ...season.bins],
      whatIf: [...(season.whatIf ?? []), ...(season.whatIf ?? [])],
    };
    const said = strategiesAnswer(playedBins(two as unknown as typeof season), UNITS);
    expect(said).toContain('The others’ reasons stand under Next season.');
    expect(strategies.question).toMatch(/next season\?$/);
  });

  it('counts the bins in which another rule would clearly have cost less', () => {
    expect(nextSeasonLead(playedBins(seasonOf({})))).toBe(
      'In this season’s weather another rule would clearly have cost less than as it was run in 1 of 1 bin of which it can be told, North 36. Another year is another weather.',
    );
    const cheap = playedBins(seasonOf({ logged: run('as-logged', 'As logged', [300, 300, 300], true) }));
    expect(nextSeasonLead(cheap)).toContain(
      'no rule would clearly have cost less than as it was run, in the one bin of',
    );
    expect(nextSeasonLead([])).toContain('No bin has a saving that can be told.');
  });

  it('calls nothing a saving that costs more', () => {
    const cheap = playedBins(seasonOf({ logged: run('as-logged', 'As logged', [300, 300, 300], true) }));
    expect(cheap[0].saving.value).toBeLessThan(0);
    expect(strategyKeys(cheap)[0]).toMatchObject({
      amount: null,
      note: 'No rule that reaches its target costs less than the season as run.',
    });
  });

  it('names no rule that ages the grain more than it was without saying so', () => {
    const [bin] = playedBins(seasonOf({}));
    const pick = { ...bin.pick!, outcome: { ...bin.pick!.outcome, lifeUsed: 1.04 } };
    expect(adviceFor(bin, UNITS)).not.toContain('storage time');
    expect(adviceFor({ ...bin, pick }, UNITS)).toContain(
      'than as it was run. Under this rule the worst layer would have used 104 % of the storage time by the model, 40.0 % as run: more than there is.',
    );
  });

  it('tells a midnight as the day before, and weight that the rule would have dried away', () => {
    const [bin] = playedBins(seasonOf({}));
    const drier = (endMoistureWb: number) => {
      const pick = {
        ...bin.pick!,
        reachedMs: Date.UTC(2024, 10, 3, 5),
        outcome: { ...bin.pick!.outcome, endMoistureWb },
      };
      return adviceFor({ ...bin, pick }, UNITS);
    };
    // Midnight in Chicago, summer time; 1 - 0.85 / 0.88 of the weight.
    expect(drier(0.12)).toContain('brought it to 15.0 % by 2 Nov 2024 for 400 USD');
    expect(drier(0.12)).toContain(
      'It would have ended at 12.0 %: 3.4 % of its weight lost by over-drying below 15.0 %, in no rule’s cost.',
    );
    expect(drier(0.1465)).not.toContain('over-drying');
  });

  it('names the others that may be the cheapest where none clearly is, likeliest first', () => {
    const bins = playedBins(seasonOf({ clear: false, near: [1, 3, 2] }));
    expect(strategyTable(bins).rows[0].pick).toBe('“Humidity limit”, “night hours” or “always on”');
    // Night hours do not reach in the bin as fitted.
    expect(strategyFigure(bins[0], UNITS)[0].title).toBe(
      'North 36: 2 of 3 strategies reach the target in the bin as fitted, “humidity limit” or “always on” for the least; “night hours” may too',
    );
    expect(adviceFor(bins[0], UNITS)).toContain(
      'Which rule costs least the log leaves open: this one does, or comes within 5 % of it, in 3 of 6 runs, “night hours” in 2 and “always on” in 1.',
    );
    expect(adviceFor(playedBins(seasonOf({}))[0], UNITS)).not.toContain('leaves open');
  });

  it('calls the rule named the cheapest only where the figure under the title shows it so', () => {
    // 410 is 2.5 % over 400: the surest within 5 % over all runs, not the least in the bin as fitted.
    const strategies = [
      run('always-on', 'Always on', [400, 380, 700], true),
      run('humidity-limit', 'Humidity limit', [410, 390, 450], true),
    ];
    const titleFor = (pick: string) =>
      strategyFigure(playedBins(seasonOf({ strategies, pick, near: [4, 6] }))[0], UNITS)[0].title;
    expect(titleFor('humidity-limit')).toBe(
      'North 36: 2 of 2 strategies reach the target, “humidity limit” most surely within 5 % of the least',
    );
    expect(titleFor('always-on')).toBe('North 36: 2 of 2 strategies reach the target, “always on” for the least');
  });

  it('sets a rule’s name apart as the subject of a sentence', () => {
    const [one] = playedBins(seasonOf({ logged: run('as-logged', 'As logged', [500, 500, 500], false) }));
    expect(adviceFor(one, UNITS)).toMatch(
      /^“Humidity limit” would have brought it to 15\.0 % by .* USD by the model and did not come there\./,
    );
  });

  it('sets titles that hold a comma apart in a list', () => {
    const strategies = [
      run('cheap-hours', 'Cheap hours', [400, 380, 450], true),
      run('dry-then-cool', 'Drying, then cooling', [410, 380, 450], true),
    ];
    const [one] = playedBins(seasonOf({ strategies, pick: 'cheap-hours', clear: false, near: [3, 2] }));
    expect(ruleSaid(one)).toBe('“Cheap hours” or “drying, then cooling”');
    expect(adviceFor(one, UNITS)).toContain('in 3 of 6 runs, “drying, then cooling” in 2.');
  });

  it('counts one run as one', () => {
    expect([ofRuns(1, 1), ofRuns(5, 12)]).toEqual(['1 of 1 run', '5 of 12 runs']);
  });

  it('says how many logged fan hours lie before the model, from one in a hundred on', () => {
    const season = seasonOf({ schedule: { startMs: Date.UTC(2024, 9, 10, 18) } as BinWhatIf['schedule'] });
    // 127 hours of 500 before; then 4 of 500.
    const noted = (before: number) => {
      const startMs = Date.UTC(2024, 9, 10, 18) - before * 3_600_000;
      const spans = { startMs: [startMs], endMs: [startMs + 500 * 3_600_000], state: [FAN_ON] };
      return beforeNotes(
        playedBins({
          ...season,
          bins: season.bins.map((one) => ({ ...one, fan: { ...one.fan, spans: spans as unknown as FanSpans } })),
        }),
        UNITS,
      );
    };
    expect(noted(127)).toEqual([
      'North 36: the model begins on 10 Oct 2024; 127 h of the fan by the log before are in the cost by log and not in the costs by the model.',
    ]);
    expect(noted(4)).toEqual([]);
  });

  // Alone on the tariff the season costs 700, its share of the farm's peak makes 540 (530 to 550), 20 of it on connected horsepower: 520 less 450 for sure, 700 less 380 at the most.
  it('is no more than the log’s share of a common peak for sure, and all of it at the most', () => {
    const alone = run('as-logged', 'As logged', [700, 700, 700], true);
    const bins = playedBins(seasonOf({ logged: alone }));
    expect(bins[0].saving).toEqual({ value: 120, interval: [70, 320], why: null });
    expect(dearerAlone(bins[0])).toBe(true);
    expect(dearerAlone(playedBins(seasonOf({}))[0])).toBe(false);
    // What is subtracted from stands beside: 520 - 400 = 120, 520 - 450 = 70, 700 - 380 = 320.
    const table = strategyTable(bins);
    expect(table.rows[0].against).toEqual({ value: 520, interval: [520, 700], why: null });
    expect(table.columns.map(({ label }) => label)).toContain('Held against');
    expect(aloneNotes(bins)[0]).toContain('“held against” less “its cost”');
    expect(adviceFor(bins[0], UNITS)).toContain(
      '120 USD (70 to 320) less than as it was run (520 USD as its share of the farm’s bill, 700 USD alone by the model).',
    );
    expect(strategiesAnswer(bins, UNITS)).toContain('520 USD as its share of the farm’s bill');
    expect(strategyTable(playedBins(seasonOf({}))).columns.map(({ key }) => key)).not.toContain('against');
  });

  it('says of a dearer schedule in hindsight that it is there earlier', () => {
    const early = {
      ...run('best-in-hindsight', 'Best in hindsight', [430, 430, 430], true),
      reachedMs: Date.UTC(2024, 9, 20, 18),
    };
    expect(adviceFor(playedBins(seasonOf({ hindsight: early }))[0], UNITS)).toContain(
      'To be there as early as it was, by 20 Oct 2024, would have taken 430 USD with the weather known ahead.',
    );
  });

  it('is no clear difference where the range of the saving holds zero', () => {
    const wide = run('humidity-limit', 'Humidity limit', [480, 400, 560], true);
    const bins = playedBins(seasonOf({ strategies: [wide] }));
    expect(adviceFor(bins[0], UNITS)).toContain('no clear difference to how it was run (500 USD by the model)');
    expect(strategiesAnswer(bins, UNITS)).toContain('not clearly less than as it was run');
  });

  it('says where the season as run was the cheapest', () => {
    const dear = run('humidity-limit', 'Humidity limit', [600, 550, 650], true);
    expect(adviceFor(playedBins(seasonOf({ strategies: [dear] }))[0], UNITS)).toContain(
      'was cheaper than every strategy of the kit',
    );
  });

  it('does not hold a cost against a season that missed its target', () => {
    const missed = run('as-logged', 'As logged', [300, 300, 300], false);
    expect(adviceFor(playedBins(seasonOf({ logged: missed }))[0], UNITS)).toContain(
      'as run it cost 300 USD by the model and did not come there',
    );
  });

  it('tells nothing from a model that is not trusted, and why', () => {
    const why = 'Temperatures of the bed lie 3.1 °C from the log.';
    const bins = playedBins(seasonOf({ logged: null, strategies: [], hindsight: null, pick: null, why }));
    expect(strategiesAnswer(bins, UNITS)).toBe(`Can’t tell: no bin’s model can be trusted. North 36: ${why}`);
    expect(adviceFor(bins[0], UNITS)).toBe(`Withheld. ${why}`);
    expect(strategyFigure(bins[0], UNITS)).toEqual([]);
    expect(strategyTable(bins).rows[0]).toMatchObject({ logged: { value: null, why }, cost: { value: null, why } });
    expect(skillTable(bins).rows[0].temp).toMatchObject({ value: null });
  });

  it('says so where models were left out', () => {
    expect(strategiesAnswer(playedBins({ ...seasonOf({}), whatIf: undefined }), UNITS)).toBe(
      'Can’t tell: models were left out of this review.',
    );
  });

  it('draws the ways that reach first, each group by cost, in words too', () => {
    const [figure] = strategyFigure(playedBins(seasonOf({}))[0], UNITS);
    expect(figure.title).toBe('North 36: 2 of 3 strategies reach the target, “humidity limit” for the least');
    const order = ['Best in hindsight', 'Humidity limit', 'As logged', 'Always on', 'Night hours'];
    const places = order.map((name) => figure.alt.indexOf(name));
    expect(places).toEqual([...places].sort((a, b) => a - b));
    expect(figure.legend.at(-1)?.label).toBe(
      'lowest and highest in the bin as fitted and in 11 that go with the log as well',
    );
    expect(figure.alt).toContain('Night hours: 200 (190 to 210), target not reached USD.');
    for (const narrow of [false, true]) {
      expect(figure.draw({ width: narrow ? 330 : 900, narrow, idPrefix: 'w' })).toContain('Humidity limit');
    }
  });
});
