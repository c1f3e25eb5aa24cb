import type { BinReview } from '../analysis/types.ts';
import { onceFor } from '../base/once-for.ts';
import { toLocalMs, type Zone } from '../base/zone.ts';
import { type BinSection, binSection } from '../report/figures/bin-section.ts';
import type { Figure } from '../report/page.ts';
import type { Units } from '../report/units.ts';
import type { LoadedSeason } from '../season/loaded.ts';
import type { SensorSeries } from '../tables/sensors.ts';
import { sensorSeries } from '../tables/sensors.ts';
import { fanDays } from './fan-days.ts';

const HOUR_MS = 3_600_000;
/** Sensors of several cables within this height are one row of the section. */
const SAME_ROW_M = 0.3;

function rowsOf(series: readonly SensorSeries[], topM: number): { lowM: number; highM: number; of: SensorSeries[] }[] {
  const sorted = [...series].sort((a, b) => a.heightM - b.heightM);
  const groups: SensorSeries[][] = [];
  for (const one of sorted) {
    const last = groups.at(-1);
    if (last !== undefined && one.heightM - last[0].heightM <= SAME_ROW_M) last.push(one);
    else groups.push([one]);
  }
  const middle = groups.map((of) => of.reduce((sum, one) => sum + one.heightM, 0) / of.length);
  return groups.map((of, i) => ({
    lowM: i === 0 ? 0 : (middle[i - 1] + middle[i]) / 2,
    highM: i === groups.length - 1 ? Math.max(topM, middle[i]) : (middle[i] + middle[i + 1]) / 2,
    of,
  }));
}

/** Means by row and column of one quantity of a bin, whatever a page says of them. */
interface Cells {
  rows: ReturnType<typeof rowsOf>;
  values: Float64Array;
  first: number;
  columns: number;
  columnWidthMs: number;
  readings: BinSection['readings'];
}

/**
 * A bin's temperature or moisture through the season as a section of height and time: the mean of the believed readings
 * of all cables at a height, by day, or by six hours when the log is short.
 *
 * @returns null when there is no believed reading to draw
 */
export function sectionFigure(
  review: BinReview,
  quantity: 'temperature' | 'moisture',
  loaded: LoadedSeason,
  units: Units,
  title: string,
): Figure | null {
  const cells = cellsOf(loaded)(review)(quantity, units.zone);
  if (cells === null) return null;
  const { rows, values, first, columns, columnWidthMs, readings } = cells;
  const { zone } = units;
  const { depthSteps } = review.bin.grain;
  return binSection(
    {
      id: `${quantity}-section`,
      title,
      quantity,
      columnMs: Array.from({ length: columns }, (_, c) => first + c * columnWidthMs),
      columnWidthMs,
      rows,
      values,
      surface: depthSteps.map((step) => ({
        fromMs: Number.isFinite(step.fromMs) ? toLocalMs(zone, step.fromMs) : Number.NEGATIVE_INFINITY,
        depthM: step.depthM,
      })),
      fanDays: fanDays(review.fan.spans, zone),
      readings,
    },
    units,
  );
}

/** The moisture page and the year-end report draw the same sections: their cells are worked out once. */
const cellsOf = onceFor((loaded: LoadedSeason) =>
  onceFor((review: BinReview) => {
    const known = new Map<string, Cells | null>();
    return (quantity: 'temperature' | 'moisture', zone: Zone) => {
      const key = `${quantity} ${zone.name}`;
      if (!known.has(key)) known.set(key, workedOut(review, quantity, loaded, zone));
      return known.get(key) ?? null;
    };
  }),
);

function workedOut(
  review: BinReview,
  quantity: 'temperature' | 'moisture',
  loaded: LoadedSeason,
  zone: Zone,
): Cells | null {
  const series = sensorSeries(loaded.tables.readings).filter((one) => one.bin === review.bin.id);
  const valuesOf = (one: SensorSeries) => (quantity === 'temperature' ? one.tempC : one.moistureWb);
  const flagsOf = (one: SensorSeries) => (quantity === 'temperature' ? one.tempFlags : one.moistureFlags);
  const good = (one: SensorSeries, i: number) => !Number.isNaN(valuesOf(one)[i]) && flagsOf(one)[i] === 0;
  let fromMs = Number.POSITIVE_INFINITY;
  let toMs = Number.NEGATIVE_INFINITY;
  let of = 0;
  let shown = 0;
  let empty = 0;
  const { depthSteps, unloadedMs } = review.bin.grain;
  const filledMs = depthSteps[0]?.fromMs ?? Number.NEGATIVE_INFINITY;
  const isEmpty = (ms: number) => ms < filledMs || ms >= (unloadedMs ?? Number.POSITIVE_INFINITY);
  for (const one of series) {
    of += one.timeMs.length;
    for (let i = 0; i < one.timeMs.length; i++) {
      if (!good(one, i)) {
        if (isEmpty(one.timeMs[i])) empty += 1;
        continue;
      }
      shown += 1;
      fromMs = Math.min(fromMs, one.timeMs[i]);
      toMs = Math.max(toMs, one.timeMs[i]);
    }
  }
  if (shown === 0) return null;
  const columnWidthMs = toMs - fromMs > 60 * 24 * HOUR_MS ? 24 * HOUR_MS : 6 * HOUR_MS;
  const first = Math.floor(toLocalMs(zone, fromMs) / columnWidthMs) * columnWidthMs;
  const columns = Math.floor((toLocalMs(zone, toMs) - first) / columnWidthMs) + 1;
  const rows = rowsOf(series, Math.max(0, ...depthSteps.map((step) => step.depthM)));
  const values = new Float64Array(rows.length * columns).fill(Number.NaN);
  rows.forEach((row, r) => {
    const sum = new Float64Array(columns);
    const count = new Float64Array(columns);
    for (const one of row.of) {
      for (let i = 0; i < one.timeMs.length; i++) {
        if (!good(one, i)) continue;
        const c = Math.floor((toLocalMs(zone, one.timeMs[i]) - first) / columnWidthMs);
        if (c < 0 || c >= columns) continue;
        sum[c] += valuesOf(one)[i];
        count[c] += 1;
      }
    }
    for (let c = 0; c < columns; c++) if (count[c] > 0) values[r * columns + c] = sum[c] / count[c];
  });
  return { rows, values, first, columns, columnWidthMs, readings: { shown, of, empty } };
}
