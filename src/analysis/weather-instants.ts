import { usualStepMs } from '../season/clock/stamps.ts';
import type { LoadedSeason } from '../season/loaded.ts';
import { numbers, textColumn } from '../tables/arrow.ts';

const HOUR_MS = 3_600_000;

/** Archives whose rows are means, told by their starts; rows of all others are observations. */
const MEANS: ReadonlySet<string> = new Set(['epw']);

/** To which instants the rows of the weather table belong. Arrays are [rows]. */
export interface WeatherInstants {
  /** ms UTC: of a mean its middle, of an observation its own */
  timeMs: Float64Array;
  /** 1: mean of the hour around its instant */
  hourMean: Uint8Array;
}

/** A mean stands in the table by its start, and half of its time later in the air. */
export function weatherInstants({
  season,
  tables: { weather },
}: Pick<LoadedSeason, 'season' | 'tables'>): WeatherInstants {
  const time = numbers(weather, 'time');
  const file = textColumn(weather, 'file');
  const means = new Set(season.files.filter(({ format }) => MEANS.has(format ?? '')).flatMap(({ paths }) => paths));
  const steps = file.values.map((path, code) =>
    means.has(path) ? stepOf(time.filter((_, row) => file.codes[row] === code)) : 0,
  );
  return {
    timeMs: time.map((ms, row) => ms + steps[file.codes[row]] / 2),
    hourMean: Uint8Array.from(time, (_, row) => (steps[file.codes[row]] === HOUR_MS ? 1 : 0)),
  };
}

/** Time that a row of an archive stands for: an hour, or less where rows follow each other faster. */
function stepOf(times: Float64Array): number {
  const step = usualStepMs(times);
  return Number.isNaN(step) ? HOUR_MS : Math.min(step, HOUR_MS);
}
