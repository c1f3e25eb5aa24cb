import { beforeAll, describe, expect, it } from 'vitest';
import { hindsightCsv } from '../../../scripts/review/hindsight-csv.ts';
import { bushelsOf } from '../../../src/analysis/grain/per-bushel.ts';
import { runSpecOf } from '../../../src/analysis/model/run-spec-of.ts';
import { summaryOf } from '../../../src/analysis/summary.ts';
import { SUMMARY_SHAPE } from '../../../src/analysis/summary-shape.ts';
import type { SeasonReview } from '../../../src/analysis/types.ts';
import { binWhatIf } from '../../../src/analysis/what-if/bin-what-if.ts';
import { crossedRuns } from '../../../src/analysis/what-if/crossed-runs.ts';
import type { BinWhatIf } from '../../../src/analysis/what-if/what-if-types.ts';
import { zoneOf } from '../../../src/base/zone.ts';
import { isothermsOf } from '../../../src/grain/isotherm.ts';
import { hangsNotes } from '../../../src/notebook/strategy-hangs.ts';
import { Units } from '../../../src/report/units.ts';
import type { LoadedSeason } from '../../../src/season/loaded.ts';
import { runSeason } from '../../../src/simulation/run/run-season.ts';
import { scheduled } from '../../../src/simulation/strategies/scheduled.ts';
import { loadedSample, reviewedSample } from '../../support/sample.ts';

let loaded: LoadedSeason;
let plain: SeasonReview;
/** of B5: a bin of soybeans to be cooled, with one cable */
let told: BinWhatIf;
let review: SeasonReview;

beforeAll(async () => {
  loaded = await loadedSample('sorrel-fork');
  plain = await reviewedSample('sorrel-fork');
  const bin = plain.bins.find((one) => one.bin.id === 'B5');
  if (bin === undefined) throw new Error('the sample has no B5');
  told = binWhatIf(loaded, bin);
  review = { ...plain, whatIf: [told] };
}, 240_000);

describe('the what-if of a bin', () => {
  it('has a model that it trusts, and runs', () => {
    expect([told.model.trusted, told.why]).toEqual([true, null]);
    expect(told.strategies.length).toBeGreaterThan(6);
  });

  it('runs the logged hours again at the cost that the log has', () => {
    // The log's own energy and demand, worked out by the tariff quarter by quarter; the run is by whole hours.
    const { hours, cost, connectedCost } = plain.bins.find((one) => one.bin.id === 'B5')!.fan;
    expect(told.logged?.outcome.fanHours).toBeCloseTo(Number(hours.value), 0);
    const byLog = Number(cost.value) - Number(connectedCost.value ?? 0);
    expect(Math.abs(Number(told.logged?.cost.value) / byLog - 1)).toBeLessThan(0.03);
  });

  it('finds no schedule in hindsight dearer than one that reaches as early', () => {
    const { hindsight, strategies, logged } = told;
    expect(hindsight?.outcome.reachedTarget).toBe(true);
    const early = strategies.filter(
      ({ outcome, reachedMs }) => outcome.reachedTarget && Number(reachedMs) <= Number(logged?.reachedMs),
    );
    expect(early.length).toBeGreaterThan(0);
    for (const one of early) expect(Number(hindsight?.cost.value)).toBeLessThanOrEqual(Number(one.cost.value) + 1e-9);
  });

  it('picks one that reaches its target, and no cheaper one reaches in as many runs', () => {
    const pick = told.strategies.find(({ id }) => id === told.pick)!;
    expect(pick.outcome.reachedTarget).toBe(true);
    for (const { outcome, reaching } of told.strategies) {
      if (outcome.reachedTarget) expect(reaching).toBeLessThanOrEqual(pick.reaching);
    }
  });
});

describe('the schedule in hindsight', () => {
  it('is written out hour by hour and, read back and run again, gives the cost that it claims', () => {
    const csv = hindsightCsv([told], zoneOf(loaded.season.site.timeZone));
    const rows = String(csv).trimEnd().split('\r\n').slice(1);
    const ways = rows.map((row) => String(row.split(',').at(-1)));
    expect(new Set(ways)).toEqual(new Set(['off', 'fan']));
    const bin = plain.bins.find((one) => one.bin.id === 'B5')!;
    const { spec } = runSpecOf(loaded, bin, told.model.fitted!);
    expect(rows).toHaveLength(spec!.endHour);
    const share = Float64Array.from(ways, (way) => (way === 'off' ? 0 : 1));
    const { outcome } = runSeason(spec!, scheduled('read-back', 'Read back', share));
    expect(outcome.cost).toBe(told.hindsight?.outcome.cost);
    expect(outcome.reachedTarget).toBe(true);
  });

  it('stands beside the hours of the log, in local time', () => {
    const [first] = String(hindsightCsv([told], zoneOf(loaded.season.site.timeZone)))
      .split('\r\n')
      .slice(1);
    const [binId, from] = first.split(',');
    expect(binId).toBe('B5');
    expect(Date.parse(from)).toBe(told.schedule?.startMs);
    const hours = told.schedule!.logged.reduce((sum, part) => sum + part, 0);
    expect(hours).toBeCloseTo(Number(told.logged?.outcome.fanHours), 6);
    expect(hindsightCsv([], zoneOf('UTC'))).toBeNull();
  });
});

describe('what the numbers hang on', () => {
  it('is told by every published isotherm of the crop, finer layers and other rates, beside the fit', () => {
    const [fitted, ...others] = told.hangsOn;
    expect(fitted.part).toBe('as fitted');
    expect(fitted.logged).toEqual(told.logged?.outcome);
    expect(others.filter(({ part }) => part === 'isotherm')).toHaveLength(isothermsOf('soybean').length - 1);
    expect(others.map(({ part }) => part)).toContain('layers');
    expect(others.map(({ part }) => part)).toContain('steps');
    expect(others.filter(({ part }) => part === 'rate')).toHaveLength(3);
  });

  it('balances in each, and moves where the physics do', () => {
    const [fitted, ...others] = told.hangsOn;
    for (const { title, logged } of told.hangsOn) {
      // The issue's own limit on the books of a bed.
      expect(Math.abs(logged.imbalance.water), title).toBeLessThan(1e-9);
      expect(Math.abs(logged.imbalance.heat), title).toBeLessThan(1e-9);
    }
    for (const one of others) expect(one.logged.endMoistureWb, one.title).not.toBe(fitted.logged.endMoistureWb);
    expect(hangsNotes({ whatIf: told } as never, new Units('us', 'USD', 'America/Chicago')).join(' ')).toMatch(
      /balance: .*a billionth/,
    );
  });
});

describe('its part of summary.json', () => {
  it('keeps to the schema, a row for each run, the model beside', () => {
    const summary = SUMMARY_SHAPE.parse(summaryOf(loaded, review));
    expect(summary.strategies).toHaveLength(told.strategies.length + 2);
    expect(summary.strategiesWhy).toBeNull();
    expect(new Set(summary.strategies.map(({ bin }) => bin))).toEqual(new Set(['B5']));
    for (const { cost, costInterval, strategy } of summary.strategies) {
      expect(cost, strategy).not.toBeNull();
      if (costInterval === null) continue;
      expect(costInterval[0]).toBeLessThanOrEqual(Number(cost));
      expect(costInterval[1]).toBeGreaterThanOrEqual(Number(cost));
    }
    const model = (id: string) => summary.bins.find((one) => one.id === id)?.model;
    expect(model('B5')?.trusted).toBe(true);
    expect(model('B5')?.temperatureRmseC).toBeLessThan(2);
    expect(model('B1')).toMatchObject({ trusted: null, why: 'The model of this bin could not be made.' });
  });

  it('says that models were left out', () => {
    const { strategies, strategiesWhy, bins } = summaryOf(loaded, plain);
    expect(strategies).toEqual([]);
    expect(strategiesWhy).toContain('--no-model');
    expect(bins[0].model.why).toContain('--no-model');
  });
});

describe('every way on the bin', () => {
  const crossed = (bins = plain.bins, of = told) => crossedRuns(loaded, bins, [of]);
  // What is asked of the hours hangs on no range: the bin as fitted alone, a twelfth of the runs.
  const asFitted = () => ({ ...told, model: { ...told.model, mayBes: [] } });

  it('runs each bin’s stated strategy on it, at the cost that its own page tells of that strategy', () => {
    const { ways, bins } = crossed();
    // As season.yaml states them, B1 to B6.
    expect(ways.map(({ id, binIds }) => [id, binIds])).toEqual([
      ['always-on', ['B1']],
      ['daytime-hours', ['B2']],
      ['temperature-difference', ['B3', 'B5']],
      ['equilibrium-window', ['B4']],
      ['humidity-limit', ['B6']],
    ]);
    expect(bins.map(({ binId, cells }) => [binId, cells.length])).toEqual([['B5', 5]]);
    const bushels = bushelsOf(plain.bins.find(({ bin }) => bin.id === 'B5')!.grain)!.value!;
    for (const cell of bins[0].cells) {
      const alone = told.strategies.find(({ id }) => id === cell.wayId)!;
      expect(cell.own).toBe(cell.wayId === 'temperature-difference');
      expect(cell.perBushel.value).toBeCloseTo(Number(alone.cost.value) / bushels, 12);
      expect(cell.perBushel.interval?.[1]).toBeCloseTo(Number(alone.cost.interval?.[1]) / bushels, 12);
      expect([cell.reached, cell.reaching, cell.runs]).toEqual([
        ...[alone.outcome.reachedTarget, alone.reaching, alone.runs],
      ]);
    }
  });

  it('carries the logged hours of a bin that states no strategy: on itself they are its season as logged', () => {
    const bare = plain.bins.map((one) => ({ ...one, bin: { ...one.bin, strategy: null } }));
    const { ways, bins } = crossed(bare, asFitted());
    expect(ways.map(({ id }) => id)).toEqual(['B1', 'B2', 'B3', 'B4', 'B5', 'B6'].map((id) => `hours of ${id}`));
    const own = bins[0].cells.find((cell) => cell.own)!;
    const bushels = bushelsOf(plain.bins.find(({ bin }) => bin.id === 'B5')!.grain)!.value!;
    expect(own.wayId).toBe('hours of B5');
    expect(own.perBushel.value).toBeCloseTo(Number(told.logged?.cost.value) / bushels, 12);
    // Another's hours are other hours.
    for (const cell of bins[0].cells.filter((one) => !one.own)) expect(cell.overOwn.value).not.toBeCloseTo(1, 3);
  });

  it('carries logged hours of bins whose airflow no log tells', () => {
    const flow = { value: null, interval: null, why: 'Nothing tells it.' };
    const bare = plain.bins.map((one) => ({
      ...one,
      bin: { ...one.bin, strategy: null },
      airflow: { ...one.airflow, flowM3S: flow },
    }));
    const { ways, bins } = crossed(bare, asFitted());
    expect(ways.map(({ why }) => why)).toEqual(ways.map(() => null));
    const own = bins[0].cells.find((cell) => cell.own)!;
    expect(own.runs).toBeGreaterThan(0);
    expect(own.overOwn.value).toBe(1);
  });

  it('says why a bin is not run, and that one bin of a goal has nothing to be held against', () => {
    const { bins, parts } = crossedRuns(loaded, plain.bins, [
      { ...told, why: 'It does not fit.' },
      { ...told, binId: 'B9' },
    ]);
    expect(bins).toEqual([
      { binId: 'B5', cells: [], why: 'It does not fit.' },
      { binId: 'B9', cells: [], why: 'There is no such bin.' },
    ]);
    expect(parts).toEqual([expect.objectContaining({ goal: 'cool', binIds: [], split: null })]);
    expect(crossed(plain.bins, asFitted()).parts).toEqual([
      expect.objectContaining({ binIds: ['B5'], why: expect.stringMatching(/^Only one bin has this goal/) }),
    ]);
  });
});
