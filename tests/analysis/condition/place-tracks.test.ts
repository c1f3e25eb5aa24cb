import { describe, expect, it } from 'vitest';
import { placeTracks } from '../../../src/analysis/condition/place-tracks.ts';
import { stepGrid } from '../../../src/analysis/condition/step-grid.ts';
import { DAY, keptInput, START } from './kept-bin.ts';

const tracksOf = (made: Parameters<typeof keptInput>[0], depthSteps = keptInput(made).bin.grain.depthSteps) => {
  const { bin, series, spans } = keptInput(made);
  const filled = { ...bin, grain: { ...bin.grain, depthSteps } };
  return placeTracks(filled, series, spans, stepGrid(START, START + made.days * DAY));
};

describe('places of the grain through their stay', () => {
  it('begin when grain covers the sensor and end when it is drawn from over it', () => {
    const steps = [
      { fromMs: START, depthM: 2 },
      { fromMs: START + 5 * DAY, depthM: 6 },
      { fromMs: START + 15 * DAY, depthM: 4 },
    ];
    const tracks = tracksOf({ days: 20, tempC: () => 10 }, steps);
    // Steps of a quarter day: sensors at 1, 3 and 5 m.
    expect(tracks.map(({ from, to }) => [from, to])).toEqual([
      [0, 80],
      [20, 80],
      [20, 60],
    ]);
    expect(tracks[2].tempC[19]).toBeNaN();
    expect(tracks[2].tempC[20]).toBe(10);
  });

  it('lie straight over a hole, seen only where it is two days at most', () => {
    const hole = (from: number, to: number) => (_: number, day: number) =>
      day > from && day < to ? null : day < to ? 10 : 20;
    const [long] = tracksOf({ days: 20, heightsM: [3], tempC: hole(8, 12) });
    const inside = [...long.seen.keys()].filter((i) => long.seen[i] === 0);
    expect(inside.length).toBeGreaterThan(12);
    expect(long.tempC[40]).toBeGreaterThan(13);
    expect(long.tempC[40]).toBeLessThan(17);
    expect([long.lowC[40], long.highC[40]]).toEqual([10, 20]);
    const [short] = tracksOf({ days: 20, heightsM: [3], tempC: hole(8, 9.5) });
    expect(short.seen.every((one) => one === 1)).toBe(true);
  });

  it('take moistures in still air, and those with the fan on only where none stands near', () => {
    // The fan runs on days 0 to 9 and reads 2 points drier; still from day 10 on.
    const [track] = tracksOf({
      days: 20,
      heightsM: [3],
      tempC: () => 10,
      moistureWb: (_, day) => (day < 10 ? 0.16 : 0.18),
      fanOn: (day) => day < 10,
    });
    expect(track.moistureWb[4]).toBeCloseTo(0.16, 12);
    // Day 8 lies within five days of the first still reading: the moving ones there say nothing.
    expect(track.moistureWb[32]).toBeGreaterThan(0.165);
    expect(track.moistureWb[60]).toBeCloseTo(0.18, 12);
  });
});
