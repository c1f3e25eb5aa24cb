import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { zoneOf } from '../../src/base/zone.ts';
import { monthlyDemand } from '../../src/money/demand.ts';
import type { PowerSpans } from '../../src/money/energy-cost.ts';
import { fanTurns, leastPeaks } from '../../src/money/fan-turns.ts';
import { staggeredStarts } from '../../src/money/staggered-starts.ts';
import type { DemandRule } from '../../src/money/tariff.ts';

const chicago = zoneOf('America/Chicago');
const H = 3_600_000;
const MIN = 60_000;
const utc = (text: string) => Date.parse(`${text}Z`);
const spans = (...list: readonly (readonly [number, number, number])[]): PowerSpans => ({
  startMs: Float64Array.from(list, ([from]) => from),
  endMs: Float64Array.from(list, ([, to]) => to),
  powerW: Float64Array.from(list, ([, , watt]) => watt),
});
const rule = (part: Partial<DemandRule> = {}): DemandRule => ({ pricePerKw: 10, when: null, ratchet: null, ...part });
const hoursOf = (part: PowerSpans) => part.startMs.reduce((sum, start, i) => sum + (part.endMs[i] - start) / H, 0);
const day = utc('2024-10-10T05:00:00'); // 10 October 2024, local midnight (CDT)
const at = (hour: number) => day + hour * H;

describe('starts a quarter hour apart, by hand', () => {
  it('two fans that both start at noon for an hour: the second at 12:15; the peak of 25 kW stays, for they still run together', () => {
    const [a, b] = staggeredStarts([spans([at(12), at(13), 10_000]), spans([at(12), at(13), 15_000])]);
    // The stronger fan keeps its start.
    expect([b.startMs[0], b.endMs[0]]).toEqual([at(12), at(13)]);
    expect([a.startMs[0], a.endMs[0]]).toEqual([at(12.25), at(13.25)]);
    const [october] = monthlyDemand(rule(), chicago, [a, b], at(0), at(24));
    expect(october.peakKw).toBeCloseTo(25, 9);
  });
  it('two short starts of 15 minutes: 10 + 15 kW at once cost 250; apart the higher one alone, 150', () => {
    const parts = [spans([at(12), at(12.25), 10_000]), spans([at(12), at(12.25), 15_000])];
    const cost = (list: typeof parts) => monthlyDemand(rule(), chicago, list, at(0), at(24))[0].cost;
    expect(cost(parts)).toBeCloseTo(250, 9);
    expect(cost(staggeredStarts(parts))).toBeCloseTo(150, 9);
  });
  it('three fans within one quarter hour (12:00, 12:05, 12:10) start at 12:00, 12:20 and 12:40', () => {
    const of = (minute: number) => spans([at(12) + minute * MIN, at(14), 5000]);
    const starts = staggeredStarts([of(0), of(5), of(10)]).map((part) => (part.startMs[0] - at(12)) / MIN);
    // 12:05 + 15 lies in 12:15 to 12:30; 12:10 + 15 would lie there too, so + 30.
    expect(starts).toEqual([0, 20, 40]);
  });
  it('a run pushed into the fan’s next one is followed by it at once: the hours stay', () => {
    const a = spans([at(12), at(13), 5000]);
    const b = spans([at(12), at(13), 4000], [at(13.1), at(14), 4000]);
    const [, moved] = staggeredStarts([a, b]);
    expect([...moved.startMs]).toEqual([at(12.25), at(13.25)]);
    expect(hoursOf(moved)).toBeCloseTo(1.9, 9);
  });
});

describe('fans in turns within the day, by hand', () => {
  const turn = (parts: PowerSpans[], rules = [rule()], from = at(0), to = at(24)) => {
    const turned = fanTurns(parts, rules, chicago, from, to);
    const cost = (list: typeof parts) =>
      rules.reduce((sum, one) => sum + monthlyDemand(one, chicago, list, from, to).reduce((s, m) => s + m.cost, 0), 0);
    return { turned, before: cost(parts), after: cost(turned), least: leastPeaks(parts, rules[0], chicago, from, to) };
  };

  it('two fans of 10 kW, noon to midnight both: 20 kW x 10 = 200 as run; in turns 10 kW, 100', () => {
    const got = turn([spans([at(12), at(24), 10_000]), spans([at(12), at(24), 10_000])]);
    expect(got.before).toBeCloseTo(200, 9);
    expect(got.after).toBeCloseTo(100, 9);
    expect(got.least).toEqual([{ dayMs: at(0), kw: 10 }]);
    expect(got.turned.map(hoursOf)).toEqual([12, 12]);
  });
  it('fans that run the whole day cannot take turns: 20 kW stay 20', () => {
    const got = turn([spans([at(0), at(24), 10_000]), spans([at(0), at(24), 10_000])]);
    expect([got.before, got.after]).toEqual([200, 200]);
    expect(got.least[0].kw).toBeCloseTo(20, 9);
  });
  it('three fans of 12, 8 and 6 kW for 16 h each: 48 fan hours in 24 need two at once somewhere', () => {
    // Mean: 26 kW x 16 / 24 = 17.33. The strongest two need 32 h in 24, so they meet: 20 kW at least, and 20 is found:
    // 12 kW runs 0-16, 8 kW runs 16-24 and 0-8 beside it, 6 kW runs 16-24 and 8-16: 20, 18, 14 kW.
    const got = turn([12_000, 8000, 6000].map((watt) => spans([at(2), at(18), watt])));
    expect(got.before).toBeCloseTo(260, 9);
    expect(got.after).toBeCloseTo(200, 9);
    expect(got.least[0].kw).toBeCloseTo(20, 9);
  });
  it('a rule of 07:00 to 22:00 leaves 9 h free: two fans of 10 kW for 12 h each need 3 h each by day, one after the other', () => {
    const counted = rule({ when: { months: null, days: null, hours: [[7 * 60, 22 * 60]] } });
    const got = turn([spans([at(8), at(20), 10_000]), spans([at(8), at(20), 10_000])], [counted]);
    expect([got.before, got.after]).toEqual([200, 100]);
    // 2 x 3 h x 10 kW over 15 counted hours: 4 kW in the mean, but one fan at least.
    expect(got.least[0].kw).toBeCloseTo(10, 9);
    const night = turn([spans([at(8), at(17), 10_000]), spans([at(8), at(17), 10_000])], [counted]);
    expect([night.before, night.after]).toEqual([200, 0]);
    expect(night.least[0].kw).toBe(0);
  });
  it('autumn’s day of 25 h holds 12.5 h of each, spring’s of 23 h 11.5 h', () => {
    for (const [text, hours] of [
      ['2024-11-03T05:00:00', 25],
      ['2025-03-09T06:00:00', 23],
    ] as const) {
      const from = utc(text);
      const fan = spans([from, from + (hours / 2) * H, 10_000]);
      const got = turn([fan, fan], [rule()], from, from + hours * H);
      expect([got.before, got.after]).toEqual([200, 100]);
      expect(got.least).toHaveLength(1);
    }
  });
  it('whatever the runs: hours and energy of each fan stay, the peak lies between the least and that as run', () => {
    const run = fc.tuple(fc.integer({ min: 0, max: 90 }), fc.integer({ min: 1, max: 60 }));
    const fan = fc.tuple(fc.integer({ min: 1, max: 20 }), fc.array(run, { minLength: 1, maxLength: 5 }));
    fc.assert(
      fc.property(fc.array(fan, { minLength: 1, maxLength: 6 }), (fans) => {
        const parts = fans.map(([kw, runs]) => {
          let ms = day;
          return spans(
            ...runs.map(([rest, length]): [number, number, number] => {
              const from = ms + (rest * H) / 7;
              ms = from + (length * H) / 7;
              return [from, ms, kw * 1000];
            }),
          );
        });
        const end = Math.max(...parts.map((part) => part.endMs[part.endMs.length - 1]));
        const to = day + Math.ceil((end - day) / (24 * H)) * 24 * H;
        const got = turn(parts, [rule()], day, to);
        parts.forEach((part, p) => {
          expect(hoursOf(got.turned[p])).toBeCloseTo(hoursOf(part), 6);
        });
        const peak = (list: typeof parts) =>
          Math.max(...monthlyDemand(rule(), chicago, list, day, to).map((m) => m.peakKw));
        const least = Math.max(...got.least.map(({ kw }) => kw));
        expect(peak(got.turned)).toBeLessThanOrEqual(peak(parts) + 1e-6);
        // A fan that ran a quarter hour in parts only may stay under what whole quarter hours need.
        expect(peak(got.turned)).toBeGreaterThanOrEqual(Math.min(least, peak(parts)) - 1e-6);
      }),
      { seed: 7, numRuns: 60 },
    );
  });
  it('each day keeps its own hours, and a part of a quarter hour stays a part', () => {
    // 30 h from noon: 12 h on the first day, 18 h on the second; the other 10 minutes on the first.
    const parts = [spans([at(12), at(42), 10_000]), spans([at(12), at(12) + 10 * MIN, 6000])];
    const { turned } = turn(parts, [rule()], at(0), at(48));
    const within = (from: number, to: number) =>
      turned.map((part) =>
        part.startMs.reduce(
          (sum, start, i) => sum + Math.max(0, Math.min(part.endMs[i], to) - Math.max(start, from)) / H,
          0,
        ),
      );
    expect(within(at(0), at(24)).map((h) => Math.round(h * 1000) / 1000)).toEqual([12, 0.167]);
    expect(within(at(24), at(48))).toEqual([18, 0]);
  });
});
