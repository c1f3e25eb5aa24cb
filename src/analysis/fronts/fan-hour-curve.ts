/** A sensor's temperature over fan hours: straight lines between readings, level beyond the first and last. */
export interface FanHourCurve {
  /** fan hours of the readings, rising, [nodes]; readings in one rest of the fan are one node */
  fanHour: Float64Array;
  tempC: Float64Array;
  /** temperature at a fan hour, C */
  at(fanHour: number): number;
  /** mean temperature over [from, to] fan hours, C; at(from) where they are equal */
  mean(from: number, to: number): number;
}

/** Readings closer than this on the axis were taken in one rest, fan hours. */
const SAME_H = 0.01;
/** Width of a bin of the look-up table, fan hours. */
const BIN_H = 1;
/** In a long rest the readings of its first hours tell best how the front left the sensor, ms. */
const REST_USED_MS = 12 * 3_600_000;

/**
 * @param fanHours  [readings], not falling
 * @param timeMs    [readings]
 * @param tempC     [readings], at least one, none missing
 */
export function fanHourCurve(fanHours: Float64Array, timeMs: Float64Array, tempC: Float64Array): FanHourCurve {
  const x: number[] = [];
  const y: number[] = [];
  for (let from = 0; from < fanHours.length; ) {
    let to = from;
    let sum = 0;
    let count = 0;
    while (to < fanHours.length && fanHours[to] - fanHours[from] <= SAME_H) {
      if (timeMs[to] - timeMs[from] <= REST_USED_MS) {
        sum += tempC[to];
        count += 1;
      }
      to += 1;
    }
    x.push(fanHours[from]);
    y.push(sum / count);
    from = to;
  }
  const last = x.length - 1;
  const area = new Float64Array(x.length);
  for (let i = 1; i <= last; i++) area[i] = area[i - 1] + ((y[i] + y[i - 1]) / 2) * (x[i] - x[i - 1]);
  // Asked for by the hundred thousand: a table by BIN_H of the axis says where to begin looking.
  const firstIn = new Int32Array(Math.floor((x[last] - x[0]) / BIN_H) + 1);
  for (let bin = 0, i = 0; bin < firstIn.length; bin++) {
    while (i < last - 1 && x[i + 1] <= x[0] + bin * BIN_H) i += 1;
    firstIn[bin] = i;
  }
  const segmentOf = (fanHour: number) => {
    let i = firstIn[Math.min(firstIn.length - 1, Math.floor((fanHour - x[0]) / BIN_H))];
    while (i < last - 1 && x[i + 1] <= fanHour) i += 1;
    return i;
  };
  const at = (fanHour: number) => {
    if (fanHour <= x[0]) return y[0];
    if (fanHour >= x[last]) return y[last];
    const i = segmentOf(fanHour);
    return y[i] + ((y[i + 1] - y[i]) * (fanHour - x[i])) / (x[i + 1] - x[i]);
  };
  const areaTo = (fanHour: number) => {
    if (fanHour <= x[0]) return (fanHour - x[0]) * y[0];
    if (fanHour >= x[last]) return area[last] + (fanHour - x[last]) * y[last];
    const i = segmentOf(fanHour);
    return area[i] + ((y[i] + at(fanHour)) / 2) * (fanHour - x[i]);
  };
  return {
    fanHour: Float64Array.from(x),
    tempC: Float64Array.from(y),
    at,
    mean: (from, to) => (to - from < 1e-9 ? at(from) : (areaTo(to) - areaTo(from)) / (to - from)),
  };
}
