// What all of the hand-made season hangs on: its days, its bins, how their fans ran.
import type { FanSeason, FanSpans } from '../../src/analysis/types.ts';
import type { Bin } from '../../src/season/season.ts';
import { plainBin, stoodAt } from '../support/plain-bin.ts';

export const HOUR = 3_600_000;
export const DAY = 24 * HOUR;
// 00:00 on 4 October 2024 in Chicago
export const START = Date.UTC(2024, 9, 4, 5);
export const DAYS = 150;
export const HEIGHTS = [0.6, 1.5, 2.4, 3.4, 4.3, 5.2];

export function bin(id: string, name: string, goal: Bin['goal'], crop: string): Bin {
  return plainBin(
    {
      id,
      name,
      diameterM: 10.97,
      eaveHeightM: 6.4,
      goal,
      managedAs: 'dry-air window',
      fanIds: [`F${id.slice(1)}`],
      cables: ['C1', 'C5'].map((cable, i) => ({
        id: cable,
        fromCentreM: i === 0 ? 2.7 : 0,
        bearingDeg: 0,
        sensorHeightsM: HEIGHTS,
      })),
    },
    {
      crop,
      depthSteps: stoodAt(6.1),
      bulkDensityKgM3: 721,
      targetMoistureWb: 0.15,
      targetTempC: 4.4,
      filledMs: START,
      unloadedMs: START + DAYS * DAY,
    },
  );
}

/** Fan on from 10:00 to 22:00 on two days of three for 60 days, with ten days unknown after. */
export function spans(): FanSpans {
  const list: [number, number, number][] = [];
  for (let day = 0; day < 60; day++) {
    const from = START + day * DAY;
    if (day % 3 === 2) list.push([from, from + DAY, 0]);
    else
      list.push(
        [from, from + 10 * HOUR, 0],
        [from + 10 * HOUR, from + 22 * HOUR, 1],
        [from + 22 * HOUR, from + DAY, 0],
      );
  }
  list.push([START + 60 * DAY, START + 70 * DAY, 2], [START + 70 * DAY, START + DAYS * DAY, 0]);
  return {
    startMs: Float64Array.from(list, (one) => one[0]),
    endMs: Float64Array.from(list, (one) => one[1]),
    state: Uint8Array.from(list, (one) => one[2]),
    powerW: Float64Array.from(list, (one) => [0, 12_000, Number.NaN][one[2]]),
  };
}

export function fanSeason(fanId: string): FanSeason {
  return {
    fanId,
    runsFrom: 'current',
    energyFrom: 'current',
    spans: spans(),
    onHours: 480,
    unknownHours: 240,
    starts: 40,
    energyKwh: 5760,
    energyRelSd: 0.04,
    how: 'on above 4 A, stated; power is √3 · 230 V · current · 0.85',
  };
}
