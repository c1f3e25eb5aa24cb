import { median } from '../../base/stats/quantile.ts';
import type { Checked } from './checked.ts';
import { STILL } from './fan-state.ts';
import { quantileOf, usualInterval } from './interval.ts';
import { DAY_MS, HOUR_MS, used } from './track.ts';
import { provedEnds, type Stretch, UNIT_SENSORS, type UnitMistake } from './unit-stretch.ts';

/** Grain as said between these may be grain, C: off a warm field or a dryer, after a hard winter. */
const PLAUSIBLE_C = [-25, 45] as const;
/** Behind a front grain is as warm as the air that was blown in, give or take the fan's warming and what evaporates, K. */
const NEAR_AIR_K = 6;
/** Read more seldom, a fan may have run between two readings that both found the air still. */
const FINE_MS = 3 * HOUR_MS;
/** So many sensors no front passes between two fine readings: they span 2 m, and it goes a metre in some hours at most. */
const AT_ONCE = 3;
const LEVEL_READINGS = 3;

export interface ShownStretch {
  of: Checked;
  stretch: Stretch;
}

/**
 * Whether a stretch that reads as if another scale had been logged is rather grain that a front crossed within a reading or two: 35 °C
 * is 35 °F misread, 1.7 °C, and so a front from one to the other joins as well by the other scale.
 *
 * It may be a front where every end that shows the jump has values on both sides that grain can have, air that moved or may have,
 * and behind it grain as warm as the outdoor air of those days, where that is known; not where half of the cable's sensors jump at one fine reading.
 *
 * @param shown    all such stretches of the cable
 * @param reading  how many sensors of the cable there are
 * @param outdoor  day number (UTC) to the day's median, C; null: no weather
 */
export function isRatherFront(
  { of, stretch }: ShownStretch,
  shown: readonly ShownStretch[],
  reading: number,
  mistake: UnitMistake,
  outdoor: ReadonlyMap<number, number> | null,
): boolean {
  const { timeMs, values } = of.temp;
  const at = used(of.temp).filter((i) => i >= stretch.first && i <= stretch.last);
  const said = Float64Array.from(at, (i) => values[i]).sort();
  if (quantileOf(said, 0.05) < PLAUSIBLE_C[0] || quantileOf(said, 0.95) > PLAUSIBLE_C[1]) return false;
  const ends = provedEnds(of.temp, mistake, stretch);
  const interval = usualInterval(timeMs);
  const isFine = interval <= FINE_MS;
  return ends.every((end) => {
    const endMs = timeMs[stretch[end]];
    if (isFine) {
      const along = shown.filter((other) => Math.abs(other.of.temp.timeMs[other.stretch[end]] - endMs) < interval / 2);
      const together = new Set(along.map((other) => other.of)).size;
      if (together >= Math.max(AT_ONCE, UNIT_SENSORS * reading)) return false;
    }
    return mayBeFront(of, stretch[end], end === 'first', isFine, outdoor);
  });
}

function mayBeFront(
  { temp, air }: Checked,
  end: number,
  isFirst: boolean,
  isFine: boolean,
  outdoor: ReadonlyMap<number, number> | null,
): boolean {
  const at = used(temp);
  const k = at.indexOf(end);
  // The readings beside the jump, and the first ones behind it.
  const [before, after] = isFirst ? [at[k - 1], end] : [end, at[k + 1]];
  const from = isFirst ? k : k + 1;
  const behindC = median(Array.from(at.subarray(from, from + LEVEL_READINGS), (i) => temp.values[i]));
  if (isFine && air.subarray(before, after + 1).every((state) => state === STILL)) return false;
  const firstDay = Math.floor(temp.timeMs[before] / DAY_MS) - 1;
  const lastDay = Math.floor(temp.timeMs[after] / DAY_MS);
  const airC = Array.from({ length: lastDay - firstDay + 1 }, (_, d) => outdoor?.get(firstDay + d)).filter(
    (one) => one !== undefined,
  );
  return airC.length === 0 || airC.some((one) => Math.abs(behindC - one) <= NEAR_AIR_K);
}
