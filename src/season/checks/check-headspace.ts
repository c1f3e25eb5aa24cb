import type { Finding } from '../loaded.ts';
import { type BinCheck, type Checked, flagCells } from './checked.ts';
import { STILL, UNKNOWN } from './fan-state.ts';
import { aboveGrain } from './grain-depth.ts';
import { listed } from './places.ts';
import { IN_AIR, placesBySwing, SWING_LEAST_DAYS } from './swing.ts';
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
  const text = `${countText(affected, 'sensor')} of ${bin.id} hung at or above the stated level of the grain for all or part of the log (a bin not yet filled or already unloaded counts as empty); ${countText(cells, 'reading')} are left out.`;
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
    const out: { sensor: Checked; days: Set<number>; cells: number }[] = [];
    /** days on which every sensor above hung in air; null: none above has said anything yet */
    let above: Set<number> | null = null;
    let looked = 0;
    for (const sensor of hanging) {
      const places = placesBySwing(sensor.temp, stillFor(check, sensor), outdoor.swing);
      if (places === null) continue;
      looked += 1;
      const days = new Set<number>();
      for (let day = 0; day < places.state.length; day++) {
        const number = places.firstDay + day;
        // Grain bares a cable from the top down: air below grain is not believed.
        if (places.state[day] === IN_AIR && (above === null || above.has(number))) days.add(number);
      }
      const kept = longEnough(days);
      above = kept;
      if (kept.size === 0) break;
      const inAir = (timeMs: number) => kept.has(Math.floor(timeMs / DAY_MS));
      const positions = [...sensor.series.timeMs.keys()].filter((i) => inAir(sensor.series.timeMs[i]));
      const cells =
        flagCells(sensor, 'temp', positions, 'headspace') + flagCells(sensor, 'moisture', positions, 'headspace');
      if (cells > 0) out.push({ sensor, days: kept, cells });
    }
    if (out.length > 0) findings.push(finding(bin.id, cable, out, out.length === looked));
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
 * Without any fan log all times serve, in bins whose air is pushed up: there only the grain over the floor follows the
 * fan's air, and the rule from the top down keeps it out. Air drawn down swings the top itself.
 */
function stillFor(check: BinCheck, sensor: Checked): Uint8Array {
  if (check.bin.air !== 'up' || !sensor.air.every((state) => state === UNKNOWN)) return sensor.air;
  return new Uint8Array(sensor.air.length).fill(STILL);
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
    text: `${who} with the day as the outdoor air does while the fan stands still, so ${single && !whole ? 'it hangs' : 'the sensors hang'} in air and not in grain; ${countText(cells, 'reading')} are left out.`,
    advice: whole
      ? 'From outside, check whether the cable came loose or the grain was drawn down; never enter the bin to look.'
      : 'Check the levelled depth in season.yaml: the surface seems to lie below these sensors. Never enter the bin to look.',
  };
}
