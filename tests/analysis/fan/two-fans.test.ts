import { describe, expect, it } from 'vitest';
import { binSpans } from '../../../src/analysis/fan/bin-spans.ts';
import { edgesTogether } from '../../../src/analysis/fan/edges-together.ts';
import { fanSeason } from '../../../src/analysis/fan/fan-season.ts';
import { fanHoursBetween } from '../../../src/analysis/fan/spans.ts';
import type { FanSpans } from '../../../src/analysis/types.ts';
import { AMP, FAN, fanTable, type KnownFan, knownFan, MIN, type Row, randomOf, SEASON } from './known-fan.ts';

/** Runs of a fan by minutes: each run's start and stop with the minutes before in which the log leaves them. */
function spansOf(runs: readonly (readonly [number, number])[], window: number, end: number): FanSpans {
  const edges = [0, ...runs.flat()];
  const states = edges.map((_, i) => i % 2);
  return {
    startMs: Float64Array.from(edges, (m) => m * MIN),
    endMs: Float64Array.from([...edges.slice(1), end], (m) => m * MIN),
    state: Uint8Array.from(states),
    powerW: Float64Array.from(states, (on) => on * 1000),
    startFromMs: Float64Array.from(edges, (m, i) => (i === 0 ? m : m - window) * MIN),
    startToMs: Float64Array.from(edges, (m) => m * MIN),
  };
}
const minutes = (values: Float64Array) => Array.from(values, (ms) => ms / MIN);

describe('the edges of two fans, by hand', () => {
  // Four runs, 1,000 minutes apart. Fan A is sampled at 0, 15, 30 ...: it starts in (0, 15], stops in (300, 315].
  const of = (start: number, stop: number) => [1, 2, 3, 4].map((n) => [n * 1000 + start, n * 1000 + stop] as const);

  it('switched together: each edge stands in the middle of what both windows leave, and none makes the run longer', () => {
    // Fan B is sampled at 8, 23 ...: it starts in (-7, 8] twice and in (8, 23] twice, stops in (308, 323].
    const a = spansOf(of(15, 315), 15, 6000);
    const b = spansOf(
      [...of(8, 323).slice(0, 2), ...of(23, 323).slice(2)].map(([x, y]) => [x, y] as const),
      15,
      6000,
    );
    const [A, B] = edgesTogether([a, b]);
    // Differences of the starts: -7 -7 8 8, mean 0.5: B's windows less half a minute are (-7.5, 7.5] and (7.5, 22.5].
    // Left by both: (0, 7.5], middle 3.75, and (7.5, 15], middle 11.25. B half a minute later.
    expect(minutes(A.startMs)).toEqual([0, 1003.75, 1311.5, 2003.75, 2311.5, 3011.25, 3311.5, 4011.25, 4311.5]);
    // Stops: always 8 apart, so that is the sampling's and no lag: left is (308, 315], middle 311.5.
    expect(minutes(B.startMs)).toEqual([0, 1004.25, 1311.5, 2004.25, 2311.5, 3011.75, 3311.5, 4011.75, 4311.5]);
    // Together 307.75 + 307.75 + 300.25 + 300.25 minutes
    expect(fanHoursBetween(binSpans([a, b]), 0, 6000 * MIN)).toBeCloseTo(1216 / 60, 9);
  });
  it('on their own: each edge in the middle of its window', () => {
    const a = spansOf(of(15, 315), 15, 6000);
    const b = spansOf(of(515, 815), 30, 6000);
    const [A, B] = edgesTogether([a, b]);
    expect(minutes(A.startMs).slice(0, 3)).toEqual([0, 1007.5, 1307.5]);
    expect(minutes(B.startMs).slice(0, 3)).toEqual([0, 1500, 1800]);
    expect(fanHoursBetween(binSpans([a, b]), 0, 6000 * MIN)).toBeCloseTo((8 * 300) / 60, 9);
  });
  it('one coincidence among four is none; exact logs stay as they are', () => {
    const a = spansOf(of(15, 315), 15, 6000);
    const b = spansOf([[1023, 1400], ...of(615, 815).slice(1)], 15, 6000);
    expect(minutes(edgesTogether([a, b])[0].startMs)[1]).toBe(1007.5);
    const { startFromMs: _from, startToMs: _to, ...exact } = a;
    expect(edgesTogether([exact, exact])).toEqual([exact, exact]);
  });
});

/**
 * Two fans of which every minute is known, each logged with its own phase. The limit is the kit's: hours within 0.5 %.
 * Taking the earlier of two starts and the later of two stops would be 0.7 to 2.7 % long where one controller switches both.
 */
const DAYS = 200;
type Runs = KnownFan['runs'];
const second: Record<string, (own: Runs, seed: number) => Runs> = {
  'on their own': (_, seed) => knownFan(seed + 500, DAYS).runs,
  'switched together': (own) => own,
  'the second started four minutes later, stopped with the first': (own) =>
    own.map(({ fromMs, toMs }) => ({ fromMs: Math.min(toMs, fromMs + 4 * MIN), toMs })),
  'the second in every other run': (own) => own.filter((_, i) => i % 2 === 0),
};
const logs: [string, number | 'run', number | 'run'][] = [
  ['10 min both', 10, 10],
  ['15 min both', 15, 15],
  ['30 min both', 30, 30],
  ['10 and 30 min', 10, 30],
  ['15 min and run hours in tenths', 15, 'run'],
];

describe.each(Object.entries(second))('two fans of a bin, %s', (_, runsOf) => {
  it.each(logs)('logged at %s: their hours together', (_name, first, other) => {
    for (const seed of [31, 32, 33]) {
      const random = randomOf(seed);
      const known = knownFan(seed, DAYS);
      const count = (known.toMs - known.fromMs) / MIN;
      const fans = [known.runs, runsOf(known.runs, seed)].map((runs) => {
        const on = new Uint8Array(count);
        for (const { fromMs, toMs } of runs) on.fill(1, (fromMs - known.fromMs) / MIN, (toMs - known.fromMs) / MIN);
        return on;
      });
      const truth = fans[0].reduce((sum, on, m) => sum + (on | fans[1][m]), 0) / 60;
      const seasons = fans.map((on, f) => {
        const kind = [first, other][f];
        const every = kind === 'run' ? 15 : kind;
        const rows: Row[] = [];
        let run = 0;
        const phase = Math.floor(random() * every);
        for (let m = 0; m < count; m++) {
          if (m % every === phase) {
            const time = known.fromMs + m * MIN;
            if (kind === 'run') rows.push({ time, run: Math.floor(run / 360 + 1e-9) * 360 });
            else rows.push({ time, current: on[m] === 1 ? known.powerAt(time) * AMP : 0.05 });
          }
          run += on[m] * 60;
        }
        return fanSeason(FAN, fanTable(rows), SEASON);
      });
      const got = fanHoursBetween(binSpans(seasons.map((fan) => fan.spans)), known.fromMs, known.toMs);
      expect(Math.abs(got / truth - 1)).toBeLessThan(0.005);
    }
  });
});
