import { describe, expect, it } from 'vitest';
import type { BinLog } from '../../../src/analysis/model/bin-log.ts';
import { paperMoistures } from '../../../src/analysis/model/paper-moistures.ts';
import type { MomentAgreement } from '../../../src/analysis/moisture/ticket-agreement-types.ts';
import { estimate } from '../../../src/base/estimate.ts';

const HOUR_MS = 3_600_000;
const AT = [6, 12, 18, 24].map((hour) => hour * HOUR_MS);
const expected = (value: number) => ({ value, interval: [2 * value, 0] as [number, number], why: null });
const held = (part: Partial<MomentAgreement>): MomentAgreement => ({
  moment: 'start',
  sensors: estimate(0.19, 0.18, 0.2),
  tickets: estimate(0.18, 0.1751, 0.1849),
  loads: 9,
  covered: 1,
  difference: estimate(1, 0, 2),
  fanHoursBetween: 0,
  hoursLogged: true,
  expected: expected(0),
  agree: true,
  why: null,
  ...part,
});
const pair = (hour: number, cables: readonly string[], counted = true, heightM = 2) => ({
  reading: { timeMs: hour * HOUR_MS, heightM, fromCentreM: 1, moistureWb: 0.17, tempC: 15 },
  cables,
  counted,
});
const logOf = (tickets: { start?: MomentAgreement; end?: MomentAgreement }, pairs: readonly unknown[] = []) =>
  ({
    startMs: 0,
    endMs: 24 * HOUR_MS,
    cables: [{ cable: 'C1' }, { cable: 'C2' }],
    review: {
      moisture: { tickets: { start: tickets.start ?? null, end: tickets.end ?? null } },
      probes: { pairs, meterLimit: 0.5 },
    },
  }) as unknown as BinLog;

describe('moistures that are no sensor’s', () => {
  it('are the tickets’, with a standard error out of their 90 % interval', () => {
    const { start, end } = paperMoistures(logOf({ start: held({}) }), AT);
    expect(start?.wb).toBe(0.18);
    // 1.645 standard errors are 0.49 point.
    expect(start?.sd).toBeCloseTo(0.0049 / 1.645, 5);
    expect(end).toBeNull();
  });

  it('are none where the loads are not the bin’s mean, or fans changed the grain in between', () => {
    expect(paperMoistures(logOf({ start: held({ agree: null }) }), AT).start).toBeNull();
    expect(paperMoistures(logOf({ start: held({ expected: expected(-0.6) }) }), AT).start).toBeNull();
    expect(paperMoistures(logOf({ start: held({ expected: expected(-0.1) }) }), AT).start).not.toBeNull();
  });

  it('are the hand samples that count, at the hour read that is nearest, beside the cables that have a log', () => {
    const pairs = [
      pair(13, ['C2']),
      pair(13, ['C9']),
      pair(13, ['C1'], false),
      pair(13, ['C1', 'C2'], true, Number.NaN),
    ];
    const { samples } = paperMoistures(logOf({}, pairs), AT);
    expect(samples).toEqual([{ read: 1, cables: [1], heightM: 2, wb: 0.17 }]);
  });

  it('many samples leave the meter’s own error, a quarter point for limits of half a point', () => {
    const few = paperMoistures(logOf({}, [pair(12, ['C1'])]), AT).samplesSd;
    const many = paperMoistures(
      logOf(
        {},
        Array.from({ length: 400 }, () => pair(12, ['C1'])),
      ),
      AT,
    ).samplesSd;
    // 0.5 / 1.96, beside 0.3 (sampling) and 0.4 (place) joined as squares for one sample.
    expect(100 * few).toBeCloseTo(Math.hypot(0.5 / 1.96, 0.3, 0.4), 3);
    expect(100 * many).toBeCloseTo(0.5 / 1.96, 2);
  });
});
