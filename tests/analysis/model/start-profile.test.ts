import { describe, expect, it } from 'vitest';
import type { CableLog } from '../../../src/analysis/model/cable-logs.ts';
import { startReadings } from '../../../src/analysis/model/start-profile.ts';
import { AIR_MOVING, AIR_STILL } from '../../../src/analysis/moisture/sensor-readings.ts';

const HOUR_MS = 3_600_000;
const cableOf = (air: readonly number[], moistures: readonly number[]) => {
  const readings = (value: readonly number[]) => ({
    cable: 'C1',
    sensor: 1,
    timeMs: Float64Array.from(value, (_, i) => i * HOUR_MS),
    value: Float64Array.from(value),
    air: Uint8Array.from(air),
  });
  const temperatures = moistures.map((_, i) => 20 - i);
  const sensor = {
    sensor: 1,
    heightM: 1,
    temperature: readings(temperatures),
    moisture: readings(moistures),
  };
  return { cable: 'C1', share: 1, sensors: [sensor] } as CableLog;
};

describe('the grain at the start', () => {
  it('is read before the fan runs where there is a reading then, for moving air shows its own humidity', () => {
    const cable = cableOf([AIR_STILL, AIR_MOVING, AIR_MOVING, AIR_MOVING], [0.19, 0.17, 0.168, 0.166]);
    const [[{ moistureWb, tempC }]] = startReadings([cable], [0, 4 * HOUR_MS]);
    expect(moistureWb).toBe(0.19);
    expect(tempC).toBe(20);
  });

  it('is read in moving air where there is nothing else', () => {
    const cable = cableOf([AIR_MOVING, AIR_MOVING, AIR_MOVING], [0.17, 0.168, 0.166]);
    expect(startReadings([cable], [0, 4 * HOUR_MS])[0][0].moistureWb).toBe(0.168);
  });
});
