import { FLAGS, type FlagName } from '../../tables/flags.ts';
import type { Finding } from '../loaded.ts';
import { humidityMisfits, MISFIT_MOST } from './humidity-misfits.ts';
import { type LimitName, outsideLimits } from './limits.ts';
import type { Rows } from './rows.ts';
import type { Run } from './runs.ts';
import { spikes } from './spikes.ts';
import {
  FINE_STEP_K,
  FINE_STEP_RH,
  medianApart,
  SATURATED_RH,
  STUCK_WITNESS_K,
  STUCK_WITNESS_RH,
  stuckOutdoorRh,
  stuckOutdoorTemp,
  stuckPlenum,
  stuckPressure,
} from './stuck-air.ts';
import { leaveOut, type Track, trackOf, used } from './track.ts';
import { wrongShares } from './unit-fraction.ts';
import { LEVEL_APART_K, LEVEL_JOIN_K } from './unit-level.ts';
import { UNIT_MISTAKES, type UnitMistake, unitStretches } from './unit-stretch.ts';
import { countText, percentText, pressureText, type ShowUnits, spanText, tempText } from './wording.ts';

/** A log of air with its columns as tracks, and the row flags that its checks set. */
export interface AirLog {
  where: string;
  binId: string | null;
  rows: Rows;
  temp: Track;
  rh: Track;
  /** by row of the table */
  flags: Uint8Array;
  show: ShowUnits;
  saidUnit: 'degF' | 'degC' | null;
}

export function airLog(log: Omit<AirLog, 'temp' | 'rh'>): AirLog {
  const { rows } = log;
  const track = (name: string) => trackOf(rows.time, rows.column(name), rows.flags);
  return { ...log, temp: track('temp_c'), rh: track('rh') };
}

/** Pressures come in units from pascals to inches of mercury, and a wrong one is the likelier the more readings cannot be. */
const CHECK_UNIT =
  'Check the unit of its column in season.yaml; where that is right, have the sensor or its line checked.';

type Column = 'temperature' | 'humidity' | 'static pressure' | 'pressure' | 'dew point';

/** Outdoor air: unit, impossible values, spikes, stuck columns. */
export function checkWeather(log: AirLog, spikeK: number): Finding[] {
  return [
    ...units(log, null),
    ...limits(log, [
      ['temp_c', 'tempC', 'temperature', log.temp],
      ['rh', 'rh', 'humidity', log.rh],
      ['dew_point_c', 'tempC', 'dew point', null],
      ['pressure_pa', 'pressurePa', 'pressure', null],
    ]),
    ...misfits(log),
    ...tempSpikes(log, spikeK),
    ...stuck(log, 'temperature', log.temp, stuckOutdoorTemp(log.temp)),
    ...stuck(log, 'humidity', log.rh, stuckOutdoorRh(log.rh, log.temp)),
  ];
}

/** Plenum air; `outdoor` has been checked before. */
export function checkPlenum(log: AirLog, air: Uint8Array, outdoor: AirLog | null, spikeK: number): Finding[] {
  const pressure = trackOf(log.rows.time, log.rows.column('static_pressure_pa'), log.rows.flags);
  return [
    ...units(log, outdoor),
    ...limits(log, [
      ['temp_c', 'tempC', 'temperature', log.temp],
      ['rh', 'rh', 'humidity', log.rh],
      ['static_pressure_pa', 'staticPressurePa', 'static pressure', pressure],
    ]),
    ...tempSpikes(log, spikeK),
    ...stuck(
      log,
      'temperature',
      log.temp,
      stuckPlenum(log.temp, air, outdoor?.temp ?? null, {
        witness: STUCK_WITNESS_K,
        fineStep: FINE_STEP_K,
        saturated: Number.POSITIVE_INFINITY,
      }),
    ),
    ...stuck(
      log,
      'humidity',
      log.rh,
      stuckPlenum(log.rh, air, outdoor?.rh ?? null, {
        witness: STUCK_WITNESS_RH,
        fineStep: FINE_STEP_RH,
        saturated: SATURATED_RH,
      }),
    ),
    ...stuck(log, 'static pressure', pressure, stuckPressure(pressure, air), false),
  ];
}

/** Rows that are not believed: flagged, and out of the checks that follow. */
export function markRows(log: AirLog, positions: readonly number[], flag: FlagName): void {
  for (const i of positions) log.flags[log.rows.rows[i]] |= FLAGS[flag];
  leaveOut(log.temp, positions);
  leaveOut(log.rh, positions);
}

function finding(
  log: AirLog,
  kind: Finding['kind'],
  at: readonly number[],
  text: string,
  advice: string | null,
): Finding {
  const { time } = log.rows;
  return {
    kind,
    where: log.where,
    binId: log.binId,
    fromMs: time[at[0]],
    toMs: time[at[at.length - 1]],
    cells: at.length,
    text,
    advice,
  };
}

function valueText(value: number, column: Column, show: ShowUnits): string {
  if (column === 'temperature' || column === 'dew point') return tempText(value, show);
  return column === 'humidity' ? percentText(value) : pressureText(value, show);
}

function limits(log: AirLog, columns: readonly [string, LimitName, Column, Track | null][]): Finding[] {
  return columns.flatMap(([name, limit, column, known]) => {
    const track = known ?? trackOf(log.rows.time, log.rows.column(name), log.rows.flags);
    const at = outsideLimits(limit, track.values, track.use);
    if (at.length === 0) return [];
    const values = at.map((i) => track.values[i]).sort((a, b) => a - b);
    leaveOut(track, at);
    // A row with good temperature and humidity is not lost for a bad pressure or dew point beside them.
    const needed = column === 'temperature' || column === 'humidity';
    const whole = needed ? at : at.filter((i) => !log.temp.use[i] && !log.rh.use[i]);
    markRows(log, whole, 'spike');
    const low = valueText(values[0], column, log.show);
    const high = valueText(values[values.length - 1], column, log.show);
    const range = low === high ? low : `${low} to ${high}`;
    const left = whole.length > 0 ? 'their rows are left out' : 'the rest of their rows is kept';
    return [
      {
        ...finding(
          log,
          'spike',
          at,
          `${countText(at.length, `${column} reading`)} cannot be (${range}); ${left}.`,
          null,
        ),
        cells: whole.length,
        advice:
          at.length > 24 ? (column.endsWith('pressure') ? CHECK_UNIT : 'Have the sensor or its line checked.') : null,
      },
    ];
  });
}

/** Humidity and dew point that stand side by side and do not belong to each other: one of the two, or the temperature, is wrong. */
function misfits(log: AirLog): Finding[] {
  const { compared, at } = humidityMisfits(log.temp, log.rh, log.rows.column('dew_point_c'));
  if (at.length === 0) return [];
  if (at.length > MISFIT_MOST * compared) {
    const text = `In ${countText(at.length, 'row')} of ${countText(compared, 'row')} humidity and dew point do not belong to each other; so many are no slips, so the rows are kept.`;
    const advice =
      'See whether the dew point is one over ice (frost point), and whether the units are right; leave the dew point column out if so.';
    return [{ ...finding(log, 'spike', at, text, advice), cells: 0 }];
  }
  markRows(log, at, 'spike');
  const text = `${countText(at.length, 'row gives', 'rows give')} a humidity and a dew point that do not belong to each other; ${at.length === 1 ? 'it is' : 'they are'} left out.`;
  return [finding(log, 'spike', at, text, null)];
}

function tempSpikes(log: AirLog, leastK: number): Finding[] {
  const at = spikes(log.temp, () => leastK);
  if (at.length === 0) return [];
  markRows(log, at, 'spike');
  const text = `${countText(at.length, 'temperature reading')} left the readings before and after and came straight back; their rows are left out.`;
  return [finding(log, 'spike', at, text, null)];
}

function stuck(log: AirLog, column: Column, track: Track, runs: readonly Run[], flagRows = true): Finding[] {
  return runs.map((run) => {
    const at: number[] = [];
    for (let i = run.first; i <= run.last; i++) if (track.use[i]) at.push(i);
    if (flagRows) markRows(log, at, 'stuck');
    const value = valueText(run.value, column, log.show);
    const left = flagRows ? 'rows are left out' : 'it is not believed there';
    const text = `The ${column} stood still at ${value} for ${spanText(run.toMs - run.fromMs)} (${countText(at.length, 'reading')}) while it should have moved; ${left}.`;
    return { ...finding(log, 'stuck', at, text, 'Have the sensor checked.'), cells: flagRows ? at.length : 0 };
  });
}

function units(log: AirLog, outdoor: AirLog | null): Finding[] {
  const findings: Finding[] = [];
  for (const mistake of UNIT_MISTAKES) {
    if (log.saidUnit !== null && log.saidUnit !== mistake.said) continue;
    const at = wholeLog(log, outdoor, mistake)
      ? [...used(log.temp)]
      : unitStretches(log.temp, mistake).flatMap(({ first, last }) => {
          const inside = [...used(log.temp)].filter((i) => i >= first && i <= last);
          return outdoor === null || offFrom(within(log.temp, inside), outdoor, mistake) ? inside : [];
        });
    if (at.length === 0) continue;
    markRows(log, at, 'unit');
    const scale = { degF: '°F', degC: '°C' } as const;
    const text = `${countText(at.length, 'temperature reading')} were read as ${scale[mistake.said]} but fit the readings around them only as ${scale[mistake.logged]}; their rows are left out.`;
    const advice = `If the logger wrote ${scale[mistake.logged]}, put those rows in a file of their own with that unit in season.yaml, and load again.`;
    findings.push(finding(log, 'unit', at, text, advice));
  }
  const shares = wrongShares(log.rh.values, log.rh.use, 'rh');
  if (shares.length > 0) {
    markRows(log, shares, 'unit');
    const text = `${countText(shares.length, 'humidity reading')} make sense only a hundredfold: percent and fraction were mixed up between the log and season.yaml; their rows are left out.`;
    findings.push(
      finding(
        log,
        'unit',
        shares,
        text,
        'Set the unit of the humidity column to "%" or "fraction" as logged, and load again.',
      ),
    );
  }
  return findings;
}

/** A whole plenum log far from the outdoor air as said, and with it on the other scale. */
function wholeLog(log: AirLog, outdoor: AirLog | null, mistake: UnitMistake): boolean {
  return outdoor !== null && used(log.temp).length >= 24 && offFrom(log.temp, outdoor, mistake);
}

function offFrom(temp: Track, outdoor: AirLog, mistake: UnitMistake): boolean {
  return (
    medianApart(temp, outdoor.temp) >= LEVEL_APART_K && medianApart(temp, outdoor.temp, mistake.truth) <= LEVEL_JOIN_K
  );
}

function within(track: Track, at: readonly number[]): Track {
  const use = new Uint8Array(track.use.length);
  for (const i of at) use[i] = track.use[i];
  return { ...track, use };
}
