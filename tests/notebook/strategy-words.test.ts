import { describe, expect, it } from 'vitest';
import type { BinReview, SeasonReview } from '../../src/analysis/types.ts';
import type { BinWhatIf, StrategyOutcome } from '../../src/analysis/what-if/what-if-types.ts';
import { estimate } from '../../src/base/estimate.ts';
import { strategiesAnswer, strategyKeys } from '../../src/notebook/strategy-answer.ts';
import { skillTable, strategyFigure, strategyTable } from '../../src/notebook/strategy-tables.ts';
import { adviceFor, dearerAlone, playedBins } from '../../src/notebook/strategy-words.ts';
import { Units } from '../../src/report/units.ts';

const UNITS = new Units('us', 'USD', 'America/Chicago');

/** A run by hand: what the sentences need of it. */
function run(id: string, title: string, cost: [number, number, number], reaches: boolean): StrategyOutcome {
  const outcome = { reachedTarget: reaches, fanHours: 300, lifeUsed: 0.4 } as StrategyOutcome['outcome'];
  const reachedMs = reaches ? Date.UTC(2024, 10, 2, 18) : null;
  const [value, low, high] = cost;
  return { id, title, outcome, cost: estimate(value, low, high), reaching: reaches ? 5 : 0, runs: 6, reachedMs };
}

function seasonOf(changes: Partial<BinWhatIf>): SeasonReview {
  const bin = { id: 'B1', name: 'North 36', goal: 'dry', grain: { targetMoistureWb: 0.15, targetTempC: null } };
  const review = {
    bin,
    fan: { cost: estimate(540, 530, 550), connectedCost: estimate(20, 20, 20) },
  } as unknown as BinReview;
  const model = { trusted: true, why: 'It fits.', trained: null, unseen: null, wouldHelp: [], notes: [] };
  const whatIf = {
    binId: 'B1',
    model,
    logged: run('as-logged', 'As logged', [500, 500, 500], true),
    strategies: [
      run('always-on', 'Always on', [700, 650, 800], true),
      run('humidity-limit', 'Humidity limit', [400, 380, 450], true),
      run('night-hours', 'Night hours', [200, 190, 210], false),
    ],
    hindsight: { ...run('best-in-hindsight', 'Best in hindsight', [350, 350, 350], true) },
    pick: 'humidity-limit',
    clear: true,
    near: [0, 5, 0],
    sure: false,
    why: null,
    ...changes,
  } as unknown as BinWhatIf;
  return { bins: [review], whatIf: [whatIf] } as unknown as SeasonReview;
}

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

  it('names the others that may be the cheapest where none clearly is, likeliest first', () => {
    const bins = playedBins(seasonOf({ clear: false, near: [1, 3, 2] }));
    expect(strategyTable(bins).rows[0].pick).toBe('Humidity limit, night hours or always on');
    expect(strategyFigure(bins[0], UNITS)[0].title).toContain('humidity limit, night hours or always on for the least');
    expect(adviceFor(bins[0], UNITS)).toContain(
      'Which rule costs least the log leaves open: this one does, or comes within 5 % of it, in 3 of 6 runs, night hours in 2 and always on in 1.',
    );
    expect(adviceFor(playedBins(seasonOf({}))[0], UNITS)).not.toContain('leaves open');
  });

  // Alone on the tariff the season costs 700, its share of the farm's peak makes 540 (530 to 550), 20 of it on connected horsepower: 520 less 450 for sure, 700 less 380 at the most.
  it('is no more than the log’s share of a common peak for sure, and all of it at the most', () => {
    const alone = run('as-logged', 'As logged', [700, 700, 700], true);
    const bins = playedBins(seasonOf({ logged: alone }));
    expect(bins[0].saving).toEqual({ value: 120, interval: [70, 320], why: null });
    expect(dearerAlone(bins[0])).toBe(true);
    expect(dearerAlone(playedBins(seasonOf({}))[0])).toBe(false);
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
    expect(figure.title).toBe('North 36: 2 of 3 strategies reach the target, humidity limit for the least');
    const order = ['Best in hindsight', 'Humidity limit', 'As logged', 'Always on', 'Night hours'];
    const places = order.map((name) => figure.alt.indexOf(name));
    expect(places).toEqual([...places].sort((a, b) => a - b));
    expect(figure.alt).toContain('Night hours: 200 (190 to 210), target not reached USD.');
    for (const narrow of [false, true]) {
      expect(figure.draw({ width: narrow ? 330 : 900, narrow, idPrefix: 'w' })).toContain('Humidity limit');
    }
  });
});
