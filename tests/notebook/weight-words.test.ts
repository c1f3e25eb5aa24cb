import { describe, expect, it } from 'vitest';
import type { WayWeights } from '../../src/analysis/what-if/way-weights.ts';
import { estimate } from '../../src/base/estimate.ts';
import { strategiesAnswer } from '../../src/notebook/strategy-answer.ts';
import { adviceFor, playedBins } from '../../src/notebook/strategy-words.ts';
import { weightTables } from '../../src/notebook/weight-words.ts';
import { Units } from '../../src/report/units.ts';
import { run, seasonOf } from './strategy-example.ts';

const UNITS = new Units('us', 'USD', 'America/Chicago');

const even = (value: number) => estimate(value, value, value);
const weight = (id: string, cost: number, away: number) => ({
  id,
  givenAway: estimate(away, away - 10, away + 10),
  together: even(cost + away),
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
      'It would have ended at 13.0 %, 2.3 % of its weight lighter than at 15.0 %: 60 USD (50 to 70) at the stated price (as run 20 USD), in no rule’s cost. With over-drying counted the rule comes to the least as well.',
    );
    // 40 more than as run, of a saving of 100.
    expect(strategiesAnswer([one], UNITS)).toContain(
      '100 USD (50 to 120) less than as it was run. Over-drying takes 40 USD more of the grain’s weight than as run, which is not in it.',
    );
  });

  it('names the rule that comes to less with it, and a saving that it eats up', () => {
    const [one] = season(weights(420, 'always-on'));
    expect(adviceFor(one, UNITS)).toContain(
      'With over-drying counted “always on” comes to the least: 700 USD together, this rule 820 USD.',
    );
    expect(strategiesAnswer([one], UNITS)).toContain(
      '400 USD more of the grain’s weight than as run: more than it saves.',
    );
  });

  it('stands in a table of every way, where a way that reaches has some', () => {
    const [table] = weightTables(season(weights(60, 'humidity-limit'))[0], UNITS);
    expect(table.rows.map(({ way, together }) => [way, together])).toEqual([
      ['As logged', even(520)],
      ['Always on', even(700)],
      ['Humidity limit', even(460)],
    ]);
    expect(weightTables(season(null)[0], UNITS)).toEqual([]);
  });

  it('leads with the bin in which something is left after it', () => {
    const [eaten] = season(weights(420, 'always-on'));
    const [other] = season(weights(60, 'humidity-limit'));
    const named = { ...other, review: { ...other.review, bin: { ...other.review.bin, name: 'South 36' } } };
    expect(strategiesAnswer([eaten, named], UNITS)).toContain('South 36 would have come to');
  });
});
