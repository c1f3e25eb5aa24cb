import { expect, it } from 'vitest';
import { hourlyReadings } from '../../../src/analysis/condition/hourly-readings.ts';
import { HOUR, keptInput, START } from './kept-bin.ts';

it('keeps the first good reading of each hour', () => {
  const [plain] = keptInput({ days: 1, tempC: () => 10 }).series;
  // Every ten minutes for three hours: the first of the second hour is flagged, the first two of the third have no moisture.
  const timeMs = Float64Array.from({ length: 18 }, (_, i) => START + (i * HOUR) / 6);
  const moistureWb = Float64Array.from(timeMs, (_, i) => (i === 12 || i === 13 ? Number.NaN : 0.15 + i / 1000));
  const { timeMs: at, moistureWb: wb } = hourlyReadings({
    ...plain,
    timeMs,
    tempC: new Float64Array(18).fill(10),
    moistureWb,
    tempFlags: Uint8Array.from(timeMs, (_, i) => Number(i === 6)),
    moistureFlags: new Uint8Array(18),
    rows: Int32Array.from(timeMs.keys()),
  });
  expect([...at].map((ms) => ((ms - START) / HOUR) * 6)).toEqual([0, 7, 14]);
  expect([...wb]).toEqual([0.15, 0.157, 0.164]);
});
