import { describe, expect, it } from 'vitest';
import { definitionVote } from '../../../src/analysis/fronts/passages.ts';
import { NIGHT_ONLY } from './random-scenarios.ts';
import { PLAIN, play } from './scenario.ts';

describe('how much the mean over a day has to say', () => {
  // By hand: fan hours of the day, fan hours of the passage.
  it('is all of it where the fan runs through', () => {
    expect(definitionVote(24, 3)).toBe(definitionVote(24, 300));
    expect(definitionVote(24, 3)).toBeGreaterThan(0);
    expect(definitionVote(18, 3)).toBe(definitionVote(24, 3));
    expect(definitionVote(15, 3)).toBeCloseTo(definitionVote(24, 3) / 2, 12);
  });
  it('is nothing where the fan rests through half of the day and the front passes within a night', () => {
    expect(definitionVote(12, 4)).toBe(0);
    expect(definitionVote(8, 8)).toBe(0);
  });
  it('is all of it again where the front takes nights to pass', () => {
    expect(definitionVote(12, 40)).toBe(definitionVote(24, 3));
    expect(definitionVote(12, 24)).toBeGreaterThan(0);
    expect(definitionVote(12, 24)).toBeLessThan(definitionVote(12, 28));
  });
});

describe('a front that passes within the first night', () => {
  // Grain of 28 C; the first night's air of 20 C brings a step, through the second it falls slowly by 10 K more.
  // Truth: the contract's definition on the bed's temperatures.
  it.each([0.5, 0.7, 1])('is told in it at %d cfm/bu, though the second night is colder', (cfmPerBushel) => {
    const { fronts, truth } = play({
      ...PLAIN,
      cfmPerBushel,
      fanFromH: 34,
      hours: 154,
      onAt: (hour) => NIGHT_ONLY.onAt(hour, () => 0),
      grainC: () => 28,
      heightsM: [0.6, 1.6, 2.6],
      airC: (hour) => (hour < 48 ? 20 : 20 - 10 * Math.min(1, Math.max(0, (hour - 58) / 8))),
    });
    const { arrivals, kind } = fronts.campaigns[0];
    expect(kind).toBe('cooling');
    truth.forEach((hours, i) => {
      expect(hours, `sensor ${i + 1}`).not.toBeNull();
      expect(Math.abs((arrivals[i].fanHours ?? Number.NaN) - (hours ?? 0)), `sensor ${i + 1}`).toBeLessThanOrEqual(2);
    });
  });
});
