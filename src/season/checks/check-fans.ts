import { wholeHours } from '../../base/whole-hours.ts';
import { FLAGS } from '../../tables/flags.ts';
import type { Finding } from '../loaded.ts';
import type { Season } from '../season.ts';
import { checkMeters } from './check-meters.ts';
import { deadCurrent, WORKING_PRESSURE_PA, WORKING_SHARE } from './dead-current.ts';
import { type FanLog, fanSamples, leastAmps, MOVING, nameplateAmps, runningAmps, STILL, UNKNOWN } from './fan-state.ts';
import { outsideLimits } from './limits.ts';

import type { Rows } from './rows.ts';
import { HOUR_MS, trackOf } from './track.ts';
import { countText } from './wording.ts';

/** A day of hourly readings; below, a current of 0 is a pause. */
export const NO_CURRENT_READINGS = 24;

/** A fan's log as the checks see it, with whether it ran by sample. */
export interface FanSeen {
  id: string;
  rows: Rows;
  log: FanLog;
  /** STILL, MOVING or UNKNOWN, [readings] */
  state: Uint8Array;
}

/** Read the fan logs once; rows that the loader flagged are missing here. */
export function fansSeen(season: Season, logs: readonly Rows[]): FanSeen[] {
  return logs.flatMap((rows) => {
    const fan = season.fans.find((one) => one.id === rows.id);
    if (fan === undefined) return [];
    const column = (name: string) => {
      const values = rows.column(name);
      const { use } = trackOf(rows.time, values, rows.flags);
      return values.map((value, i) => (use[i] ? value : Number.NaN));
    };
    const log: FanLog = {
      time: rows.time,
      current_a: column('current_a'),
      power_w: column('power_w'),
      energy_j: column('energy_j'),
      on: column('on'),
      run_s: column('run_s'),
    };
    return [{ id: rows.id, rows, log, state: fanSamples(fan, log) }];
  });
}

/**
 * Running meters that jump, and current sensors that died; where one died, the fan's `state` is put right or made unknown,
 * so that no later check takes moving air for still. `flags` is by row of the fan table.
 */
export function checkFans(
  season: Season,
  fans: readonly FanSeen[],
  plenums: readonly Rows[],
  flags: Uint8Array,
): Finding[] {
  return fans.flatMap((fan) => [
    ...impossible(season, fan, flags),
    ...checkMeters(season, fan, binOf(season, fan.id), flags),
    ...current(season, fan, plenums, flags),
    ...noCurrent(season, fan, plenums),
  ]);
}

/** Current and power that no bin fan can draw; a row that also has a good meter or state stays for that. */
function impossible(season: Season, fan: FanSeen, flags: Uint8Array): Finding[] {
  const findings: Finding[] = [];
  for (const [column, limit, name, unit] of [
    ['current_a', 'currentA', 'current', 'A'],
    ['power_w', 'powerW', 'power', 'W'],
  ] as const) {
    const values = fan.log[column];
    const at = outsideLimits(
      limit,
      values,
      values.map((value) => (Number.isFinite(value) ? 1 : 0)),
    );
    if (at.length === 0) continue;
    const below = at.every((i) => values[i] < 0);
    const read = at.map((i) => values[i]);
    for (const i of at) values[i] = Number.NaN;
    const { log, rows } = fan;
    const lost = at.filter((i) =>
      [log.current_a, log.power_w, log.energy_j, log.on, log.run_s].every((other) => Number.isNaN(other[i])),
    );
    for (const i of lost) flags[rows.rows[i]] |= FLAGS.spike;
    const [low, high] = [smallest(read), smallest(read.map((value) => -value)) * -1].map((value) =>
      value.toPrecision(3),
    );
    findings.push({
      kind: 'spike',
      where: `fan ${fan.id}`,
      binId: binOf(season, fan.id),
      fromMs: log.time[at[0]],
      toMs: log.time[at[at.length - 1]],
      cells: lost.length,
      text: `${countText(at.length, `${name} reading`)} cannot be (${low === high ? low : `${low} to ${high}`} ${unit}); ${lost.length > 0 ? 'their rows are left out, and the fan is unknown there' : 'the rest of their rows is kept'}.`,
      advice: below
        ? 'The clamp may sit the wrong way round: have it turned by someone licensed to open the panel, and change the sign in a copy of the log.'
        : 'Check the unit of the column in season.yaml, then the sensor or its line.',
    });
  }
  const spec = season.fans.find((one) => one.id === fan.id);
  if (findings.length > 0 && spec !== undefined) fan.state = fanSamples(spec, fan.log);
  return findings;
}

const smallest = (values: readonly number[]) => values.reduce((least, value) => Math.min(least, value), Infinity);

function current(season: Season, fan: FanSeen, plenums: readonly Rows[], flags: Uint8Array): Finding[] {
  const spec = season.fans.find((one) => one.id === fan.id)!;
  const usualA = runningAmps(fan.log, fan.state) || nameplateAmps(spec) || leastAmps(spec);
  if (!(usualA > 0)) return [];
  const byMeter = workingByMeter(fan, spec.nameplateW);
  const metered = byMeter.includes(1);
  const byPressure = shownByPressure(season, fan, plenums);
  const working = metered ? byMeter : byPressure.map((shown) => (shown === MOVING ? 1 : 0));
  const { time, current_a } = fan.log;
  return deadCurrent(time, current_a, working, usualA).map(({ first, last, hours }) => {
    let cells = 0;
    // Where the pressure shows rest, it and the log agree.
    const open = (i: number) => !metered && byPressure[i] !== STILL;
    for (let i = first; i <= last; i++) {
      if (working[i] === 1) fan.state[i] = MOVING;
      else if (open(i)) fan.state[i] = UNKNOWN;
    }
    // With a good meter in the row, the row stays: its meter is what is wanted.
    if (!metered) {
      for (let i = first; i <= last; i++) {
        if (!open(i)) continue;
        flags[fan.rows.rows[i]] |= FLAGS.stuck;
        cells += 1;
      }
    }
    return {
      kind: 'stuck' as const,
      where: `fan ${fan.id}`,
      binId: binOf(season, fan.id),
      fromMs: time[first],
      toMs: time[last],
      cells,
      text: `The current sensor read nothing for ${wholeHours(hours)} in which ${metered ? "the fan's meter counted on" : 'the pressure in the plenum showed the fan at work'}; ${metered ? 'its meter is used' : 'what it read meanwhile is left out, save where the pressure shows the fan at rest too, and the fan is unknown there'}.`,
      advice: 'Have the current sensor checked by someone licensed to open the panel.',
    };
  });
}

/** A current of nothing at all through the whole log is a fan that never ran, or a sensor that tells nothing. */
function noCurrent(season: Season, fan: FanSeen, plenums: readonly Rows[]): Finding[] {
  const { time, current_a, energy_j, power_w, on, run_s } = fan.log;
  const read = [...current_a.keys()].filter((i) => Number.isFinite(current_a[i]));
  if (read.length < NO_CURRENT_READINGS || read.some((i) => current_a[i] !== 0)) return [];
  // What else the log tells of the fan already says which of the two it is.
  if ([energy_j, power_w, on, run_s].some((other) => other.some(Number.isFinite))) return [];
  const binId = binOf(season, fan.id);
  const plenum = plenums.find((one) => one.id === binId);
  const pressures = plenum?.column('static_pressure_pa').filter(Number.isFinite) ?? [];
  const high = pressures.filter((value) => Math.abs(value) >= WORKING_PRESSURE_PA).length;
  const seen =
    pressures.length === 0
      ? 'Nothing logged tells which'
      : high === 0
        ? 'The pressure in the plenum never showed a fan at work, which speaks for a fan that never ran'
        : `The pressure in the plenum showed a fan at work in ${countText(high, 'reading')}, which speaks for the sensor`;
  return [
    {
      kind: 'silent',
      where: `fan ${fan.id}`,
      binId,
      fromMs: time[read[0]],
      toMs: time[read[read.length - 1]],
      cells: 0,
      text: `The current reads exactly 0 A in all of ${countText(read.length, 'reading')}: either the fan never ran, or its sensor is dead or not connected. ${seen}; the fan counts as standing${high === 0 ? '' : ', and as not known where the pressure shows a day of work or more'}.`,
      advice:
        'A static pressure logged in the plenum, a run-hour or energy meter, or the bill of its meter would tell; have the current sensor checked by someone licensed to open the panel.',
    },
  ];
}

function workingByMeter(fan: FanSeen, nameplateW: number): Uint8Array {
  const { time, energy_j, run_s } = fan.log;
  const out = new Uint8Array(time.length);
  for (let i = 0; i + 1 < time.length; i++) {
    const seconds = (time[i + 1] - time[i]) / 1000;
    const usedJ = energy_j[i + 1] - energy_j[i];
    const ranS = run_s[i + 1] - run_s[i];
    if (usedJ > WORKING_SHARE * nameplateW * seconds || ranS > 0.5 * seconds) out[i] = 1;
  }
  return out;
}

/**
 * MOVING or STILL where the readings of the plenum before and after both show it, else UNKNOWN, [readings]. Only where the bin
 * has this one fan: else another may have made the pressure.
 */
function shownByPressure(season: Season, fan: FanSeen, plenums: readonly Rows[]): Uint8Array {
  const out = new Uint8Array(fan.log.time.length).fill(UNKNOWN);
  const bins = season.bins.filter((bin) => bin.fanIds.includes(fan.id));
  const plenum = plenums.find((one) => bins.some((bin) => bin.id === one.id && bin.fanIds.length === 1));
  if (plenum === undefined) return out;
  const pressure = plenum.column('static_pressure_pa');
  let j = 0;
  for (let i = 0; i < out.length; i++) {
    while (j + 1 < plenum.time.length && plenum.time[j + 1] <= fan.log.time[i]) j += 1;
    const shows = (k: number) => {
      const near = k < plenum.time.length && Math.abs(plenum.time[k] - fan.log.time[i]) <= HOUR_MS;
      if (!near || !Number.isFinite(pressure[k])) return UNKNOWN;
      return Math.abs(pressure[k]) >= WORKING_PRESSURE_PA ? MOVING : STILL;
    };
    if (shows(j) === shows(j + 1)) out[i] = shows(j);
  }
  return out;
}

export function binOf(season: Season, fanId: string): string | null {
  const bins = season.bins.filter((bin) => bin.fanIds.includes(fanId));
  return bins.length === 1 ? bins[0].id : null;
}
