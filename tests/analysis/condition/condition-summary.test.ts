import { describe, expect, it } from 'vitest';
import { CONDITION_SHAPE, conditionSummary } from '../../../src/analysis/condition/condition-summary.ts';
import type { BinReview } from '../../../src/analysis/types.ts';
import { fromF, kept } from './kept-bin.ts';

const told = (condition: BinReview['condition']) =>
  conditionSummary({ condition, failure: null } as unknown as BinReview);

describe('condition in summary.json', () => {
  it('tells percents of time and dry matter, each with its interval', () => {
    // Minnesota table: corn of 18 % keeps 57 days at 60 °F, then 0.5 % of the dry matter is lost.
    const summary = told(kept({ days: 57, tempC: () => fromF(60), moistureWb: () => 0.18 }));
    expect(Math.abs((summary.storageTimeUsedPct ?? 0) - 100)).toBeLessThan(1.5);
    expect(Math.abs((summary.dryMatterLossPct ?? 0) - 0.5)).toBeLessThan(0.01);
    expect(summary.worstLayerLossPctInterval?.[0]).toBeLessThan(0.5);
    expect(summary.alerts?.join(' ')).toMatch(
      /^Cable C1, sensor \d \(\d\.0 m\) used 1?\d\d % \(\d+ to \d+\) of its allowable/,
    );
    expect(CONDITION_SHAPE.parse(summary)).toEqual(summary);
  });

  it('tells the days best for insects and how far the grain has warmed since its coldest week', () => {
    // 20 days at 28 °C, 20 at 2 °C, 20 at 6 °C: 20 days in the best range (fields-1992), 4 K since the coldest week.
    const summary = told(kept({ days: 60, tempC: (_, day) => (day < 20 ? 28 : day < 40 ? 2 : 6) }));
    expect(summary.bestInsectDays).toBe(20);
    expect(summary.warmedSinceK).toBeCloseTo(4, 6);
    expect(summary.warmedSinceKInterval?.[0]).toBeLessThan(4);
  });

  it('has null and why where it was not worked out, and no alerts that nobody looked for', () => {
    const summary = told(undefined);
    expect(summary).toMatchObject({ dryMatterLossPct: null, alerts: null, warmedByItself: null });
    expect(summary.why).toBeTruthy();
    const noLog = told(kept({ days: 30, tempC: () => 5, moistureWb: () => 0.16, fan: false }));
    expect(noLog).toMatchObject({ warmedByItself: null, alerts: [] });
    expect(noLog.why).toContain('fan');
  });
});
