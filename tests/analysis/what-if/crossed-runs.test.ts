import { describe, expect, it } from 'vitest';
import { carriedWays } from '../../../src/analysis/what-if/carried-ways.ts';
import { crossedParts } from '../../../src/analysis/what-if/crossed-parts.ts';
import { cellsOf } from '../../../src/analysis/what-if/crossed-runs.ts';
import type { CrossedBin, CrossedCell } from '../../../src/analysis/what-if/crossed-types.ts';
import { estimate, withheld } from '../../../src/base/estimate.ts';
import { doubtedSpec } from '../../../src/simulation/doubt/doubted-spec.ts';
import type { Hours } from '../../../src/simulation/run/hours.ts';
import { BLOWER, inventedBin, inventedHours } from '../../simulation/run/invented-bin.ts';

const HOUR_MS = 3_600_000;

/** A bin, and the same with a twentieth less air. */
const bins = (hours: Hours) => {
  const fitted = inventedBin(hours);
  return [fitted, doubtedSpec(fitted, { airFactor: 0.95, moistureWb: 0, rateFactor: 1, shortFactor: 1 })];
};

describe('ways carried to other bins', () => {
  const hours = inventedHours({ count: 48 });
  const run = (binId: string, strategy: string | null, startHour = 0, heated = false) => ({
    binId,
    binName: `Bin ${binId}`,
    strategy,
    logged: { share: new Float64Array(48).fill(1), startMs: hours.startMs + startHour * HOUR_MS, heated },
    why: null,
  });

  it('are one for each strategy, and the logged hours where none of the kit’s is stated', () => {
    const ways = carriedWays([run('B1', 'always-on'), run('B2', 'own-rule'), run('B3', 'always-on'), run('B4', null)]);
    expect(ways.map(({ id, binIds }) => [id, binIds])).toEqual([
      ['always-on', ['B1', 'B3']],
      ['hours of B2', ['B2']],
      ['hours of B4', ['B4']],
    ]);
  });

  it('are one for bins that share their fans: the same hours cost neither of them less', () => {
    const shared = (binId: string, startHour: number, ...fanIds: string[]) => ({
      ...run(binId, null, startHour),
      fanIds,
    });
    const ways = carriedWays([shared('B1', 10, 'FS'), shared('B2', 0, 'F2'), shared('B3', 0, 'FS'), run('B4', null)]);
    expect(ways.map(({ title, binIds }) => [title, binIds])).toEqual([
      ['Hours of Bin B1 and Bin B3', ['B1', 'B3']],
      ['Hours of Bin B2', ['B2']],
      ['Hours of Bin B4', ['B4']],
    ]);
    // The log of the bin that was filled first tells all of its 48 hours.
    const [both, other] = cellsOf(bins(hours), 'B3', ways, 1000);
    expect(both.own).toBe(true);
    expect(both.perBushel.value).toBeCloseTo(Number(other.perBushel.value), 12);
    expect(carriedWays([shared('B1', 0), shared('B2', 0)])).toHaveLength(2);
  });

  it('carry logged hours by the clock', () => {
    // A log that begins 10 h after the other bin was filled: 38 of its 48 hours fall into that bin's season.
    const [late] = cellsOf(bins(hours), 'B2', carriedWays([run('B1', null, 10)]), 1000);
    const [whole] = cellsOf(bins(hours), 'B2', carriedWays([run('B1', null)]), 1000);
    expect(Number(late.perBushel.value) / Number(whole.perBushel.value)).toBeCloseTo(38 / 48, 9);
    expect(late.overOwn.value).toBeNull();
  });

  it('cost once their own on their own bin, whatever the bin may be', () => {
    const ways = carriedWays([run('B1', null), run('B2', null, 24)]);
    const [own, other] = cellsOf(bins(hours), 'B1', ways, 1000);
    expect(own.overOwn).toEqual({ value: 1, interval: [1, 1], why: null });
    expect([own.own, other.own]).toEqual([true, false]);
    expect(other.overOwn.value).toBeCloseTo(0.5, 9);
    expect(own.runs).toBe(2);
  });

  it('burn the heater in hours of a fan that has one, and are withheld where the other bin has none', () => {
    // 48 h of a fan of 10 kW at 0.10, and with it a heater of 0.5 kW and 3 an hour of fuel, over 1000 bushels (by hand).
    const ways = carriedWays([run('B1', null), run('B2', null, 0, true)]);
    const [plain, heated] = cellsOf(bins(hours), 'B1', ways, 1000);
    expect(plain.perBushel.value).toBeCloseTo((48 * 10 * 0.1) / 1000, 12);
    expect(heated.perBushel.value).toBeCloseTo((48 * 10.5 * 0.1 + 48 * 3) / 1000, 12);
    const bare = inventedBin(hours);
    const cold = { ...bare, levels: [{ ...bare.levels[0], blower: { ...BLOWER, heaterK: 0 } }] };
    const [alone, none] = cellsOf([cold], 'B1', ways, 1000);
    expect(alone.perBushel.value).toBeCloseTo((48 * 10 * 0.1) / 1000, 12);
    expect(none.perBushel).toEqual(withheld('This bin has no heater.'));
  });

  it('are withheld where a heater is asked for and there is none', () => {
    const plain = inventedBin(hours);
    const [level] = plain.levels;
    const cold = { ...plain, levels: [{ ...level, blower: { ...BLOWER, heaterK: 0 } }] };
    const [cell] = cellsOf([cold], 'B2', carriedWays([run('B1', 'warmed-air')]), 1000);
    expect(cell.perBushel).toEqual(withheld('This bin has no heater.'));
    expect(cell.reached).toBeNull();
  });
});

describe('cost parted into bin and way', () => {
  const cell = (wayId: string, cost: number, reached = true): CrossedCell => ({
    wayId,
    own: false,
    perBushel: estimate(cost, cost, cost),
    perBushelPoint: withheld('-'),
    overOwn: withheld('-'),
    runCosts: null,
    reached,
    reaching: reached ? 6 : 0,
    runs: 6,
  });
  const bin = (binId: string, ...cells: CrossedCell[]): CrossedBin => ({ binId, cells, why: null });
  const goals = new Map([
    ['B1', 'dry' as const],
    ['B2', 'dry' as const],
    ['B3', 'cool' as const],
  ]);

  it('blames a model only where a second bin has the goal', () => {
    const second: CrossedBin = { binId: 'B2', cells: [], why: 'It does not fit.' };
    const [dry] = crossedParts([bin('B1', cell('x', 1), cell('y', 2)), second], goals);
    expect(dry.why).toBe(
      'Only one of the bins with this goal has a model that is trusted; two are needed to tell bin from way.',
    );
  });

  it('spans what the runs about the fit leave open of the shares', () => {
    // As fitted the bin makes a factor 2 and the way 3; in the second run the other way round: ln 2 squared over both squares is 0.285.
    const runs = (wayId: string, fitted: number, other: number) => ({
      ...cell(wayId, fitted),
      runCosts: [fitted, other],
    });
    const [{ split, ranges }] = crossedParts(
      [
        bin('B1', runs('x', 0.02, 0.02), runs('y', 0.06, 0.04)),
        bin('B2', runs('x', 0.04, 0.06), runs('y', 0.12, 0.12)),
      ],
      goals,
    );
    const least = Math.log(2) ** 2 / (Math.log(2) ** 2 + Math.log(3) ** 2);
    expect(split?.share.rows).toBeCloseTo(least, 9);
    expect(ranges?.rows[0]).toBeCloseTo(least, 9);
    expect(ranges?.rows[1]).toBeCloseTo(1 - least, 9);
    expect(ranges?.columns[0]).toBeCloseTo(least, 9);
    expect(
      crossedParts([bin('B1', cell('x', 1), cell('y', 2)), bin('B2', cell('x', 2), cell('y', 5))], goals)[0].ranges,
    ).toBeNull();
  });

  it('finds a bin twice as dear and a way three times as dear, over the ways that reach everywhere', () => {
    const [dry, cool] = crossedParts(
      [
        bin('B1', cell('x', 0.02), cell('y', 0.06), cell('z', 0.001, false)),
        bin('B2', cell('x', 0.04), cell('y', 0.12), cell('z', 0.001)),
        bin('B3', cell('x', 5), cell('y', 5), cell('z', 5)),
      ],
      goals,
    );
    expect(dry.wayIds).toEqual(['x', 'y']);
    const { rows, columns, share } = dry.split!;
    expect(Math.exp(rows[1] - rows[0])).toBeCloseTo(2, 9);
    expect(Math.exp(columns[1] - columns[0])).toBeCloseTo(3, 9);
    expect(share.rest).toBeCloseTo(0, 9);
    expect(cool).toMatchObject({ goal: 'cool', split: null });
    expect(cool.why).toBe('Only one bin has this goal; two are needed to tell bin from way.');
  });

  it('is withheld where fewer than two ways reach everywhere', () => {
    const [dry] = crossedParts(
      [bin('B1', cell('x', 1), cell('y', 1, false)), bin('B2', cell('x', 1), cell('y', 1))],
      goals,
    );
    expect(dry.split).toBeNull();
    expect(dry.why).toContain('Only one way brings');
  });
});
