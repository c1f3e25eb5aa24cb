import { afterAll, describe, expect, it } from 'vitest';
import { loadSettlement } from '../../../src/money/load-settlement.ts';
import { priceSchedules } from '../../../src/season/price-schedules.ts';
import { POSTED } from '../../money/posted-schedules.ts';
import { readReference } from '../../reference/read-reference.ts';
import { EXAMPLE, EXAMPLE_FILES } from './contract-example.ts';
import { placeOf, problemsOf, read, removeFolders, seasonFolder } from './season-folder.ts';

afterAll(removeFolders);

const CORN = '  corn:    {';
/** The example with these schedules for corn, in place of its flat shrink. */
const withSchedules = (...schedules: string[]): string =>
  EXAMPLE.replace(
    /^ {2}corn: .*$/m,
    `  corn:\n    price: 4.35 USD/bu\n    base_moisture: 15 %\n    schedules:\n${schedules.map((one) => `      - ${one}\n`).join('')}`,
  );
const problems = (yaml: string) => problemsOf(seasonFolder({ ...EXAMPLE_FILES, 'season.yaml': yaml }));

describe('schedules of a price', () => {
  // Schedules that elevators posted (anonymous; see posted-schedules.ts), written in season.yaml by hand.
  it('say the shapes that are posted: by point, half point and tenth, banded, of price, of weight', async () => {
    const season = await read(
      withSchedules(
        '{ step: 1 point, rates: [{ up_to: 20 %, rate: 0.05 USD/bu }, { rate: 0.02 USD/bu }] }',
        '{ name: on wet, rate: 0.0375 USD/bu, bushels: wet }',
        '{ rate: 0.035 USD/bu, step: 0.1 point }',
        '{ per: 0.5 point, step: 0.5 point, rates: [{ up_to: 30 %, rate: 0.015 USD/bu }, { rate: 0.02 USD/bu }] }',
        '{ above: 15 %, rates: [{ up_to: 18 %, rate: 0.04 USD/bu }, { up_to: 22 %, rate: 0.03 USD/bu }, { rate: 0.02 USD/bu }] }',
        '{ rate: 0.7 % of weight, per: 0.5 point, step: 0.5 points }',
        '{ above: 13 %, per: 0.5 point, step: 0.5 point, refuse_above: 17 %, rates: [{ up_to: 15 %, rate: 1 % of price }, { up_to: 17 %, rate: 2 % of price }] }',
      ),
      EXAMPLE_FILES,
    );
    const read7 = season.prices.corn.schedules!.map((one) => one.schedule);
    const due = [
      POSTED.cornByPoint,
      POSTED.cornOnWet,
      POSTED.cornByTenths,
      POSTED.cornByHalves,
      POSTED.cornFalling,
      POSTED.cornShrink,
      POSTED.soybeanOfPrice,
    ];
    expect(read7).toHaveLength(due.length);
    read7.forEach((own, i) => {
      const bands = due[i].bands.map((band) => ({
        toWb: expect.closeTo(band.toWb, 12),
        rate: expect.closeTo(band.rate, 12),
      }));
      if (!Number.isFinite(due[i].bands.at(-1)!.toWb)) bands[bands.length - 1].toWb = Number.POSITIVE_INFINITY;
      const rejectOverWb = due[i].rejectOverWb === null ? null : expect.closeTo(due[i].rejectOverWb, 12);
      expect(own).toEqual({ ...due[i], baseWb: expect.closeTo(due[i].baseWb, 12), bands, rejectOverWb });
    });
    expect(season.prices.corn.schedules!.map((one) => one.name).slice(0, 2)).toEqual([null, 'on wet']);
  });

  it('settle a load, flat shrink and discount among them', async () => {
    const yaml = EXAMPLE.replace(
      'discount: 0.03 USD/bu/point }',
      'discount: 0.03 USD/bu/point, schedules: [{ rate: 0.05 USD/bu, bushels: dry }] }',
    );
    const { prices } = await read(yaml, EXAMPLE_FILES);
    const schedules = priceSchedules(prices.corn);
    expect(schedules.map((one) => one.name)).toEqual(['shrink', 'discount', null]);
    // By hand: 1000 bu at 20 %, five points: 7 % shrink, 930 bu at $4.35 = $4045.50; 15 c on 1000 wet, 25 c on 930 dry bushels.
    const load = loadSettlement(
      1000,
      0.2,
      4.35,
      schedules.map((one) => one.schedule),
    )!;
    expect(load.gross).toBeCloseTo(4045.5, 6);
    expect(load.net).toBeCloseTo(4045.5 - 150 - 232.5, 6);
    expect(priceSchedules({ ...prices.corn, baseMoistureWb: null })).toHaveLength(1);
  });

  // From the text of season.yaml to the money taken off a load: each row of a schedule that an elevator posted (seen).
  it('charge loads what the posted table of corn drying says, row by row, shrink by half points beside it', async () => {
    const { prices } = await read(
      withSchedules(
        '{ name: drying, step: 1 point, rates: [{ up_to: 20 %, rate: 0.05 USD/bu }, { rate: 0.02 USD/bu }] }',
        '{ name: shrink, rate: 0.7 % of weight, per: 0.5 point, step: 0.5 point }',
      ),
      EXAMPLE_FILES,
    );
    const schedules = priceSchedules(prices.corn).map((one) => one.schedule);
    const rows = readReference('posted_schedule');
    expect(rows.length).toBeGreaterThan(10);
    for (const { moisture_over_pct: over, moisture_to_pct: to, published_c_per_bu: cents } of rows) {
      for (const percent of [Number(over) + 0.1, Number(to)]) {
        const load = loadSettlement(1000, percent / 100, 4.35, schedules)!;
        expect(load.charges[0]).toBeCloseTo(10 * Number(cents), 6);
        // By hand: 1.4 % of the weight for a whole point, 0.7 % for a tenth of one.
        const halves = percent === Number(to) ? 2 * (percent - 15) : 2 * (Number(over) - 15) + 1;
        expect(load.paidBushels).toBeCloseTo(1000 * (1 - 0.007 * halves), 6);
        expect(load.net).toBeCloseTo(4.35 * load.paidBushels - 10 * Number(cents), 6);
      }
    }
  });

  it('take a share of the price of soybeans and refuse what is too wet, as posted', async () => {
    const yaml = EXAMPLE.replace(
      /^ {2}corn: .*$/m,
      '  soybean: { price: 10.20 USD/bu, base_moisture: 13 %, schedules: [{ per: 0.5 point, step: 0.5 point, refuse_above: 17 %, rates: [{ up_to: 15 %, rate: 1 % of price }, { up_to: 17 %, rate: 2 % of price }] }] }',
    );
    const { prices } = await read(yaml, EXAMPLE_FILES);
    const schedules = priceSchedules(prices.soybean).map((one) => one.schedule);
    const net = (moistureWb: number) => loadSettlement(500, moistureWb, 10.2, schedules)?.net;
    expect(net(0.13)).toBeCloseTo(5100, 9);
    // By hand: 14.2 % is three started halves, 3 % of $5100; 16.6 % four halves at 1 % and four at 2 %, 12 %.
    expect(net(0.142)).toBeCloseTo(5100 * 0.97, 9);
    expect(net(0.166)).toBeCloseTo(5100 * 0.88, 9);
    expect(net(0.17)).toBeCloseTo(5100 * 0.88, 9);
    expect(net(0.171)).toBeUndefined();
  });

  it.each<[schedule: string, code: string, at: string, message: string]>([
    ['{ rate: 0.05 }', 'SEASON_UNIT', '0.05 }', 'schedules[0].rate is "0.05"; it takes e.g. "0.05 USD/bu"'],
    ['{ rate: 0.05 EUR/bu }', 'SEASON_UNIT', '0.05 EUR', '"1 % of price"'],
    ['{ rate: 5 % }', 'SEASON_UNIT', '5 % }', '"0.7 % of weight"'],
    ['{ rate: -1 USD/bu }', 'SEASON_UNIT', '-1 USD', 'must not be negative'],
    ['{ rate: 0.05 USD/bu, setp: 1 point }', 'SEASON_KEY', 'setp', 'Did you mean "step"?'],
    ['{ step: 1 point }', 'SEASON_MISSING', '{ step', 'rate is missing'],
    [
      '{ rate: 0.05 USD/bu, rates: [{ rate: 0.05 USD/bu }] }',
      'SEASON_CONFLICT',
      'rate: 0.05 USD/bu, rates',
      'beside rates',
    ],
    ['{ rate: 0.05 USD/bu, per: 0.5 }', 'SEASON_UNIT', '0.5 }', '"0.5 point"'],
    ['{ rate: 0.05 USD/bu, step: 50 points }', 'SEASON_UNIT', '50 points', 'between 0.01 and 10'],
    ['{ rate: 0.05 USD/bu, bushels: damp }', 'SEASON_CHOICE', 'damp', 'one of wet, dry'],
    ['{ rate: 1 % of weight, bushels: dry }', 'SEASON_CONFLICT', 'bushels: dry', 'counted on the wet weight'],
    ['{ rate: 0.05 USD/bu, points_by: last rate }', 'SEASON_CONFLICT', 'points_by', 'for a schedule with rates'],
    ['{ rate: 0.05 USD/bu, refuse_above: 14 % }', 'SEASON_RANGE', '14 % }', 'must lie above "15 %"'],
    [
      '{ rates: [{ rate: 1 % of price }, { rate: 2 % of price }] }',
      'SEASON_MISSING',
      '{ rate: 1 %',
      'only the last rate',
    ],
    [
      '{ rates: [{ up_to: 14 %, rate: 1 % of price }, { rate: 2 % of price }] }',
      'SEASON_RANGE',
      '14 %, rate',
      'above "15 %"',
    ],
    ['{ rates: [{ up_to: 18 %, rate: 1 % of price }] }', 'SEASON_RANGE', '18 %, rate', 'refuse_above: 18 %'],
    [
      '{ rates: [{ up_to: 18 %, rate: 1 % of price }, { rate: 2 USD/bu }] }',
      'SEASON_CONFLICT',
      '2 USD/bu',
      'one thing',
    ],
  ])('%s: %s', async (schedule, code, at, message) => {
    const yaml = withSchedules(schedule);
    const [problem, ...more] = await problems(yaml);
    expect(more).toEqual([]);
    expect(problem).toMatchObject({ code, file: 'season.yaml', ...placeOf(yaml, at) });
    expect(problem.message).toContain(message);
  });

  it('need a base, and no second shrink', async () => {
    const noBase = withSchedules('{ rate: 0.05 USD/bu }').replace('    base_moisture: 15 %\n', '');
    expect(await problems(noBase)).toMatchObject([
      { code: 'SEASON_MISSING', message: expect.stringContaining('above is missing') },
    ]);
    const wrongBase = withSchedules('{ rate: 0.05 USD/bu }').replace('base_moisture: 15 %', 'base_moisture: 15');
    expect(await problems(wrongBase)).toMatchObject([{ code: 'SEASON_UNIT' }]);
    const twice = EXAMPLE.replace(CORN, `${CORN} schedules: [{ rate: 1 % of weight }],`);
    expect(await problems(twice)).toMatchObject([{ code: 'SEASON_CONFLICT', ...placeOf(twice, '{ rate: 1 %') }]);
  });
});
