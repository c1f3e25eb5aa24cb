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

/** Air that reaches the grain where the floor leaks, of what the fan was bought for. */
const THROUGH_GRAIN = 0.35;

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
  {
    id: 'floor leaks',
    before: (draw) => {
      for (const bin of draw.bins) bin.cfmPerBu *= THROUGH_GRAIN;
    },
  },
];
