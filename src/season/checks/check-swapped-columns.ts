import { mean } from 'simple-statistics';
import { median, quantile } from '../../base/stats/quantile.ts';
import { fromSi, linearUnit } from '../../base/units.ts';
import type { Finding } from '../loaded.ts';
import { type Cell, type Checked, flagCells } from './checked.ts';
import { LIMITS } from './limits.ts';
import type { SaidUnit } from './said-unit.ts';
import { dailyMedians, LEVEL_AIR_DAYS } from './unit-level.ts';
import { countText } from './wording.ts';

/** So many of a sensor's moistures cannot be before its columns are asked for; failures of a few readings are no mix-up. */
export const SWAPPED_IMPOSSIBLE = 0.1;
/** So many of its numbers must be possible as the other quantity. */
export const SWAPPED_FIT = 0.95;
/** Moistures of stored grain, fractions: nearly all numbers of the temperature column lie within. */
export const SWAPPED_MOISTURE_WB = [0.05, 0.35] as const;
/** Over a season grain's temperature swings over many more degrees than its moisture over points: so many times, in numbers. */
export const SWAPPED_SWING = 2;

/** Where hardly a moisture is impossible the pattern must be plain: numbers told as moisture swing over so many, so many times as far. */
export const SWAPPED_PLAIN_SWING = 5;
export const SWAPPED_PLAIN_TIMES = 4;
/** and keep, as temperatures, within so many K of the outdoor air's mean of the last month, while that moved by so much. */
export const SWAPPED_NEAR_AIR_K = 15;
export const SWAPPED_AIR_MOVED_K = 8;
/** Numbers told as temperatures that stand alike on all sensors are those of one dead board: moistures part by so much, points. */
export const SWAPPED_PART_POINTS = 0.3;
/** Days that are compared, at least, and the share of them that must lie near. */
const AIR_DAYS = 30;
const AIR_SHARE = 0.85;

/** A sensor's readings within one file. */
interface Part {
  sensor: Checked;
  positions: number[];
}

/**
 * Files whose temperature and moisture columns are swapped: on most of their sensors moistures are impossible, the numbers of
 * each column fit the other quantity, and those told as moisture swing as only temperatures do. Where hardly a moisture is
 * impossible, as in °C in summer, they must plainly swing so, near the outdoor air of the season, while the numbers told as temperatures
 * hardly move. Both columns are flagged.
 *
 * @param fileOf  path of the file of a reading's row
 * @param airC    outdoor air's median by day number; null where no weather was logged
 */
export function checkSwappedColumns(
  sensors: readonly Checked[],
  fileOf: (row: number) => string,
  saidUnit: (path: string) => SaidUnit,
  airC: ReadonlyMap<number, number> | null,
): Finding[] {
  const air = airC === null ? null : monthsAir(airC);
  return [...partsByFile(sensors, fileOf)].flatMap(([path, parts]) => {
    const unit = saidUnit(path);
    if (unit === null || parts.length < 2) return [];
    const impossible = parts.filter((part) => looksSwapped(part, unit, isImpossible));
    const byPattern = 2 * impossible.length <= parts.length;
    const swapped =
      byPattern && air !== null && partedTemps(parts, unit) >= SWAPPED_PART_POINTS
        ? parts.filter((part) => looksSwapped(part, unit, (...its) => movesLikeAir(...its, air)))
        : impossible;
    if (2 * swapped.length <= parts.length) return [];
    const how = byPattern
      ? 'the moistures move as far as the season’s temperatures do, near the outdoor air, and the temperatures hardly, like moistures'
      : 'the moistures cannot be and swing like temperatures, and the temperatures look like moistures';
    const times = parts.flatMap(({ sensor, positions }) => positions.map((i) => sensor.series.timeMs[i]));
    const bins = new Set(parts.map(({ sensor }) => sensor.series.bin));
    const cells = parts.reduce(
      (sum, { sensor, positions }) =>
        sum + flagCells(sensor, 'temp', positions, 'unit') + flagCells(sensor, 'moisture', positions, 'unit'),
      0,
    );
    const finding: Finding = {
      kind: 'unit',
      where: path,
      binId: bins.size === 1 ? [...bins][0] : null,
      fromMs: times.reduce((a, b) => Math.min(a, b), Number.POSITIVE_INFINITY),
      toMs: times.reduce((a, b) => Math.max(a, b), Number.NEGATIVE_INFINITY),
      cells,
      text: `${path}: the columns of temperature and moisture are swapped, by all appearance: on ${swapped.length} of ${countText(parts.length, 'sensor')} ${how}. None of these readings is used.`,
      advice: 'Compare season.yaml with the header of the file, exchange the two columns there, and load again.',
    };
    return [finding];
  });
}

function partsByFile(sensors: readonly Checked[], fileOf: (row: number) => string): Map<string, Part[]> {
  const out = new Map<string, Part[]>();
  for (const sensor of sensors) {
    const byFile = new Map<string, number[]>();
    sensor.series.rows.forEach((row, i) => {
      if (sensor.temp.use[i] === 0 || sensor.moisture.use[i] === 0) return;
      const path = fileOf(row);
      const positions = byFile.get(path);
      if (positions === undefined) byFile.set(path, [i]);
      else positions.push(i);
    });
    for (const [path, positions] of byFile) out.set(path, [...(out.get(path) ?? []), { sensor, positions }]);
  }
  return out;
}

/** The numbers of a part's columns in people's units. */
interface Numbers {
  part: Part;
  unit: 'degF' | 'degC';
  temps: readonly number[];
  moistures: readonly number[];
}

const percent = ([low, high]: readonly [number, number]) => [100 * low, 100 * high] as const;

function looksSwapped(part: Part, unit: 'degF' | 'degC', plainly: (numbers: Numbers) => boolean): boolean {
  const { sensor, positions } = part;
  const numbersOf = (cell: Cell) => positions.map((i) => sensor[cell].values[i]);
  const temps = numbersOf('temp').map((tempC) => fromSi('temperature', tempC, unit));
  const moistures = numbersOf('moisture').map((wb) => 100 * wb);
  const [coldC, hotC] = LIMITS.tempC;
  const possible = [fromSi('temperature', coldC, unit), fromSi('temperature', hotC, unit)] as const;
  return (
    shareWithin(moistures, possible) >= SWAPPED_FIT &&
    shareWithin(temps, percent(SWAPPED_MOISTURE_WB)) >= SWAPPED_FIT &&
    swing(moistures) >= SWAPPED_SWING * swing(temps) &&
    plainly({ part, unit, temps, moistures })
  );
}

function isImpossible({ moistures }: Numbers): boolean {
  const limits = percent(LIMITS.moistureWb);
  return 1 - shareWithin(moistures, limits) >= SWAPPED_IMPOSSIBLE && !isCode(moistures, limits);
}

function movesLikeAir({ part, unit, temps, moistures }: Numbers, air: (day: number) => number | null): boolean {
  if (swing(moistures) < Math.max(SWAPPED_PLAIN_SWING, SWAPPED_PLAIN_TIMES * swing(temps))) return false;
  const { sensor, positions } = part;
  const line = linearUnit('temperature', unit);
  if (line === null) return false;
  const use = new Uint8Array(sensor.series.timeMs.length);
  const values = new Float64Array(use.length).fill(Number.NaN);
  positions.forEach((at, i) => {
    use[at] = 1;
    values[at] = moistures[i] * line.scale + line.offset;
  });
  const days = [...dailyMedians([{ timeMs: sensor.series.timeMs, values, use }])].flatMap(([day, tempC]) => {
    const outdoorC = air(day);
    return outdoorC === null ? [] : [{ tempC, outdoorC }];
  });
  const near = days.filter(({ tempC, outdoorC }) => Math.abs(tempC - outdoorC) <= SWAPPED_NEAR_AIR_K);
  if (days.length < AIR_DAYS || near.length < AIR_SHARE * days.length) return false;
  const outdoor = days.map(({ outdoorC }) => outdoorC);
  return Math.max(...outdoor) - Math.min(...outdoor) >= SWAPPED_AIR_MOVED_K;
}

/** How far the sensors' usual numbers in the temperature column lie apart, as moistures, points. */
function partedTemps(parts: readonly Part[], unit: 'degF' | 'degC'): number {
  const usual = parts.map(({ sensor, positions }) =>
    fromSi('temperature', median(positions.map((i) => sensor.temp.values[i])), unit),
  );
  return Math.max(...usual) - Math.min(...usual);
}

/** Outdoor air's mean of the last month by day; null where few of its days are known. */
function monthsAir(airC: ReadonlyMap<number, number>): (day: number) => number | null {
  return (day) => {
    const known = Array.from({ length: LEVEL_AIR_DAYS }, (_, back) => airC.get(day - back)).filter(
      (tempC) => tempC !== undefined,
    );
    return known.length < LEVEL_AIR_DAYS / 6 ? null : mean(known);
  };
}

function shareWithin(values: readonly number[], [low, high]: readonly [number, number]): number {
  return values.filter((value) => value >= low && value <= high).length / values.length;
}

function swing(values: readonly number[]): number {
  return quantile(values, 0.95) - quantile(values, 0.05);
}

/** What cannot be is mostly one number, as a failed sensor repeats it. */
function isCode(values: readonly number[], [low, high]: readonly [number, number]): boolean {
  const out = values.filter((value) => !(value >= low && value <= high));
  const usual = median(out);
  return 2 * out.filter((value) => value === usual).length > out.length;
}
