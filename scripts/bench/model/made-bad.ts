import { DAY } from '../../sample/calendar.ts';
import type { Logs } from '../coverage/log-season.ts';
import type { SeasonDraw } from '../coverage/plan.ts';

/** A way in which a season is made wrong on purpose. */
export interface Badness {
  id: string;
  /** before the season is played */
  before?(draw: SeasonDraw): void;
  /** what season.yaml says and what was logged, after it was played */
  after?(draw: SeasonDraw, logs: Logs): void;
}

/**
 * A floor or transition that leaks: the fan moves and warms all of its air, as much as it was bought for, and the rest reaches the
 * grain. Pressure under the floor falls with what goes through; a fan's power hardly does.
 *
 * @param share  of the air that escapes
 */
const leaking = (share: number): Badness['before'] => {
  return ({ bins }) => {
    for (const bin of bins) {
      bin.cfmPerBu *= 1 - share;
      bin.throughGrain = 1 - share;
    }
  };
};

export const BADNESS: readonly Badness[] = [
  {
    id: 'sensors swapped',
    // On each cable the lowest quarter changes places with the highest.
    after: (draw, logs) => {
      for (const row of logs.grain) {
        const heights = draw.bins
          .find((bin) => bin.id === row.bin)!
          .cables.find((cable) => cable.id === row.cable)!.heightsM;
        const quarter = Math.max(1, Math.round(heights.length / 4));
        const other = heights.length + 1 - row.sensor;
        if (Math.min(row.sensor, other) > quarter || other === row.sensor) continue;
        row.sensor = other;
        row.heightM = heights[other - 1];
      }
    },
  },
  {
    id: 'depth too small',
    after: (draw) => {
      for (const bin of draw.bins) bin.depthM = Number((0.6 * bin.depthM).toFixed(1));
    },
  },
  {
    id: 'depth too large',
    after: (draw) => {
      for (const bin of draw.bins) bin.depthM = Number((1.7 * bin.depthM).toFixed(1));
    },
  },
  {
    id: 'fan log shifted',
    after: (_, logs) => {
      for (const row of logs.fan) row.ms += 4 * DAY;
    },
  },
  { id: 'floor leaks two thirds', before: leaking(2 / 3) },
  { id: 'floor leaks a half', before: leaking(1 / 2) },
  { id: 'floor leaks a third', before: leaking(1 / 3) },
];
