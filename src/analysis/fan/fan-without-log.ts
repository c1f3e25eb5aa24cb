import type { FanSeason } from '../types.ts';
import { spanList, toFanSpans } from './spans.ts';

/** A fan of which no log tells: it has none, or it is left out. @param how  what a reader is told of it */
export function fanWithoutLog(fanId: string, how = ''): FanSeason {
  return {
    fanId,
    runsFrom: null,
    energyFrom: null,
    spans: toFanSpans(spanList()),
    onHours: 0,
    unknownHours: 0,
    starts: 0,
    energyKwh: 0,
    energyRelSd: 0,
    how,
  };
}
