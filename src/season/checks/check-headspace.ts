import type { Finding } from '../loaded.ts';
import { type BinCheck, type Checked, flagCells } from './checked.ts';
import { STILL, UNKNOWN } from './fan-state.ts';
import { aboveGrain } from './grain-depth.ts';
import { listed } from './places.ts';
import { IN_AIR, type Places, placesBySwing, SWING_CALM_GAIN, SWING_LEAST_DAYS } from './swing.ts';
import { DAY_MS } from './track.ts';
import { countText } from './wording.ts';

/** Sensors above the grain: those known by the stated level, then those that swing with the day's air. */
export function checkHeadspace(check: BinCheck): Finding[] {
  return [...known(check), ...bySwing(check)];
}

function known({ bin, sensors }: BinCheck): Finding[] {
  let cells = 0;
  let fromMs = Number.POSITIVE_INFINITY;
  let toMs = Number.NEGATIVE_INFINITY;
  let affected = 0;
  for (const sensor of sensors) {
    const { timeMs, heightM } = sensor.series;
    const above = aboveGrain(bin.grain, heightM, timeMs);
    if (above.length === 0) continue;
    const flagged = flagCells(sensor, 'temp', above, 'headspace') + flagCells(sensor, 'moisture', above, 'headspace');
    if (flagged === 0) continue;
    cells += flagged;
    affected += 1;
    fromMs = Math.min(fromMs, timeMs[above[0]]);
    toMs = Math.max(toMs, timeMs[above[above.length - 1]]);
  }
  if (cells === 0) return [];
  const text = `${countText(affected, 'sensor')} of ${bin.id} hung at or above the stated level of the grain for all or part of the log (a bin not yet filled or already unloaded counts as empty); ${countText(cells, 'reading is', 'readings are')} left out.`;
  const advice = 'Nothing, if the level and the dates in season.yaml are right.';
  return [{ kind: 'headspace', where: bin.id, binId: bin.id, fromMs, toMs, cells, text, advice }];
}

function bySwing(check: BinCheck): Finding[] {
  const { bin, sensors, outdoor } = check;
  if (outdoor === null) return [];
  const findings: Finding[] = [];
  const cables = new Set(sensors.map((sensor) => sensor.series.cable));
  for (const cable of cables) {
    const hanging = sensors
      .filter((sensor) => sensor.series.cable === cable && Number.isFinite(sensor.series.heightM))
      .sort((a, b) => b.series.heightM - a.series.heightM);
    const blind = bin.air === 'up' && hanging.every(({ air }) => air.every((state) => state === UNKNOWN));
    const looked = hanging.flatMap((sensor) => {
      const places = placesBySwing(sensor.temp, blind ? allStill(sensor.air.length) : sensor.air, outdoor.swing);
      return places === null ? [] : [{ sensor, places }];
    });
    const days = bareDays(
      looked.map(({ places }) => places),
      blind,
    );
    const out: { sensor: Checked; days: Set<number>; cells: number }[] = [];
    looked.forEach(({ sensor }, k) => {
      const kept = longEnough(days[k]);
      if (kept.size === 0) return;
      const { timeMs } = sensor.series;
      const positions = [...timeMs.keys()].filter((i) => kept.has(Math.floor(timeMs[i] / DAY_MS)));
      const cells =
        flagCells(sensor, 'temp', positions, 'headspace') + flagCells(sensor, 'moisture', positions, 'headspace');
      if (cells > 0) out.push({ sensor, days: kept, cells });
    });
    if (out.length > 0) findings.push(finding(bin.id, cable, out, out.length === looked.length));
  }
  return findings;
}

/** Days in stretches that are long enough to be called out of the grain. */
function longEnough(days: ReadonlySet<number>): Set<number> {
  const sorted = [...days].sort((a, b) => a - b);
  const out = new Set<number>();
  let first = 0;
  for (let k = 1; k <= sorted.length; k++) {
    if (k < sorted.length && sorted[k] === sorted[k - 1] + 1) continue;
    if (k - first >= SWING_LEAST_DAYS) for (let j = first; j < k; j++) out.add(sorted[j]);
    first = k;
  }
  return out;
}

/**
 * Grain bares a cable from the top down: on each day those sensors hang in air that swing, from the top to the first that doesn't.
 *
 * @param places  of one cable's sensors, the highest first
 * @param blind   no fan log: all times were used, and a fan at work can carry the day's wave through the whole bin (always with air
 *                drawn down, which is not looked at then); the first sensor in grain must then be calm
 * @returns       day numbers by sensor
 */
function bareDays(places: readonly Places[], blind: boolean): Set<number>[] {
  const out = places.map(() => new Set<number>());
  const days = new Set<number>(places.flatMap((one) => [...one.state.keys()].map((day) => one.firstDay + day)));
  for (const day of days) {
    const bare: number[] = [];
    let calm = true;
    for (let k = 0; k < places.length; k++) {
      const at = day - places[k].firstDay;
      if (at < 0 || at >= places[k].state.length) continue;
      if (places[k].state[at] !== IN_AIR) {
        calm = !(places[k].gain[at] >= SWING_CALM_GAIN);
        break;
      }
      bare.push(k);
    }
    if (!blind || calm) for (const k of bare) out[k].add(day);
  }
  return out;
}

function allStill(readings: number): Uint8Array {
  return new Uint8Array(readings).fill(STILL);
}

function finding(
  binId: string,
  cable: string,
  out: readonly { sensor: Checked; days: Set<number>; cells: number }[],
  whole: boolean,
): Finding {
  const numbers = out.map(({ sensor }) => sensor.series.sensor).sort((a, b) => a - b);
  const days = out.flatMap((one) => [...one.days]);
  const from = days.reduce((least, day) => Math.min(least, day), Number.POSITIVE_INFINITY) * DAY_MS;
  const to = (days.reduce((most, day) => Math.max(most, day), Number.NEGATIVE_INFINITY) + 1) * DAY_MS;
  const first = Math.min(...out.map(({ sensor }) => sensor.series.timeMs[0]));
  const last = Math.max(...out.map(({ sensor }) => sensor.series.timeMs[sensor.series.timeMs.length - 1]));
  const cells = out.reduce((sum, one) => sum + one.cells, 0);
  const single = numbers.length === 1;
  const who = whole
    ? 'The whole cable swings'
    : `Sensor${single ? '' : 's'} ${listed(numbers)} ${single ? 'swings' : 'swing'}`;
  return {
    kind: 'headspace',
    where: whole ? `${binId} ${cable}` : `${binId} ${cable} sensor${single ? '' : 's'} ${listed(numbers)}`,
    binId,
    fromMs: Math.max(from, first),
    toMs: Math.min(to, last),
    cells,
    text: `${who} with the day as the outdoor air does while the fan stands still, so ${single && !whole ? 'it hangs' : 'the sensors hang'} in air and not in grain; ${countText(cells, 'reading is', 'readings are')} left out.`,
    advice: whole
      ? 'From outside, check whether the cable came loose or the grain was drawn down; never enter the bin to look.'
      : 'Check the levelled depth in season.yaml: the surface seems to lie below these sensors. Never enter the bin to look.',
  };
}
