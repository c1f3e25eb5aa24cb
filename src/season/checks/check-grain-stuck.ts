import type { Finding } from '../loaded.ts';
import { type BinCheck, type Checked, flagCells } from './checked.ts';
import { type AtSensor, placesOf } from './places.ts';
import type { Run } from './runs.ts';
import { STUCK_JUMP_K, STUCK_JUMP_WB, STUCK_MOVED_K, STUCK_MOVED_WB, stuckRuns } from './stuck.ts';
import { HOUR_MS } from './track.ts';
import { countText, percentText, spanText, tempText } from './wording.ts';

const KINDS = [
  { cell: 'temp', name: 'temperature', moved: STUCK_MOVED_K, jump: STUCK_JUMP_K },
  { cell: 'moisture', name: 'moisture', moved: STUCK_MOVED_WB, jump: STUCK_JUMP_WB },
] as const;

interface Found extends AtSensor {
  of: Checked;
  run: Run;
}

/** Sensors that show one value while it should move. */
export function checkGrainStuck(check: BinCheck): Finding[] {
  return KINDS.flatMap(({ cell, name, moved, jump }) => {
    const inputs = check.sensors.map((sensor) => ({
      cable: sensor.series.cable,
      heightM: sensor.series.heightM,
      track: sensor[cell],
      air: sensor.air,
    }));
    const found: Found[] = stuckRuns(inputs, moved, jump).flatMap((runs, k) =>
      runs.map((run) => {
        const of = check.sensors[k];
        const { bin, cable, sensor } = of.series;
        return { bin, cable, sensor, fromMs: run.fromMs, toMs: run.toMs, cells: run.readings, of, run };
      }),
    );
    for (const { of, run } of found) {
      const same = (i: number) => of[cell].use[i] === 1;
      const positions = Array.from({ length: run.last - run.first + 1 }, (_, k) => run.first + k).filter(same);
      flagCells(of, cell, positions, 'stuck');
    }
    return placesOf(found, check.roster, 6 * HOUR_MS).map((place) => {
      const value = place.items[0].run.value;
      const shown = cell === 'temp' ? tempText(value, check.show) : percentText(value);
      const held = place.items.length === 1 ? `at ${shown}` : `on each of ${countText(place.items.length, 'sensor')}`;
      return {
        kind: 'stuck' as const,
        where: place.where,
        binId: place.binId,
        fromMs: place.fromMs,
        toMs: place.toMs,
        cells: place.cells,
        text: `The ${name} stood still ${held} for ${spanText(place.toMs - place.fromMs)} (${countText(place.cells, 'reading')}), though the sensors beside it or its own usual flicker show that it could not.`,
        advice: 'Restart the reader; if the value still does not move, have the sensor checked before the next season.',
      };
    });
  });
}
