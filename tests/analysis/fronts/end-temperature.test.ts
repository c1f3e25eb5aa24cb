import { expect, it } from 'vitest';
import { endTemperature } from '../../../src/analysis/fronts/end-temperature.ts';
import { outcomesOf } from '../../../src/analysis/fronts/front-outcomes.ts';
import type { SensorSeries } from '../../../src/tables/sensors.ts';
import { campaignOf, sensorOf } from '../../notebook/campaign-of.ts';

const HOUR = 3_600_000;

/** Hourly readings that fall from 18 C by 0.1 C an hour; the campaign ends at hour 100. */
function series(flagged: readonly number[] = []): SensorSeries {
  const hours = Array.from({ length: 120 }, (_, hour) => hour);
  return {
    bin: 'B1',
    cable: 'C1',
    sensor: 1,
    heightM: 2,
    timeMs: Float64Array.from(hours, (hour) => hour * HOUR),
    tempC: Float64Array.from(hours, (hour) => 18 - 0.1 * hour),
    moistureWb: new Float64Array(120).fill(Number.NaN),
    tempFlags: Uint8Array.from(hours, (hour) => (flagged.includes(hour) ? 4 : 0)),
    moistureFlags: new Uint8Array(120),
    rows: Int32Array.from(hours),
  };
}
const still = campaignOf([sensorOf('C1', 1, 2, { aheadC: 18, behindC: 17 })]);

it('is the median of the believed readings of the last twelve hours', () => {
  // Hours 88 to 100: the middle one is 94, at 18 − 9.4.
  expect(endTemperature('B1', [series()])(still, 'C1', 1)).toBeCloseTo(8.6, 9);
  // Without 94 to 100 the middle of 88 to 93 lies between 90 and 91.
  expect(endTemperature('B1', [series([94, 95, 96, 97, 98, 99, 100])])(still, 'C1', 1)).toBeCloseTo(8.95, 9);
});

it('is not known of another bin, another sensor, or where nothing was read', () => {
  expect(endTemperature('B2', [series()])(still, 'C1', 1)).toBeNull();
  expect(endTemperature('B1', [series()])(still, 'C1', 2)).toBeNull();
  expect(endTemperature('B1', [])(still, 'C1', 1)).toBeNull();
});

it('tells grain that cooled in steps from grain that was left warm', () => {
  const [cooled] = outcomesOf(still, 'up', endTemperature('B1', [series()]));
  expect(cooled).toMatchObject({ outcome: 'followed', endC: expect.closeTo(8.6, 9) });
  expect(outcomesOf(still, 'up')[0].outcome).toBe('held');
  // Also where the analysis has no temperatures of its own.
  const blank = campaignOf([sensorOf('C1', 1, 2, { why: 'The front did not get there: it did not move that way.' })]);
  expect(outcomesOf(blank, 'up', endTemperature('B1', [series()]))[0].outcome).toBe('followed');
  expect(outcomesOf(blank, 'up', () => 16)[0].outcome).toBe('held');
});
