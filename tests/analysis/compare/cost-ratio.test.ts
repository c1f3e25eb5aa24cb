import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { COST_FACTORS } from '../../../src/analysis/compare/comparison.ts';
import { costFactors } from '../../../src/analysis/compare/cost-factors.ts';
import { costParts, type UnsureParts } from '../../../src/analysis/compare/cost-parts.ts';
import { costRatio } from '../../../src/analysis/compare/cost-ratio.ts';
import { estimate, withheld } from '../../../src/base/estimate.ts';
import { exact, type MadeBin, madeBin } from './made-bin.ts';

const partsOf = (of: MadeBin) => costParts(madeBin(of)) as UnsureParts;
const value = (of: { value: number | null }) => of.value as number;

// By hand. Own: 5000 kWh in 500 h for 500 USD, 900 USD in all, 3 points out of 10,000 bushels:
// 0.10 USD/kWh × 1.8 × 0.001 kW/bu × 166.67 h/point = 0.03 USD a bushel-point.
// Other: 8000 kWh in 1000 h for 640 USD, 800 USD in all, 4 points out of 20,000: 0.08 × 1.25 × 0.0004 × 250 = 0.01.
const own: MadeBin = {};
const other: MadeBin = {
  hours: exact(1000),
  energyKwh: exact(8000),
  energyCost: exact(640),
  cost: exact(800),
  points: exact(4),
  bushels: 20_000,
};

describe('the factors of a cost', () => {
  it('are those worked by hand', () => {
    const { price, charges, power, hours, energy } = costFactors(partsOf(own));
    expect([price, charges, power, hours, energy].map(value)).toEqual([
      expect.closeTo(0.1, 12),
      expect.closeTo(1.8, 12),
      expect.closeTo(0.001, 12),
      expect.closeTo(500 / 3, 9),
      expect.closeTo(1 / 6, 12),
    ]);
  });

  it('count hours, not hours for a point, where the measure is per bushel', () => {
    expect(value(costFactors(partsOf({ goal: 'cool', points: exact(0.5) })).hours)).toBe(500);
  });

  it('take points added where the goal is to add them', () => {
    const { hours } = costFactors(partsOf({ goal: 'condition', points: estimate(-2, -2.5, -1.6) }));
    expect(value(hours)).toBe(250);
    expect(hours.interval).toEqual([expect.closeTo(200, 9), expect.closeTo(312.5, 9)]);
  });

  it('are not told where a part is lacking or zero', () => {
    expect(costParts(madeBin({ cost: withheld('No tariff.') }))).toBe('No tariff.');
    expect(costParts(madeBin({ energyCost: exact(0) }))).toContain('above zero');
    expect(costParts(madeBin({ points: withheld('No sensor.') }))).toBe('No sensor.');
    // Points are no part of a cost per bushel.
    expect(typeof costParts(madeBin({ goal: 'hold', points: withheld('No sensor.') }))).toBe('object');
  });
});

describe('the interval of a factor', () => {
  // A scale error of 6 % in energy moves the money with it: 0.10 USD/kWh stays, power moves by 6 %.
  it('lets an error cancel that two numbers share', () => {
    const sixPercent = { energyKwh: estimate(5000, 4700, 5300), energyCost: estimate(500, 470, 530) };
    const { price, power } = costFactors(partsOf({ ...sixPercent, cost: estimate(900, 870, 930) }));
    expect(price.interval).toEqual([expect.closeTo(0.1, 12), expect.closeTo(0.1, 12)]);
    expect(power.interval).toEqual([expect.closeTo(0.00094, 9), expect.closeTo(0.00106, 9)]);
  });

  // Current x hours: the 4 % of hours are in the energy too, so power for the grain is as sure as if hours were known.
  it('takes the error of hours out of power, but for a meter', () => {
    const hours = estimate(500, 480, 520);
    const both = { hours, energyKwh: estimate(5000, 4800, 5200), energyCost: estimate(500, 480, 520) };
    const current = costFactors(partsOf({ ...both, energyFrom: 'current' })).power;
    expect(current.interval).toEqual([expect.closeTo(0.001, 9), expect.closeTo(0.001, 9)]);
    const meter = costFactors(partsOf({ hours, energyFrom: 'meter' })).power;
    expect(meter.interval).toEqual([expect.closeTo(5000 / 520 / 1e4, 9), expect.closeTo(5000 / 480 / 1e4, 9)]);
  });

  // 50 unknown hours at 10 kW: 500 kWh and 50 USD more, none less.
  it('adds unknown time to one side, in every number at once', () => {
    const { hours, power, price } = costFactors(
      partsOf({
        hours: estimate(500, 500, 550),
        energyKwh: estimate(5000, 5000, 5500),
        energyCost: estimate(500, 500, 550),
        cost: estimate(900, 900, 950),
      }),
    );
    expect(hours.interval).toEqual([expect.closeTo(500 / 3, 9), expect.closeTo(550 / 3, 9)]);
    for (const { value: middle, interval } of [power, price]) {
      expect(interval).toEqual([expect.closeTo(middle as number, 12), expect.closeTo(middle as number, 12)]);
    }
  });

  // 3 points (2.5 to 3.75) and 10,000 bushels (8,000 to 12,500) by hand: ln(3/2.5) = 0.1823, ln(3.75/3) = 0.2231.
  it('joins independent errors as squares of logarithms', () => {
    const { hours, energy } = costFactors(partsOf({ points: estimate(3, 2.5, 3.75), bushelsInterval: [8000, 12_500] }));
    expect(hours.interval).toEqual([expect.closeTo(500 / 3.75, 9), expect.closeTo(500 / 2.5, 9)]);
    const middle = 5000 / 3e4;
    const down = Math.hypot(0.223_144, 0.223_144);
    const up = Math.hypot(0.182_322, 0.223_144);
    expect(energy.interval).toEqual([
      expect.closeTo(middle * Math.exp(-down), 6),
      expect.closeTo(middle * Math.exp(up), 6),
    ]);
  });
});

describe('a ratio of two costs', () => {
  it('is the product of its factors, by hand', () => {
    const ratio = costRatio(partsOf(own), partsOf(other), 'B2', true);
    expect(ratio.times.value).toBeCloseTo(3, 12);
    // 0.1/0.08, 1.8/1.25, 0.001/0.0004, 166.67/250
    expect(COST_FACTORS.map((name) => ratio.factors[name].times.value)).toEqual([
      expect.closeTo(1.25, 12),
      expect.closeTo(1.44, 12),
      expect.closeTo(2.5, 12),
      expect.closeTo(2 / 3, 12),
    ]);
    expect(ratio.energy.times.value).toBeCloseTo(5 / 3, 12);
    // ln 1.25 / ln 3, ln 1.44 / ln 3, ln 2.5 / ln 3, ln(2/3) / ln 3, by a pocket calculator
    expect(COST_FACTORS.map((name) => ratio.factors[name].share.value)).toEqual([
      expect.closeTo(0.20311, 5),
      expect.closeTo(0.33191, 5),
      expect.closeTo(0.83404, 5),
      expect.closeTo(-0.36907, 5),
    ]);
  });

  const positive = fc.double({ min: 0.01, max: 1e5, noNaN: true });
  const bin = fc.record({
    hours: positive.map(exact),
    energyKwh: positive.map(exact),
    energyCost: positive.map(exact),
    cost: positive.map(exact),
    points: fc.double({ min: 0.05, max: 12, noNaN: true }).map(exact),
    bushels: positive,
  });
  it('multiplies back exactly and shares add up to 1, whatever the bins', () => {
    fc.assert(
      fc.property(bin, bin, (a, b) => {
        const ratio = costRatio(partsOf(a), partsOf(b), 'B2', true);
        const of = (made: typeof a) => value(made.cost) / made.bushels / value(made.points);
        const whole = value(ratio.times);
        expect(whole / (of(a) / of(b))).toBeCloseTo(1, 9);
        const product = COST_FACTORS.reduce((all, name) => all * value(ratio.factors[name].times), 1);
        expect(product / whole).toBeCloseTo(1, 9);
        // Exact numbers are told apart unless they are one.
        if (whole === 1) return;
        const shares = COST_FACTORS.map((name) => value(ratio.factors[name].share));
        const size = Math.max(1, ...shares.map(Math.abs));
        expect(shares.reduce((sum, share) => sum + share, 0) / size).toBeCloseTo(1 / size, 9);
      }),
      { seed: 8, numRuns: 200 },
    );
  });

  it('turns round with its bins', () => {
    const unsure = { points: estimate(3, 2.5, 3.75), cost: estimate(900, 850, 950) };
    const one = costRatio(partsOf(unsure), partsOf(other), 'B2', true).times;
    const back = costRatio(partsOf(other), partsOf(unsure), 'B1', true).times;
    expect(back.value).toBeCloseTo(1 / value(one), 12);
    expect(back.interval?.[0]).toBeCloseTo(1 / (one.interval?.[1] as number), 9);
    expect(back.interval?.[1]).toBeCloseTo(1 / (one.interval?.[0] as number), 9);
  });

  it('has no shares where the costs cannot be told apart, or the crops differ', () => {
    const wide = { points: estimate(3, 0.9, 10) };
    expect(costRatio(partsOf(wide), partsOf(other), 'B2', true).factors.hours.share.why).toContain(
      'cannot be told apart',
    );
    expect(costRatio(partsOf(own), partsOf(other), 'B2', false).factors.hours.share.why).toContain('different crops');
  });
});
