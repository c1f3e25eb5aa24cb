import { describe, expect, it } from 'vitest';
import { fanShares } from '../../../src/analysis/model/fan-shares.ts';
import { sharesByPressure } from '../../../src/analysis/model/shares-by-pressure.ts';
import { FAN_OFF, FAN_ON, FAN_UNKNOWN } from '../../../src/analysis/types.ts';

const H = 3_600_000;
const DAY = 24;

describe('hours of a silent fan log', () => {
  // Two days on, two days off, two days of which the log says nothing: by the truth the fan ran in the first of them. On again for a day.
  const edges = [0, 2 * DAY, 4 * DAY, 6 * DAY, 7 * DAY];
  const spans = {
    startMs: Float64Array.from(edges.slice(0, 4), (h) => h * H),
    endMs: Float64Array.from(edges.slice(1), (h) => h * H),
    state: Uint8Array.of(FAN_ON, FAN_OFF, FAN_UNKNOWN, FAN_ON),
    powerW: Float64Array.of(1, 0, Number.NaN, 1),
  };
  const ran = (hour: number) => hour < 2 * DAY || (hour >= 4 * DAY && hour < 5 * DAY) || hour >= 6 * DAY;
  const shares = fanShares(spans, 0, 7 * DAY);
  const rows = (pressureOf: (hour: number) => number, hours = (hour: number) => hour >= 0) => {
    const read = Array.from({ length: 7 * DAY }, (_, hour) => hour).filter(hours);
    return {
      time: Float64Array.from(read, (hour) => (hour + 0.5) * H),
      static_pressure_pa: Float64Array.from(read, pressureOf),
    };
  };
  const silent = (of: Float64Array) => of.slice(4 * DAY, 6 * DAY).reduce((sum, part) => sum + part, 0);

  it('are told by the static pressure of the plenum, drawn or pushed', () => {
    for (const sign of [1, -1]) {
      const { fan, foundH } = sharesByPressure(
        shares,
        spans,
        rows((hour) => (ran(hour) ? sign * 400 : 3)),
        0,
      );
      expect(foundH).toBe(DAY);
      expect([...fan.on]).toEqual(Array.from({ length: 7 * DAY }, (_, hour) => (ran(hour) ? 1 : 0)));
      expect(silent(fan.unknown)).toBe(0);
    }
  });

  it('stay unknown where no pressure is near, and where the gauge does not tell the logged hours', () => {
    const away = sharesByPressure(
      shares,
      spans,
      rows(
        (hour) => (ran(hour) ? 400 : 3),
        (hour) => hour < 4 * DAY || hour >= 6 * DAY,
      ),
      0,
    );
    // Of the silent hours only the one beside a reading is told, at either end: off before, on after.
    expect([away.foundH, silent(away.fan.unknown)]).toEqual([1, 2 * DAY - 2]);
    const frozen = sharesByPressure(
      shares,
      spans,
      rows(() => 400),
      0,
    );
    expect(frozen).toEqual({ fan: shares, foundH: 0 });
    // A fan of 30 Pa is not told from none.
    const weak = sharesByPressure(
      shares,
      spans,
      rows((hour) => (ran(hour) ? 30 : 0)),
      0,
    );
    expect(weak.foundH).toBe(0);
  });
});
