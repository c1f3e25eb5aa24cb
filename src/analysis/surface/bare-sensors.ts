import { FLAGS } from '../../tables/flags.ts';
import type { SensorSeries } from '../../tables/sensors.ts';
import { STEP_MS, STEPS_A_DAY, type StepGrid } from '../condition/step-grid.ts';

type Stretch = readonly [from: number, to: number];

/** Left out as in air on so many of its readings, a sensor hangs there on its calm days too, or the grain sank below it. */
const MOST_BARE = 0.1;
/** A sensor that first swings so long after the rests began hung in grain before, steps. */
const SANK_AFTER = 14 * STEPS_A_DAY;

/**
 * Sensors that hung in air through part of the rests are out altogether: what they read on calm days tells nothing of grain. Where one of them
 * was bared only later, the grain sank, drawn out perhaps without a word in season.yaml: the rests end there.
 */
export function withoutBare(series: readonly SensorSeries[], grid: StepGrid, stretches: readonly Stretch[]) {
  const told = series.map((one) => ({ one, ...bared(one, grid, stretches) }));
  const beganAt = stretches[0][0];
  const sankAt = told
    .filter(({ hangs, firstBare }) => hangs && firstBare - beganAt > SANK_AFTER)
    .reduce((first, { firstBare }) => Math.min(first, Math.floor(firstBare)), Number.POSITIVE_INFINITY);
  return {
    series: told.filter(({ hangs }) => !hangs).map(({ one }) => one),
    stretches: stretches.map(([from, to]): Stretch => [from, Math.min(to, sankAt)]).filter(([from, to]) => to > from),
  };
}

function bared({ timeMs, tempFlags }: SensorSeries, grid: StepGrid, stretches: readonly Stretch[]) {
  let read = 0;
  let bare = 0;
  let firstBare = Number.POSITIVE_INFINITY;
  let k = 0;
  for (let i = 0; i < timeMs.length; i++) {
    const step = (timeMs[i] - grid.startMs) / STEP_MS;
    while (k < stretches.length && step >= stretches[k][1]) k++;
    if (k === stretches.length) break;
    if (step < stretches[k][0]) continue;
    read++;
    if ((tempFlags[i] & FLAGS.headspace) === 0) continue;
    bare++;
    firstBare = Math.min(firstBare, step);
  }
  return { hangs: bare > MOST_BARE * read, firstBare };
}
