import { sampleCorrelation, standardDeviation } from 'simple-statistics';
import { describe, expect, it } from 'vitest';
import type { BinLog } from '../../../src/analysis/model/bin-log.ts';
import type { Fit, Model } from '../../../src/analysis/model/fit-bin.ts';
import type { FitParameters } from '../../../src/analysis/model/fit-parameters.ts';
import type { FittedValues } from '../../../src/analysis/model/fitted-values.ts';
import { DRAWN, mayBes } from '../../../src/analysis/model/may-be.ts';

// Two values of a fit, that a log bounds: the first to 0.1, the sum of both to 0.02, in units; what was expected before bounds each to 1.
const parameters: FitParameters = {
  list: [0, 1].map((k) => ({ name: `value ${k}`, unit: 1, low: -5, high: k === 0 ? 5 : 0 })),
};
const at = (values: readonly number[], isotherm: string) => ({ values: [...values], isotherm }) as Fit;
const modelOf = (isotherm: string) =>
  ({
    residuals: ([a, b]: readonly number[]) => Float64Array.of(a / 0.1, (a + b + 2) / 0.02, a, b),
    fitAt: (values: readonly number[]) => at(values, isotherm),
  }) as unknown as Model;
const final = (isotherm: string, weight: number) => ({ fit: at([0, -2], isotherm), model: modelOf(isotherm), weight });
const log = { cables: [{}, {}, {}, {}] } as unknown as BinLog;
const papers = { start: null, end: null, samples: [], samplesSd: 1 };
const drawn = (...finals: ReturnType<typeof final>[]) =>
  mayBes(log, finals, parameters, papers, (_, fit) => fit as unknown as FittedValues, 0.05);
const valuesOf = (of: ReturnType<typeof drawn>) => of.map(({ fitted }) => (fitted as unknown as Fit).values);

describe('mayBes', () => {
  it('takes each isotherm as often as it weighs', () => {
    const of = drawn(final('near', 8), final('next', 2), final('far', 0.1));
    expect(of).toHaveLength(DRAWN);
    const count = (name: string) => of.filter(({ fitted }) => fitted.isotherm === name).length;
    // Of eleven: 8.7, 2.2 and 0.1.
    expect([count('near'), count('next'), count('far')]).toEqual([9, 2, 0]);
  });

  it('spreads values as their errors go together', () => {
    const values = valuesOf(drawn(final('one', 1)));
    const [first, second] = [0, 1].map((k) => values.map((one) => one[k]));
    // By hand, 1/sd2 = 100 + 1 about: 0.0995; eleven middles spread a little less than the whole distribution.
    expect(standardDeviation(first)).toBeGreaterThan(0.07);
    expect(standardDeviation(first)).toBeLessThan(0.12);
    expect(standardDeviation(values.map(([a, b]) => a + b))).toBeLessThan(0.03);
    // One is as much higher as the other is lower: but for 0.02 of 0.1, 0.98.
    expect(sampleCorrelation(first, second)).toBeLessThan(-0.9);
  });

  it('stays within what is possible', () => {
    const near = { ...final('one', 1), fit: at([0, -0.01], 'one') };
    const values = valuesOf(drawn(near));
    expect(Math.max(...values.map(([, b]) => b))).toBe(0);
  });

  it('lets grain between the cables differ less where tickets tell of the whole bin', () => {
    const spread = (start: { wb: number; sd: number } | null) =>
      standardDeviation(
        mayBes(
          log,
          [final('one', 1)],
          parameters,
          { ...papers, start },
          (_, fit) => fit as unknown as FittedValues,
          0,
        ).map(({ doubt }) => doubt.moistureWb),
      );
    // 0.3 point at one cable, 0.15 at four; with tickets that know it to 0.15 a root of two less.
    expect(spread(null)).toBeGreaterThan(0.0012);
    expect(spread(null)).toBeLessThan(0.0016);
    expect(spread({ wb: 0.18, sd: 0.0015 }) / spread(null)).toBeCloseTo(Math.SQRT1_2, 9);
  });
});
