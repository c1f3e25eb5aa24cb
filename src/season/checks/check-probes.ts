import type { Table } from 'apache-arrow';
import { numbers, textColumn } from '../../tables/arrow.ts';
import { FLAGS, type FlagName } from '../../tables/flags.ts';
import type { Finding } from '../loaded.ts';
import type { Season } from '../season.ts';
import { grainDepthAt } from './grain-depth.ts';
import { LIMITS } from './limits.ts';
import { DAY_MS } from './track.ts';
import { countText } from './wording.ts';

/** A heap stands higher than the levelled depth, and a hand that pushes a probe does not measure to the inch. */
export const PROBE_ABOVE_M = 0.3;

/**
 * Hand samples that cannot be: values outside the limits, places outside the bin or above its grain, and those that stand twice.
 *
 * @param flags  by row of the table, added to
 */
export function checkProbes(season: Season, table: Table, flags: Uint8Array): Finding[] {
  const bins = textColumn(table, 'bin');
  const [time, height, fromCentre, moisture, temp] = ['time', 'height_m', 'from_centre_m', 'moisture_wb', 'temp_c'].map(
    (name) => numbers(table, name),
  );
  return season.bins.flatMap((bin) => {
    const rows = [...time.keys()].filter((row) => bins.values[bins.codes[row]] === bin.id);
    // A date without a time of day may be any hour of it, so the bin counts as full as it was around that day.
    const depthM = (row: number) =>
      Math.max(...[-DAY_MS, 0, DAY_MS].map((shift) => grainDepthAt(bin.grain, time[row] + shift)));
    const wrong = rows.filter(
      (row) =>
        height[row] < 0 ||
        fromCentre[row] < 0 ||
        fromCentre[row] > bin.diameterM / 2 ||
        outside('moistureWb', moisture[row]) ||
        outside('tempC', temp[row]),
    );
    const out = new Set(wrong);
    const seen = new Set<string>();
    const again = rows.filter((row) => {
      if (out.has(row) || (Number.isNaN(moisture[row]) && Number.isNaN(temp[row]))) return false;
      const told = [time, height, fromCentre, moisture, temp].map((one) => one[row]).join(' ');
      if (seen.has(told)) return true;
      seen.add(told);
      return false;
    });
    for (const row of again) out.add(row);
    const above = rows.filter((row) => !out.has(row) && height[row] > depthM(row) + PROBE_ABOVE_M);
    const cells = (at: readonly number[]) =>
      at.reduce(
        (sum, row) => sum + [height, fromCentre, moisture, temp].filter((one) => !Number.isNaN(one[row])).length,
        0,
      );
    const tell = (at: readonly number[], flag: FlagName & Finding['kind'], what: string, advice: string): Finding[] => {
      if (at.length === 0) return [];
      for (const row of at) flags[row] |= FLAGS[flag];
      const times = at.map((row) => time[row]);
      return [
        {
          kind: flag,
          where: `${bin.id} hand samples`,
          binId: bin.id,
          fromMs: Math.min(...times),
          toMs: Math.max(...times),
          cells: cells(at),
          text: `${countText(at.length, 'hand sample')} of ${bin.id} ${what}; left out.`,
          advice,
        },
      ];
    };
    return [
      ...tell(
        wrong,
        'spike',
        'cannot be: moisture, temperature or place is outside what grain and bin can have',
        'Correct the file, or the unit of its columns.',
      ),
      ...tell(
        again,
        'duplicate',
        again.length === 1
          ? 'repeats another in time, place and values and counts once, the second'
          : 'repeat others in time, place and values and count once, the repeats',
        'Take the second out of the file, or correct its time or place.',
      ),
      ...tell(
        above,
        'headspace',
        'lay above the stated level of the grain',
        'See whether heights count from the floor, and whether the depths in season.yaml are right.',
      ),
    ];
  });
}

/** NaN is missing, and not outside. */
function outside(name: 'moistureWb' | 'tempC', value: number): boolean {
  return value < LIMITS[name][0] || value > LIMITS[name][1];
}
