import { describe, expect, it } from 'vitest';
import { binSpans } from '../../../src/analysis/fan/bin-spans.ts';
import { edgesTogether } from '../../../src/analysis/fan/edges-together.ts';
import { fanSeason } from '../../../src/analysis/fan/fan-season.ts';
import { fanHoursBetween } from '../../../src/analysis/fan/spans.ts';
import type { FanSpans } from '../../../src/analysis/types.ts';
import { AMP, FAN, fanTable, type KnownFan, knownFan, MIN, type Row, randomOf } from './known-fan.ts';

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

describe('what one of two logs did not see, by hand', () => {
  // Both logs sampled each 30 minutes, A at 0, 30 ..., B at 15, 45 ...; six runs of 300 minutes seen by both, two a day.
  const sampled = (phase: number) => Float64Array.from({ length: 300 }, (_, i) => (phase + 30 * i) * MIN);
  const long = [600, 1200, 1800, 2400, 3000, 3600];
  const a = long.map((m) => [m, m + 300] as const);
  const b = long.map((m) => [m + 15, m + 285] as const);
  const A = (runs: readonly (readonly [number, number])[]) => ({ ...spansOf(runs, 30, 8000), sampledMs: sampled(0) });
  const B = (runs: readonly (readonly [number, number])[]) => ({ ...spansOf(runs, 30, 8000), sampledMs: sampled(15) });
  const hours = (...fans: FanSpans[]) => fanHoursBetween(binSpans(fans), 4000 * MIN, 8000 * MIN) * 60;

  it('a run on one sample of A, off at B’s before and after: 15 minutes, the mean of A’s 30 and B’s none', () => {
    // A: began in (4470, 4500], ended in (4500, 4530]. B off at 4485 and 4515: (4485, 4500] and (4500, 4515].
    // Middles 4492.5 and 4507.5.
    expect(hours(A([...a, [4500, 4530]]), B(b))).toBeCloseTo(15, 9);
    expect(hours(B(b), A([...a, [4500, 4530]]))).toBeCloseTo(15, 9);
  });
  it('a rest on one sample of A while B’s samples say on counts 15 minutes of rest, not none', () => {
    // A on from 4500 to 4800 but for the sample at 4650; B on from 4515 to 4785. The run began in (4485, 4500], which both
    // logs leave, and ended in (4770, 4785]: 4492.5 to 4777.5, 285 minutes. The rest began in (4635, 4650], B's sample at
    // 4635 still on, and ended in (4650, 4665]: 15 minutes.
    expect(hours(A([...a, [4500, 4650], [4680, 4800]]), B([...b, [4515, 4785]]))).toBeCloseTo(270, 9);
  });
  it('a run that B’s samples contradict is A’s alone, and so is one where B joins in every other run only', () => {
    // 4500 to 4560 by two samples of A: B’s at 4515 says off. A began at 4485, ended at 4545.
    expect(hours(A([...a, [4500, 4560]]), B(b))).toBeCloseTo(60, 9);
    expect(hours(A([...a, [4500, 4530]]), B(b.filter((_, i) => i % 2 === 0)))).toBeCloseTo(30, 9);
  });
});

/**
 * Runs of an hour, many shorter than the step of the logs, which tell a season's hours to a percent or two and no better.
 * Taken whole where only one log saw them, they would be 5 and 17 % long.
 */
describe('two fans switched together for an hour at a time, logged each 30 minutes', () => {
  it.each([
    [5, 0.02],
    [2, 0.03],
  ])('rests of %i h: hours together, mean of six seasons, within %f', (restH, limit) => {
    const errors = [51, 52, 53, 54, 55, 56].map((seed) => {
      const random = randomOf(seed);
      const known = knownFan(seed, 120, 1, restH);
      const logs = [0, 1].map(() => {
        const rows: Row[] = [];
        for (let ms = known.fromMs + Math.floor(random() * 30) * MIN; ms < known.toMs; ms += 30 * MIN) {
          rows.push({ time: ms, current: known.onAt(ms) ? 40 : 0.05 });
        }
        return fanSeason(FAN, fanTable(rows)).spans;
      });
      return fanHoursBetween(binSpans(logs), known.fromMs, known.toMs) / known.hours - 1;
    });
    expect(Math.abs(errors.reduce((sum, one) => sum + one, 0) / errors.length)).toBeLessThan(limit);
  });
});

describe('two fans switched by a clock on the very moments of their samples, each with a run-time meter', () => {
  it('9 to 17 h and 10 to 17 h on ten days: 80 h together, as the meters say', () => {
    const day = 24 * 3_600_000;
    const logs = [9, 10].map((begin) => {
      const rows: Row[] = [];
      let counted = 0;
      for (let ms = 0; ms <= 10 * day; ms += 20 * MIN) {
        const hour = (ms % day) / 3_600_000;
        const on = hour >= begin && hour < 17;
        // A dial of hundredths of an hour, as read at this moment.
        rows.push({ time: Date.UTC(2024, 9, 20) + ms, current: on ? 40 : 0, run: Math.round(counted * 100) * 36 });
        if (on) counted += 1 / 3;
      }
      return fanSeason(FAN, fanTable(rows)).spans;
    });
    // A hundredth of an hour for each of 20 edges is 0.2 h.
    expect(Math.abs(fanHoursBetween(binSpans(logs)) - 80)).toBeLessThan(0.2);
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
        return fanSeason(FAN, fanTable(rows));
      });
      const got = fanHoursBetween(binSpans(seasons.map((fan) => fan.spans)), known.fromMs, known.toMs);
      expect(Math.abs(got / truth - 1)).toBeLessThan(0.005);
    }
  });
});
