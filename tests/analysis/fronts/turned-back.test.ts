import { describe, expect, it } from 'vitest';
import type { BinFronts } from '../../../src/analysis/types.ts';
import { PLAIN, play } from './scenario.ts';

// A bed of the tests' own at 0.1 cfm/bu: by the planning figure of 15 h over the cfm per bushel (Iowa State University Extension) and
// rulePart 0.75 a front needs 112 fan hours to the top.
const told = ({ campaigns }: BinFronts) => campaigns.map(({ kind }) => kind);
const spell = (from: number, to: number) => (hour: number) => (hour >= from && hour < to ? 24 : 10);

describe('a swing of the weather while the fan runs on', () => {
  it('of ten hours is no warming campaign: its warmth is spread thin before it is half-way up', () => {
    const { fronts } = play({ ...PLAIN, layers: 20, hours: 420, airC: spell(240, 250) });
    expect(told(fronts)).not.toContain('warming');
    expect(fronts.campaigns[0].arrivals.every(({ fanHours }) => fanHours !== null)).toBe(true);
  });
  it('that lasts until its front is through is one', () => {
    const { fronts } = play({ ...PLAIN, hours: 560, airC: spell(240, 420) });
    expect(told(fronts).slice(0, 2)).toEqual(['cooling', 'warming']);
    expect(fronts.campaigns[1].arrivals.every(({ fanHours }) => fanHours !== null)).toBe(true);
  });
  it('that the fan’s stop ended stays: a front that got nowhere is news', () => {
    const { fronts } = play({
      ...PLAIN,
      hours: 560,
      airC: (hour) => (hour > 300 ? 24 : 10),
      onAt: (hour) => hour < 230 || (hour >= 310 && hour < 350),
    });
    expect(told(fronts)).toEqual(['cooling', 'warming']);
    expect(fronts.campaigns[1].arrivals.filter(({ fanHours }) => fanHours !== null).length).toBeLessThan(3);
  });
});

it('damp grain in a fan’s first warm day after a cold night does not end the campaign', () => {
  // On from nightfall at 0.6 cfm/bu: the front is through in less than a day, and the first night is colder than the day’s mean.
  const { fronts, truth } = play({
    ...PLAIN,
    cfmPerBushel: 0.6,
    fanFromH: 30,
    hours: 160,
    grainC: () => 24,
    airC: () => 16,
    dailyK: 6,
  });
  const [first] = fronts.campaigns;
  expect(first.kind).toBe('cooling');
  first.arrivals.forEach(({ fanHours }, i) => {
    expect(Math.abs((fanHours ?? Number.NaN) - (truth[i] ?? Number.NaN)), `sensor ${i + 1}`).toBeLessThanOrEqual(6);
  });
});
