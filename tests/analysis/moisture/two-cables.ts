// A bin of two cables, one in the centre and one in a ring, whose readings lean while the fan runs.
import type { BinMoistureInput } from '../../../src/analysis/moisture/observed-moisture.ts';
import { FAN_OFF, FAN_ON } from '../../../src/analysis/types.ts';
import { makeBin, makeCable, makeSeason, makeSeries, makeSpans } from './make-bin.ts';

export const CENTRE = makeCable('C', 0, 1, 4);
export const RING = makeCable('R', 3, 1, 4);
export const BIN = makeBin([CENTRE, RING]);
/** Off for 48 hours, on for 200, off for 72. */
export const SPANS = makeSpans([48, FAN_OFF], [200, FAN_ON], [72, FAN_OFF]);
export const LAST = 320;

/** Before the fan, while it runs, from two hours after it stopped on. */
export const steps = (before: number, running: number, after: number) => (hour: number) =>
  hour < 48 ? before : hour < 250 ? running : after;

export const SERIES = [
  makeSeries(CENTRE, 1, 0, LAST, steps(0.18, 0.12, 0.15)),
  makeSeries(CENTRE, 2, 0, LAST, steps(0.18, 0.12, 0.18)),
  makeSeries(RING, 1, 0, LAST, steps(0.18, 0.12, 0.14)),
  makeSeries(RING, 2, 0, LAST, steps(0.18, 0.12, 0.16)),
];

export function input(rest: Partial<BinMoistureInput> = {}): BinMoistureInput {
  return {
    bin: BIN,
    season: makeSeason(),
    series: SERIES,
    spans: SPANS,
    fanHours: { value: 200, interval: null, why: null },
    tickets: [],
    ...rest,
  };
}
