import { describe, expect, it } from 'vitest';
import type { BinReview } from '../../src/analysis/types.ts';
import { asLoggedTold, moreFans } from '../../src/analysis/what-if/more-fans.ts';
import { strategiesSummary } from '../../src/analysis/what-if/what-if-summary.ts';
import { estimate } from '../../src/base/estimate.ts';
import { moreFansNotes } from '../../src/notebook/more-fans.ts';
import { runsTable } from '../../src/notebook/strategy-runs.ts';
import { strategyTable } from '../../src/notebook/strategy-tables.ts';
import { adviceFor, playedBins } from '../../src/notebook/strategy-words.ts';
import type { LoadedSeason } from '../../src/season/loaded.ts';
import { exampleInput } from '../report/example-review.ts';
import { run, seasonOf } from './strategy-example.ts';

const { units } = exampleInput();

/** F1 of 15 kW all 1,300 h, F2 of 8 kW beside it in 650 of them: 19,500 and 5,200 kWh. */
const fans = [
  { fanId: 'F1', onHours: 1300, energyKwh: 19_500 },
  { fanId: 'F2', onHours: 650, energyKwh: 5200 },
];
function withFans(changes: Parameters<typeof seasonOf>[0], fanSet: string, of = fans) {
  const season = seasonOf(changes);
  const kwh = of.reduce((sum, { energyKwh }) => sum + energyKwh, 0);
  const bins = season.bins.map((one) => ({
    ...one,
    bin: { ...one.bin, fanIds: ['F1', 'F2'] },
    airflow: { ...one.airflow, fanSet },
    fan: { ...one.fan, fans: of, hours: estimate(1300, 1290, 1310), energyKwh: estimate(kwh, kwh, kwh) },
  }));
  const [review] = bins as unknown as BinReview[];
  const whatIf = season.whatIf?.map((one) => ({ ...one, logged: asLoggedTold(one.logged!, review) }));
  return { ...season, bins: [review], whatIf };
}

describe('a second fan that ran beside the one that the runs are reckoned with', () => {
  it('keeps the cost as run by the model, and a saving against it, from being told', () => {
    const [one] = playedBins(withFans({}, 'F1'));
    const why =
      'All runs of North 36 are reckoned with F1; F2 ran beside in a part of its hours, at a cost that is in none of them.';
    // 400 for the rule against 500 as run by the model would be 100, where the log has 520 without the connected charges.
    expect(one.saving).toEqual({ value: null, interval: null, why });
    expect(strategyTable([one]).rows[0].logged).toEqual({ value: null, why });
    const [asLogged] = runsTable(one).rows.filter(({ way }) => way === 'As logged');
    expect(asLogged).toMatchObject({ energy: { value: null, why }, cost: { value: null, why } });
    expect(adviceFor(one, units)).toContain(`What that is less than as it was run can’t be told: ${why}`);
    // 5,200 of 24,700 kWh.
    expect(moreFansNotes([one.review], units)[0]).toMatch(/It made 21\.1 % of the energy by log\./);
  });

  it('leaves energy and cost as logged out of summary.json, with the same reason', () => {
    const loaded = { season: { site: { timeZone: 'America/Chicago' } } } as unknown as LoadedSeason;
    const rows = strategiesSummary(loaded, withFans({}, 'F1')).strategies;
    const [logged, ...others] = rows;
    expect(logged).toMatchObject({ strategy: 'as-logged', fanHours: 300, energyKwh: null, cost: null });
    expect(logged.why).toMatch(/^All runs of North 36 are reckoned with F1; F2 ran beside/);
    expect(others.map(({ cost }) => cost)).toEqual([700, 400, 200, 350]);
    expect(strategiesSummary(loaded, withFans({}, 'F1+F2')).strategies[0].cost).toBe(500);
  });

  it('has the cost by log beside a rule that reaches what the season did not', () => {
    const [one] = playedBins(withFans({ logged: run('as-logged', 'As logged', [500, 500, 500], false) }, 'F1'));
    expect(adviceFor(one, units)).toContain('; as run it cost 520 USD by its log and did not come there.');
  });

  it('is no matter where the runs have both fans, or where one took the place of the other', () => {
    expect(moreFans(withFans({}, 'F1+F2').bins[0])).toBeNull();
    const inTurns = [
      { fanId: 'F1', onHours: 650, energyKwh: 9750 },
      { fanId: 'F2', onHours: 650, energyKwh: 9750 },
    ];
    expect(moreFans(withFans({}, 'F1', inTurns).bins[0])).toBeNull();
  });
});
