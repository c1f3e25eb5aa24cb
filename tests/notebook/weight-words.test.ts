import { describe, expect, it } from 'vitest';
import type { WayWeights } from '../../src/analysis/what-if/way-weights.ts';
import { estimate } from '../../src/base/estimate.ts';
import { strategiesAnswer, strategyKeys } from '../../src/notebook/strategy-answer.ts';
import { adviceFor, playedBins } from '../../src/notebook/strategy-words.ts';
import { weightTables } from '../../src/notebook/weight-tables.ts';
import { otherRule } from '../../src/notebook/year-end/measures-of.ts';
import { Units } from '../../src/report/units.ts';
import { run, seasonOf } from './strategy-example.ts';

const UNITS = new Units('us', 'USD', 'America/Chicago');

const even = (value: number) => estimate(value, value, value);
const weight = (id: string, cost: number, away: number) => ({
  id,
  givenAway: estimate(away, away - 10, away + 10),
  together: even(cost + away),
  // As run 20 of weight.
  beyondLogged: estimate(cost + away - 20, cost + away - 50, cost + away + 20),
});
/** The rule named costs 400 and dries away so much, the season as run 500 and 20, always on 700 and nothing. */
const weights = (away: number, pick: string): WayWeights => ({
  belowWb: 0.15,
  ways: [weight('as-logged', 500, 20), weight('always-on', 700, 0), weight('humidity-limit', 400, away)],
  pick,
  clear: true,
});

/** The pick ends at 13 %: 1 - 0.85 / 0.87 of its weight lighter. */
function season(counted: WayWeights | null) {
  const dry = run('humidity-limit', 'Humidity limit', [400, 380, 450], true);
  const pick = { ...dry, outcome: { ...dry.outcome, endMoistureWb: 0.13 } };
  return playedBins(
    seasonOf({ strategies: [run('always-on', 'Always on', [700, 650, 800], true), pick], weights: counted }),
  );
}

describe('over-drying beside the cost of a rule', () => {
  it('is told in money, beside that of the season as run, and whether the rule is still the one', () => {
    const [one] = season(weights(60, 'humidity-limit'));
    expect(adviceFor(one, UNITS)).toContain(
      'It would have ended at 13.0 %: 60 USD (50 to 70) lost by over-drying below 15.0 %, in no rule’s cost; as run 20 USD by the model. With it counted the rule comes to the least as well. Counted on both sides, the rule comes to 60 USD (20 to 90) less than as it was run.',
    );
    // 40 more than as run, of a saving of 100.
    expect(strategiesAnswer([one], UNITS)).toContain(
      '100 USD (50 to 120) less than as it was run. Over-drying takes 40 USD more of the grain’s weight than as run, which is not in it.',
    );
  });

  it('names the rule that comes to less with it, and a saving that it eats up', () => {
    const [one] = season(weights(420, 'always-on'));
    expect(adviceFor(one, UNITS)).toContain(
      'With it counted “always on” comes to the least: 700 USD together, this rule 820 USD.',
    );
    expect(strategiesAnswer([one], UNITS)).toContain(
      '400 USD more of the grain’s weight than as run: more than it saves.',
    );
  });

  it('stands in a table of every way, those that reach by what they come to, where one of them has some', () => {
    const [table] = weightTables(season(weights(60, 'humidity-limit'))[0], UNITS);
    expect(table.rows.map(({ way, together }) => [way, together])).toEqual([
      ['Humidity limit', even(460)],
      ['As logged', even(520)],
      ['Always on', even(700)],
    ]);
    expect(weightTables(season(null)[0], UNITS)).toEqual([]);
  });

  it('leads with the bin in which something is left after it', () => {
    const [eaten] = season(weights(420, 'always-on'));
    const [other] = season(weights(60, 'humidity-limit'));
    const named = { ...other, review: { ...other.review, bin: { ...other.review.bin, name: 'South 36' } } };
    expect(strategiesAnswer([eaten, named], UNITS)).toContain('South 36 would have come to');
    expect(strategyKeys([eaten, named])[0]).toMatchObject({ note: 'South 36; over-drying not counted' });
    expect(strategyKeys([eaten])[0]).toMatchObject({ amount: null, note: 'What a rule saves, its over-drying takes.' });
    // A bin whose saving is not clear stands before one whose clear saving is eaten, which is then not denied.
    const unclear = { ...named, whatIf: { ...named.whatIf, weights: null }, saving: estimate(30, -10, 60) };
    expect(strategiesAnswer([eaten, unclear], UNITS)).toContain('no bin shows a clear saving that over-drying leaves.');
  });

  it('is not told surer than the runs have it', () => {
    const [one] = season({ ...weights(60, 'humidity-limit'), clear: false });
    expect(adviceFor(one, UNITS)).toContain('With it counted the rule may come to the least as well.');
    expect(adviceFor(season({ ...weights(420, 'always-on'), clear: false })[0], UNITS)).toContain(
      'With it counted “always on” may come to the least:',
    );
    const rivals = { ...one, rivals: [one.whatIf.strategies[0]] };
    expect(adviceFor(rivals, UNITS)).toContain('the rule may come to the least. ');
    // The least by its regret over all runs, and dearer in the bin as fitted: 700 beside 460.
    expect(adviceFor(season(weights(60, 'always-on'))[0], UNITS)).not.toMatch(/comes? to the least/);
  });

  it('is told where the season as run dried away more than the rule', () => {
    const counted = weights(0, 'humidity-limit');
    const [logged, ...rules] = counted.ways;
    const less = rules.map((one) => ({ ...one, beyondLogged: estimate(100, 80, 130) }));
    const [one] = season({ ...counted, ways: [{ ...logged, givenAway: even(320) }, ...less] });
    expect(strategiesAnswer([one], UNITS)).toContain(
      'Over-drying takes 320 USD less of the grain’s weight than as run, which is not in it.',
    );
    expect(adviceFor(one, UNITS)).toContain('the rule comes to 400 USD (370 to 420) less than as it was run.');
  });

  it('is told with its table where the season as run alone was over-dried', () => {
    const counted = weights(0, 'humidity-limit');
    const [logged, ...rules] = counted.ways;
    // No tenth of the saving of 100: nothing is told beside it.
    const ways = [{ ...logged, givenAway: even(8) }, ...rules];
    const at = (endMoistureWb: number) => {
      const even = run('humidity-limit', 'Humidity limit', [400, 380, 450], true);
      const asRun = run('as-logged', 'As logged', [500, 500, 500], false);
      return playedBins(
        seasonOf({
          logged: { ...asRun, outcome: { ...asRun.outcome, endMoistureWb } },
          strategies: [{ ...even, outcome: { ...even.outcome, endMoistureWb: 0.15 } }],
          weights: { ...counted, ways },
        }),
      )[0];
    };
    expect(adviceFor(at(0.13), UNITS)).toContain(
      'It would have ended at 15.0 %: 0 USD (−10 to 10) lost by over-drying below 15.0 %, in no rule’s cost; as run 8.00 USD by the model.',
    );
    expect(weightTables(at(0.13), UNITS)).toHaveLength(1);
    expect(adviceFor(at(0.15), UNITS)).not.toContain('over-drying');
    expect(weightTables(at(0.15), UNITS)).toEqual([]);
  });

  it('is told where the fans ran cheapest as they did, before no other rule is said to be needed', () => {
    const [one] = season(weights(60, 'humidity-limit'));
    const dear = { ...one, saving: estimate(-50, -90, -20) };
    expect(adviceFor(dear, UNITS)).toContain(
      'was cheaper than every strategy of the kit; with over-drying counted, 20 USD as run and 60 USD (50 to 70) by “humidity limit”, that rule would have come to 60 USD (20 to 90) less.',
    );
    const [none] = season(weights(420, 'humidity-limit'));
    expect(adviceFor({ ...none, saving: estimate(-50, -90, -20) }, UNITS)).toContain('North 36 needs no other rule.');
  });

  it('is in the saving of the year-end report, which a rule is recommended by', () => {
    const other = (counted: WayWeights | null) => otherRule(season(counted)[0], UNITS)[0];
    expect(other(null).saving).toMatchObject({ value: 100, interval: [50, 120] });
    expect(other(weights(60, 'humidity-limit')).saving).toMatchObject({ value: 60, interval: [20, 90] });
    expect(other(weights(420, 'always-on'))).toMatchObject({
      saving: { value: null, why: expect.stringContaining('400 USD more of the grain’s weight than as run') },
      todo: expect.stringContaining('or to “always on”, which comes to less with over-drying counted, and'),
    });
  });
});
