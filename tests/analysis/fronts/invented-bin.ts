import { pushSpan, spanList, toFanSpans } from '../../../src/analysis/fan/spans.ts';
import { FAN_OFF, FAN_ON, type FanSpans } from '../../../src/analysis/types.ts';
import type { Bin } from '../../../src/season/season.ts';
import type { SensorSeries } from '../../../src/tables/sensors.ts';
import { plainBin, stoodAt } from '../../support/plain-bin.ts';

export const HOUR_MS = 3_600_000;
/** 1 October 2024, noon UTC. */
export const START_MS = Date.UTC(2024, 9, 1, 12);

/** A bin of 6.5 m of corn with cables whose sensors hang at these heights. */
export function inventedBin(heightsM: readonly number[], cables = 1, air: 'up' | 'down' = 'up', depthM = 6.5): Bin {
  const cable = (i: number) => ({
    id: `C${i + 1}`,
    fromCentreM: i === 0 ? 0 : 3,
    bearingDeg: null,
    sensorHeightsM: heightsM,
  });
  return plainBin(
    {
      id: 'T1',
      name: 'Test bin',
      eaveHeightM: null,
      goal: 'cool',
      air,
      cables: Array.from({ length: cables }, (_, i) => cable(i)),
    },
    { depthSteps: stoodAt(depthM) },
  );
}

/** A sensor's log from readings. */
export function seriesOf(
  cable: string,
  sensor: number,
  heightM: number,
  timeMs: readonly number[],
  tempC: readonly number[],
): SensorSeries {
  return {
    bin: 'T1',
    cable,
    sensor,
    heightM,
    timeMs: Float64Array.from(timeMs),
    tempC: Float64Array.from(tempC),
    moistureWb: new Float64Array(timeMs.length).fill(Number.NaN),
    tempFlags: new Uint8Array(timeMs.length),
    moistureFlags: new Uint8Array(timeMs.length),
    rows: Int32Array.from(timeMs.keys()),
  };
}

/** Fan spans from hour-by-step states; hours count from START_MS. */
export function spansOf(on: Uint8Array, stepH: number): FanSpans {
  const list = spanList();
  on.forEach((state, i) => {
    const from = START_MS + i * stepH * HOUR_MS;
    pushSpan(list, from, from + stepH * HOUR_MS, state === 1 ? FAN_ON : FAN_OFF, state === 1 ? 5000 : 0);
  });
  return toFanSpans(list);
}
