import { median } from '../../base/stats/quantile.ts';
import type { Finding } from '../loaded.ts';
import { type BinCheck, type Cell, type Checked, flagCells } from './checked.ts';
import { STILL, UNKNOWN } from './fan-state.ts';
import { usualInterval } from './interval.ts';
import { outsideLimits } from './limits.ts';
import { type AtSensor, listed, type Place, placesOf } from './places.ts';
import {
  SPIKE_COARSE_MS,
  SPIKE_GRAIN_COARSE_K,
  SPIKE_GRAIN_K,
  SPIKE_MOISTURE_FAN_WB,
  SPIKE_MOISTURE_UNKNOWN_WB,
  SPIKE_MOISTURE_WB,
  spikes,
} from './spikes.ts';
import { DAY_MS } from './track.ts';
import { countText, percentText, type ShowUnits, tempText } from './wording.ts';

interface Found extends AtSensor {
  values: number[];
}

const NAME = { temp: 'temperature', moisture: 'moisture' } as const;
/** With more sensors than this in a bin, its spikes are told together. */
const TOLD_EACH = 3;

/** Values that grain cannot have, a sensor's failure codes among them. */
export function checkGrainLimits(check: BinCheck): Finding[] {
  return (['temp', 'moisture'] as const).flatMap((cell) => {
    const found = collect(check.sensors, cell, (sensor) =>
      outsideLimits(cell === 'temp' ? 'tempC' : 'moistureWb', sensor[cell].values, sensor[cell].use),
    );
    return placesOf(found, check.roster, DAY_MS).map((place) => {
      const values = place.items.flatMap((item) => item.values);
      return finding(
        place,
        `${countText(place.cells, `${NAME[cell]} reading`)} cannot be (${shownRange(values, cell, check.show)}): no grain has that, a sensor or its line failed.`,
        place.cells > 24 ? 'Have the sensor or its connection repaired before the next season.' : null,
      );
    });
  });
}

/** Readings that leave and come back. */
export function checkGrainSpikes(check: BinCheck): Finding[] {
  return (['temp', 'moisture'] as const).flatMap((cell) => {
    const found = collect(check.sensors, cell, (sensor) =>
      spikes(sensor[cell], cell === 'temp' ? tempFloor(sensor) : moistureFloor(sensor)),
    );
    const text = (count: number, values: number[]) =>
      `${countText(count, `single ${NAME[cell]} reading`)} (${shownRange(values, cell, check.show)}) left the readings before and after and came straight back.`;
    if (found.length <= TOLD_EACH) {
      return found.map((one) => finding(placesOf([one], new Map(), 0)[0], text(one.cells, one.values)));
    }
    const cables = [...new Set(found.map((one) => one.cable))].sort();
    const cells = found.reduce((sum, one) => sum + one.cells, 0);
    const together: Place = {
      where: check.bin.id,
      binId: check.bin.id,
      whole: 'bin',
      fromMs: Math.min(...found.map((one) => one.fromMs)),
      toMs: Math.max(...found.map((one) => one.toMs)),
      cells,
      items: found,
    };
    const where = ` They are spread over ${countText(found.length, 'sensor')} of ${cables.length === 1 ? 'cable' : 'cables'} ${listed(cables)}.`;
    return [
      finding(
        together,
        text(
          cells,
          found.flatMap((one) => one.values),
        ) + where,
      ),
    ];
  });
}

function tempFloor(sensor: Checked) {
  const coarse = usualInterval(sensor.temp.timeMs) > SPIKE_COARSE_MS;
  return (_: number, first: number, last: number) =>
    coarse && !airIs(sensor, STILL, first, last) ? SPIKE_GRAIN_COARSE_K : SPIKE_GRAIN_K;
}

function moistureFloor(sensor: Checked) {
  return (position: number, first: number, last: number) => {
    if (!airIs(sensor, sensor.air[position], first, last)) return SPIKE_MOISTURE_FAN_WB;
    return sensor.air[position] === UNKNOWN ? SPIKE_MOISTURE_UNKNOWN_WB : SPIKE_MOISTURE_WB;
  };
}

function airIs(sensor: Checked, state: number, first: number, last: number): boolean {
  for (let i = first; i <= last; i++) if (sensor.air[i] !== state) return false;
  return true;
}

function collect(sensors: readonly Checked[], cell: Cell, look: (sensor: Checked) => number[]): Found[] {
  const out: Found[] = [];
  for (const sensor of sensors) {
    const positions = look(sensor);
    if (positions.length === 0) continue;
    const { bin, cable, sensor: number, timeMs } = sensor.series;
    out.push({
      bin,
      cable,
      sensor: number,
      fromMs: timeMs[positions[0]],
      toMs: timeMs[positions[positions.length - 1]],
      values: positions.map((i) => sensor[cell].values[i]),
      cells: flagCells(sensor, cell, positions, 'spike'),
    });
  }
  return out;
}

function shownRange(values: readonly number[], cell: Cell, show: ShowUnits): string {
  const sorted = [...values].sort((a, b) => a - b);
  const text = (value: number) => (cell === 'temp' ? tempText(value, show) : percentText(value));
  const low = text(sorted[0]);
  const high = text(sorted[sorted.length - 1]);
  if (low === high) return low;
  // A failure code stands out by being most of them.
  const usual = text(median(sorted));
  return values.length > 10 && values.filter((value) => text(value) === usual).length > 0.8 * values.length
    ? `mostly ${usual}`
    : `from ${low} to ${high}`;
}

function finding(place: Place, text: string, advice: string | null = null): Finding {
  const { where, binId, fromMs, toMs, cells } = place;
  return { kind: 'spike', where, binId, fromMs, toMs, cells, text, advice };
}
