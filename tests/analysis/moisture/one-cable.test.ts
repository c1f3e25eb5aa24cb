import { describe, expect, it } from 'vitest';
import { binMoisture } from '../../../src/analysis/moisture/bin-moisture.ts';
import { binMoistures } from './bin-moistures.ts';
import { makeBin, makeCable, makeSeries } from './make-bin.ts';
import { input, LAST, RING, steps } from './two-cables.ts';

describe('one cable', () => {
  const one = makeBin([RING]);
  it('gets an interval and the note that it cannot know the rest', () => {
    const told = binMoisture(input({ bin: one }));
    expect(told.pointsRemoved.interval).not.toBeNull();
    expect(told.notes.join(' ')).toContain('One cable cannot tell');
    const two = binMoisture(input()).pointsRemoved.interval!;
    const [low, high] = told.pointsRemoved.interval!;
    expect(high - low).toBeGreaterThan(two[1] - two[0]);
    expect(high - low).toBeLessThan(6);
  });

  it('borrows the spread of the other bins', () => {
    const wild = [0, 1, 2, 3].map((c) => makeCable(`W${c}`, 3, 1, 4));
    const removed = [0.01, 0.05, 0.02, 0.04];
    const other = makeBin(wild);
    const series = wild.flatMap((cable, c) =>
      [1, 2].map((sensor) => makeSeries(cable, sensor, 0, LAST, steps(0.2, 0.15, 0.2 - removed[c]))),
    );
    const alone = binMoisture(input({ bin: one })).pointsRemoved.interval!;
    const [told] = binMoistures([input({ bin: one }), input({ bin: other, series })]);
    const [low, high] = told.pointsRemoved.interval!;
    expect(high - low).toBeGreaterThan(alone[1] - alone[0]);
    expect(told.notes.join(' ')).toContain("that of the season's other bins");
  });
});
