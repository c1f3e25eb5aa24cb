import { FLAGS } from '../../tables/flags.ts';
import type { Finding } from '../loaded.ts';
import type { Cell, Checked } from './checked.ts';
import { outsideLimits } from './limits.ts';
import { countText } from './wording.ts';

const NAME = { temp: 'temperature', moisture: 'moisture' } as const;
/** Fewer sensors may well fail together. */
export const DOUBTED_SENSORS = 3;

/**
 * Files in which most readings of most sensors of one quantity cannot be: so many sensors do not fail at once, a column or a unit
 * is likely wrong. To be asked after the units; it flags nothing, for the readings that cannot be are flagged already.
 *
 * @param fileOf  path of the file of a reading's row
 */
export function checkDoubtedColumns(sensors: readonly Checked[], fileOf: (row: number) => string): Finding[] {
  return (['temp', 'moisture'] as const).flatMap((cell) => {
    const files = new Map<string, { sensor: Checked; all: number; bad: number }[]>();
    for (const sensor of sensors) {
      for (const [path, counts] of countsByFile(sensor, cell, fileOf))
        files.set(path, [...(files.get(path) ?? []), { sensor, ...counts }]);
    }
    return [...files].flatMap(([path, its]) => {
      const wrong = its.filter(({ all, bad }) => 2 * bad > all);
      if (wrong.length < DOUBTED_SENSORS || 2 * wrong.length <= its.length) return [];
      const bins = new Set(its.map(({ sensor }) => sensor.series.bin));
      const times = wrong.map(({ sensor }) => sensor.series.timeMs);
      const finding: Finding = {
        kind: 'unit',
        where: path,
        binId: bins.size === 1 ? [...bins][0] : null,
        fromMs: Math.min(...times.map((its) => its[0])),
        toMs: Math.max(...times.map((its) => its[its.length - 1])),
        cells: 0,
        text: `${path}: most ${NAME[cell]} readings of ${wrong.length} of ${countText(its.length, 'sensor')} cannot be. So many sensors do not fail at once: columns may be swapped, or the unit of the ${NAME[cell]} may be another.`,
        advice: `Compare column and unit of the ${NAME[cell]} in season.yaml with the header of the file before a sensor is repaired.`,
      };
      return [finding];
    });
  });
}

/** Values by file, those in another unit left out, and how many of them cannot be. */
function countsByFile(sensor: Checked, cell: Cell, fileOf: (row: number) => string) {
  const { values } = sensor[cell];
  const bits = cell === 'temp' ? sensor.tempBits : sensor.moistureBits;
  const use = values.map((value, i) => (Number.isFinite(value) && (bits[i] & FLAGS.unit) === 0 ? 1 : 0));
  const bad = new Set(outsideLimits(cell === 'temp' ? 'tempC' : 'moistureWb', values, use));
  const out = new Map<string, { all: number; bad: number }>();
  sensor.series.rows.forEach((row, i) => {
    if (use[i] === 0) return;
    const path = fileOf(row);
    const count = out.get(path) ?? { all: 0, bad: 0 };
    out.set(path, { all: count.all + 1, bad: count.bad + (bad.has(i) ? 1 : 0) });
  });
  return out;
}
