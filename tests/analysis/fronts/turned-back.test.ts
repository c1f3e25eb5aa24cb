import { describe, expect, it } from 'vitest';
import { turnedBack } from '../../../src/analysis/fronts/turned-back.ts';
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

describe('sensors that a hole of the log makes blind', () => {
  // Five sensors; the air turned in a run that goes on. Told by hand: 2 of 5 is under two thirds, 2 of the 2 that could see is not.
  const arrival = (sensor: number, arrivedMs: number | null, why: string | null) =>
    ({ cable: 'C1', sensor, heightM: sensor, arrivedMs, fanHours: null, aheadC: null, behindC: null, why }) as const;
  const campaign = (why: string) =>
    ({ arrivals: [1, 2, 3, 4, 5].map((n) => arrival(n, n < 3 ? n : null, n < 3 ? null : why)) }) as never;
  const [pieces, one] = [{ run: Int32Array.from([0, 0, 0]) } as never, { last: 1, run: 0 } as never];
  it('do not make a front one that did not get through', () => {
    expect(turnedBack(pieces, one, campaign('The front did not get there.'))).toBe(true);
    expect(turnedBack(pieces, one, campaign('Good readings are lacking for 40 fan hours around the arrival.'))).toBe(
      false,
    );
  });
});

describe('air that falls slowly while the fan runs on', () => {
  it('begins a campaign when its day is clearly cooler, not hours later', () => {
    // Grain and air of 20 C; from 100 h on the air falls by 0.2 K an hour. By hand: the mean of the day around is 3 K under 20 C at
    // 115 h; the grain that has followed by then makes it a little later. The hour's own air is 3 K under the grain from 121 h on.
    const { fronts, firstOnMs } = play({
      ...PLAIN,
      cfmPerBushel: 0.3,
      hours: 260,
      grainC: () => 20,
      airC: (hour) => 20 - 0.2 * Math.min(100, Math.max(0, hour - 100)),
    });
    const begun = (fronts.campaigns[0].span.fromMs - firstOnMs) / 3_600_000 + PLAIN.fanFromH;
    expect(fronts.campaigns[0].kind).toBe('cooling');
    expect(begun).toBeGreaterThanOrEqual(115);
    expect(begun).toBeLessThan(118);
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
