import { describe, expect, it } from 'vitest';
import type { BinLog } from '../../../src/analysis/model/bin-log.ts';
import type { CableLog } from '../../../src/analysis/model/cable-logs.ts';
import { startProfiles, startReadings } from '../../../src/analysis/model/start-profile.ts';
import { AIR_MOVING, AIR_STILL } from '../../../src/analysis/moisture/sensor-readings.ts';

import { isothermOf } from '../../../src/grain/isotherm.ts';
import { wetFromDry } from '../../../src/grain/moisture-basis.ts';

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
    const [[read]] = startReadings([cable], [0, 4 * HOUR_MS]);
    expect(read).toMatchObject({ moistureWb: 0.19, tempC: 20, moving: false });
  });

  it('is read in moving air where there is nothing else', () => {
    const cable = cableOf([AIR_MOVING, AIR_MOVING, AIR_MOVING], [0.17, 0.168, 0.166]);
    expect(startReadings([cable], [0, 4 * HOUR_MS])[0][0]).toMatchObject({ moistureWb: 0.168, moving: true });
  });

  it('holds more than the first air told by what the fit finds, where nothing but moving air was read', () => {
    const read = { tempC: 15, moistureWb: 0.17 };
    const startReads = [
      [
        { ...read, heightM: 1, moving: true },
        { ...read, heightM: 2, moving: false },
      ],
    ];
    const isotherm = isothermOf('corn');
    const choice = { isotherm, cableIsotherm: isotherm, moistureBiasWb: 0, aboveAirWb: 0.02 };
    const [{ moistureDb }] = startProfiles({ startReads, startWb: 0.17 } as unknown as BinLog, choice);
    expect([...moistureDb].map(wetFromDry)).toEqual([expect.closeTo(0.19, 9), expect.closeTo(0.17, 9)]);
  });
});
