import { describe, expect, it } from 'vitest';
import { moistureValue } from '../../../src/analysis/value/moisture-value.ts';
import { valueSteps } from '../../../src/analysis/value/value-steps.ts';
import { estimate, withheld } from '../../../src/base/estimate.ts';
import { worthSection } from '../../../src/notebook/worth-section.ts';
import { Units } from '../../../src/report/units.ts';
import type { LoadedSeason } from '../../../src/season/loaded.ts';
import { exampleInput } from '../../report/example-review.ts';
import { thousandBushels } from './thousand-bushels.ts';

const CORN = { pricePerBushel: 4, baseMoistureWb: 0.15, shrinkPerPoint: 0.014, discountPerBushelPoint: 0.03 };

/** 1,000 bu of corn that went in at 18 %, the fans' energy 40 and demand 12. */
function made(startWb: number, endWb: number) {
  const input = exampleInput();
  const one = input.review.bins[0];
  const review = {
    ...one,
    bin: { ...one.bin, goal: 'dry' as const, grain: { ...one.bin.grain, crop: 'corn' } },
    grain: { ...one.grain, ...thousandBushels(startWb), bushelsInterval: [1000, 1000] as [number, number] },
    fan: { ...one.fan, energyCost: estimate(40, 40, 40), cost: estimate(52, 50, 54) },
    moisture: {
      ...one.moisture,
      start: { ...one.moisture.start, value: startWb, interval: [startWb, startWb] as [number, number] },
      end: { ...one.moisture.end, value: endWb },
      pointsRemoved: estimate((startWb - endWb) * 100, (startWb - endWb) * 100, (startWb - endWb) * 100),
    },
  };
  return { review, season: { ...input.loaded.season, prices: { corn: CORN } } };
}
const summed = (steps: object) => Object.values(steps).reduce((a, b) => a + b, 0);

describe('from points bought to what was left', () => {
  // By hand, 18 to 14 %: shrink 3 points x 1.4 % of 1000 bu at 4 = 168; discount 3 x 0.03 x 1000 = 90. Water to 15 %:
  // 1000 x 0.82/0.85 = 964.7059 bu, 35.2941 fewer at 4 = 141.18; on to 14 %: 953.4884 bu, 11.2175 fewer at 4 = 44.87.
  it('parts the gain into what was spared, the water’s weight on either side of the base, and the fans', () => {
    const { review, season } = made(0.18, 0.14);
    const { steps, left } = valueSteps(review, season);
    expect(steps?.shrinkSpared).toBeCloseTo(168, 6);
    expect(steps?.discountSpared).toBeCloseTo(90, 6);
    expect(steps?.waterToBase).toBeCloseTo(-141.1765, 3);
    expect(steps?.waterBeyondBase).toBeCloseTo(-44.87, 2);
    expect(steps?.energy).toBe(-40);
    expect(steps?.charges).toBeCloseTo(-12, 9);
    expect(summed(steps!)).toBeCloseTo(Number(left.value), 9);
    expect(left.value).toBeCloseTo(258 - 141.1765 - 44.87 - 52, 2);
  });
  it('tells fuel apart from demand: of 812 with 40 of energy and 760 of propane, 12 are other charges', () => {
    const { review, season } = made(0.18, 0.14);
    const heated = {
      ...review,
      fan: { ...review.fan, heatCost: estimate(760, 0, 900), cost: estimate(812, 50, 960) },
    };
    const { steps, left } = valueSteps(heated, season);
    expect(steps?.heat).toBe(-760);
    expect(steps?.charges).toBeCloseTo(-12, 9);
    expect(summed(steps!)).toBeCloseTo(Number(left.value), 9);
    const page = (of: typeof review) => {
      const { tables, figures } = worthSection(
        { season } as unknown as LoadedSeason,
        [of],
        new Units('us', 'USD', 'UTC'),
      );
      const heat = tables?.[0].columns.find(({ label }) => label === 'Fuel or current for heat');
      return { said: figures?.[0].alt ?? '', heat: heat && tables?.[0].rows[0][heat.key] };
    };
    expect(page(heated)).toEqual({ said: expect.stringContaining('Fuel or current for heat −760 USD'), heat: -760 });
    expect(page(review).heat).toBeUndefined();
    expect(page(review).said).not.toContain('heat');
  });
  it.each([
    [0.18, 0.155],
    [0.14, 0.13],
    [0.12, 0.135],
    [0.16, 0.17],
  ])('adds up to the value of the moisture less the fans, from %f to %f', (from, to) => {
    const { review, season } = made(from, to);
    const { steps, left } = valueSteps(review, season);
    expect(summed(steps!)).toBeCloseTo(Number(left.value), 9);
    expect(left.value).toBeCloseTo(Number(moistureValue(review, season).gained.value) - 52, 9);
  });
  it('gives nothing to the base where the grain went in below it', () => {
    const { review, season } = made(0.14, 0.13);
    expect(valueSteps(review, season).steps?.waterToBase).toBe(0);
  });
  it('is withheld where the fans have no price', () => {
    const { review, season } = made(0.18, 0.15);
    const unpriced = { ...review, fan: { ...review.fan, cost: withheld('No tariff prices the fans.') } };
    const { steps, left } = valueSteps(unpriced, season);
    expect([steps, left.value, left.why]).toEqual([null, null, 'No tariff prices the fans.']);
  });
});
