import type { BedRun } from './bed.ts';

/**
 * The contract's definition taken literally on noise-free temperatures: half-way from the mean of the 12 hours before to
 * the mean from 6 to 30 fan hours after the steepest change; the first moment it stays beyond for three fan hours.
 *
 * @param startH  hour at which the campaign begins
 * @param untilH  hour up to which it is looked at
 * @returns       fan hours since the start; null where the front did not get there
 */
export function trueArrival(run: BedRun, place: number, startH: number, untilH: number, sign: 1 | -1): number | null {
  const { stepH, on } = run;
  const temp = run.tempC[place];
  const start = Math.round(startH / stepH);
  const ahead = meanOf(temp.subarray(Math.max(0, start - Math.round(12 / stepH)), start + 1));
  // Fan-on samples only, one every stepH fan hours.
  const series: number[] = [];
  for (let i = start; i <= Math.min(temp.length - 1, Math.round(untilH / stepH)); i++) {
    if (on[i] === 1) series.push(temp[i]);
  }
  let steepest = 0;
  let most = 0;
  for (let i = 1; i < series.length; i++) {
    const slope = sign * (series[i] - series[i - 1]);
    if (slope > most) {
      most = slope;
      steepest = i;
    }
  }
  const behind = series.slice(steepest + Math.round(6 / stepH), steepest + Math.round(30 / stepH) + 1);
  if (behind.length === 0) return null;
  const behindC = meanOf(behind);
  if (sign * (behindC - ahead) < 3) return null;
  const half = (ahead + behindC) / 2;
  const held = Math.round(3 / stepH);
  for (let i = 1; i < series.length; i++) {
    if (sign * (series[i] - half) < 0) continue;
    if (series.slice(i, i + held).some((tempC) => sign * (tempC - half) < 0)) continue;
    const part = (half - series[i - 1]) / (series[i] - series[i - 1] || 1);
    return (i - 1 + Math.min(1, Math.max(0, part))) * stepH;
  }
  return null;
}

function meanOf(values: ArrayLike<number>): number {
  let sum = 0;
  for (let i = 0; i < values.length; i++) sum += values[i];
  return sum / values.length;
}
