import { median, quantile } from '../../base/stats/quantile.ts';
import { fromSi } from '../../base/units.ts';
import type { Finding } from '../loaded.ts';
import { type Cell, type Checked, flagCells } from './checked.ts';
import { LIMITS } from './limits.ts';
import type { SaidUnit } from './said-unit.ts';
import { countText } from './wording.ts';

/** So many of a sensor's moistures cannot be before its columns are asked for; failures of a few readings are no mix-up. */
export const SWAPPED_IMPOSSIBLE = 0.1;
/** So many of its numbers must be possible as the other quantity. */
export const SWAPPED_FIT = 0.95;
/** Moistures of stored grain, fractions: nearly all numbers of the temperature column lie within. */
export const SWAPPED_MOISTURE_WB = [0.05, 0.35] as const;
/** Over a season grain's temperature swings over many more degrees than its moisture over points: so many times, in numbers. */
export const SWAPPED_SWING = 2;

/** A sensor's readings within one file. */
interface Part {
  sensor: Checked;
  positions: number[];
}

/**
 * Files whose temperature and moisture columns are swapped: on most of their sensors moistures are impossible, the numbers of
 * each column fit the other quantity, and those told as moisture swing as only temperatures do. Both columns are flagged.
 *
 * @param fileOf  path of the file of a reading's row
 */
export function checkSwappedColumns(
  sensors: readonly Checked[],
  fileOf: (row: number) => string,
  saidUnit: (path: string) => SaidUnit,
): Finding[] {
  return [...partsByFile(sensors, fileOf)].flatMap(([path, parts]) => {
    const unit = saidUnit(path);
    if (unit === null || parts.length < 2) return [];
    const swapped = parts.filter((part) => looksSwapped(part, unit));
    if (2 * swapped.length <= parts.length) return [];
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
      text: `${path}: the columns of temperature and moisture are swapped, by all appearance: on ${swapped.length} of ${countText(parts.length, 'sensor')} the moistures cannot be and swing like temperatures, and the temperatures look like moistures. None of these readings is used.`,
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

function looksSwapped({ sensor, positions }: Part, unit: 'degF' | 'degC'): boolean {
  const numbersOf = (cell: Cell) => positions.map((i) => sensor[cell].values[i]);
  const temps = numbersOf('temp').map((tempC) => fromSi('temperature', tempC, unit));
  const moistures = numbersOf('moisture').map((wb) => 100 * wb);
  const share = (values: readonly number[], [low, high]: readonly [number, number]) =>
    values.filter((value) => value >= low && value <= high).length / values.length;
  const percent = ([low, high]: readonly [number, number]) => [100 * low, 100 * high] as const;
  const [coldC, hotC] = LIMITS.tempC;
  const possible = [fromSi('temperature', coldC, unit), fromSi('temperature', hotC, unit)] as const;
  return (
    1 - share(moistures, percent(LIMITS.moistureWb)) >= SWAPPED_IMPOSSIBLE &&
    share(moistures, possible) >= SWAPPED_FIT &&
    share(temps, percent(SWAPPED_MOISTURE_WB)) >= SWAPPED_FIT &&
    swing(moistures) >= SWAPPED_SWING * swing(temps) &&
    !isCode(moistures, percent(LIMITS.moistureWb))
  );
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
