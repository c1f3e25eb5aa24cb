import { describe, expect, it } from 'vitest';
import { PLAIN, play } from './scenario.ts';

// A bed of the tests' own at 0.15 cfm/bu, grain of 20 C. Each step of the air is under 3 K, and by the time it comes the grain's mean has
// gone along with the one before: the day's mean air never stands 3 K from it. All the same a change of over 3 K goes up the grain.
const steps = (hour: number) => (hour < 48 ? 18.5 : hour < 80 ? 16.5 : 15);
const CREPT = { ...PLAIN, cfmPerBushel: 0.15, grainC: () => 20, hours: 260, airC: steps };

describe('air that falls by steps that the grain follows', () => {
  it('makes a campaign, its front told where the bed has it', () => {
    const { fronts, truth, fanHoursBefore } = play(CREPT);
    expect(fronts.campaigns.map(({ kind }) => kind)).toEqual(['cooling']);
    const [{ arrivals, span }] = fronts.campaigns;
    expect(truth.every((hours) => hours !== null)).toBe(true);
    arrivals.forEach(({ fanHours }, i) => {
      const hours = (fanHours ?? Number.NaN) + fanHoursBefore(span.fromMs);
      expect(Math.abs(hours - truth[i]!), `sensor ${i + 1}`).toBeLessThanOrEqual(6);
    });
  });
  it('begins the campaign of a steeper fall that follows: the air has not crossed the grain’s mean', () => {
    const { fronts, fanHoursBefore } = play({ ...CREPT, airC: (hour) => (hour < 130 ? steps(hour) : 8) });
    expect(fronts.campaigns.map(({ kind }) => kind)).toEqual(['cooling']);
    // The first step comes 24 fan hours after the fan's start; the mean of a day shows it half a day early.
    const begun = fanHoursBefore(fronts.campaigns[0].span.fromMs);
    expect(begun).toBeGreaterThanOrEqual(0);
    expect(begun).toBeLessThanOrEqual(24);
  });
  it('makes none where the grain changed by less than 3 K', () => {
    const { fronts } = play({ ...CREPT, airC: (hour) => Math.max(17.2, steps(hour)) });
    expect(fronts.campaigns).toEqual([]);
    expect(fronts.why).toContain('never clearly cooler');
  });
});

describe('weather that a well-aired bed follows within a day', () => {
  it('makes no campaign, however far it drifts', () => {
    // At 1 cfm/bu the air is through in half a day, and falls by 0.1 K an hour over four days: no moment is a front's.
    const airC = (hour: number) => 20 - 0.1 * Math.min(100, Math.max(0, hour - 48));
    const { fronts } = play({ ...CREPT, cfmPerBushel: 1, airC });
    expect(fronts.campaigns).toEqual([]);
  });
});
