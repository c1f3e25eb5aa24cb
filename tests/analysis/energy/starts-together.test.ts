import { describe, expect, it } from 'vitest';
import { FAN, H, type Row } from '../fan/known-fan.ts';
import { bin, review, seasonOf, start } from './by-hand-season.ts';

const DAY = 24 * H;
/** A run-time meter read once a day, at an hour of it: so many hours a day. */
const daily = (fan: string, perDay: readonly number[], atHour = 0): Row[] => {
  let dial = 500;
  return [0, ...perDay].map((hours, day) => {
    dial += hours;
    return { fan, time: start + day * DAY + atHour * H, run: dial * 3600 };
  });
};
const season = seasonOf([FAN, { ...FAN, id: 'F2' }], [bin('B1', ['F1', 'F2'])]);

describe('starts of two fans whose meters are read once a day', () => {
  const first = daily('F1', [8, 0, 8.5, 8, 7]);
  it('four days that they ran: four starts, not one for each clock hour nor none', () => {
    expect(review([...first, ...daily('F2', [7, 0, 7.5, 6, 6])], season).starts).toBe(4);
  });
  it('read at other hours, days that lie over each other count once', () => {
    expect(review([...first, ...daily('F2', [7, 0, 7.5, 6, 6], 5)], season).starts).toBe(4);
  });
  it('the second on a day of its own: five', () => {
    expect(review([...first, ...daily('F2', [7, 6, 7.5, 6, 6])], season).starts).toBe(5);
  });
});
