import type { Fan } from '../../bin/fan.ts';
import { FAN_OFF, FAN_ON, type FanSpans } from '../types.ts';
import type { FanLog, Series } from './fan-log.ts';
import { markFrozen } from './frozen-samples.ts';
import { withoutInrush } from './inrush.ts';
import { levelPower } from './level-power.ts';
import { fullLoadCurrentA, nominalPower, powerFromCurrent } from './nominal-power.ts';
import { findRunningThreshold } from './running-threshold.ts';
import { type SampledRuns, sampledRuns } from './sampled-runs.ts';
import { middle } from './usual-interval.ts';

const HOUR_MS = 3_600_000;

/** Runs out of one sampled column. */
export interface SampledSource {
  name: 'current' | 'power' | 'state';
  /** for sentences: `current` in "the current said off" */
  label: string;
  spans: FanSpans;
  /** usual time between samples, ms; 0 for a log of switchings */
  intervalMs: number;
  /** moments of its samples, ms UTC, rising; none for a log of switchings */
  timeMs: Float64Array;
  powerFrom: 'power' | 'current' | null;
  powerHow: string | null;
  how: string;
  notes: string[];
}

/**
 * The sampled columns that this fan's log has, best first: current, power, state.
 *
 * @param endMs  where the season's data end, ms UTC; NaN where not known
 */
export function sampledSources(log: FanLog, fan: Fan, endMs: number): SampledSource[] {
  const sources: SampledSource[] = [];
  if (log.current.value.length > 1) sources.push(byLevel('current', log.current, log, fan, endMs));
  if (log.power.value.length > 1) sources.push(byLevel('power', log.power, log, fan, endMs));
  if (log.state.value.length > 1) {
    const state = Uint8Array.from(log.state.value, (value) => (value > 0.5 ? FAN_ON : FAN_OFF));
    const runs = sampledRuns(log.state.timeMs, state, new Float64Array(state.length).fill(Number.NaN), endMs);
    const how = runs.switchings
      ? `On and off as logged, each row a switching, so that no gap rule applies.${lastWord(runs, log.state.timeMs)}`
      : 'On and off as logged.';
    sources.push({
      name: 'state',
      label: 'logged state',
      spans: runs.spans,
      intervalMs: runs.switchings ? 0 : usualOf(log.state),
      timeMs: runs.switchings ? new Float64Array(0) : log.state.timeMs,
      powerFrom: null,
      powerHow: null,
      how,
      notes: [],
    });
  }
  return sources;
}

function byLevel(name: 'current' | 'power', series: Series, log: FanLog, fan: Fan, endMs: number): SampledSource {
  const unit = name === 'current' ? 'A' : 'kW';
  const scale = name === 'current' ? 1 : 1000;
  const fullLoad = name === 'current' ? fullLoadCurrentA(fan) : nominalPower(fan).powerW;
  const stated = name === 'current' ? fan.runningAboveA : null;
  const found = findRunningThreshold(series.value, fullLoad);
  const above = stated ?? found.above;
  const state = Uint8Array.from(series.value, (value) => (value > above ? FAN_ON : FAN_OFF));
  const notes: string[] = [];
  const frozen = markFrozen(series.timeMs, series.value, state);
  if (frozen > 0)
    notes.push(`The ${name} stood still to the last digit for ${Number(frozen.toFixed(1))} h: a sensor that died.`);
  const most = series.value.reduce((a, b) => Math.max(a, b), 0);
  if (stated === null && Number.isNaN(found.running) && most > 0) {
    notes.push(
      `The ${name} never exceeds ${show(most / scale)} ${unit}, too little for this motor to run; if it did run, state running_above.`,
    );
  }
  const power = powerOf(name, series, state, log, fan);
  const runs = sampledRuns(series.timeMs, state, power.watt, endMs);
  const where =
    stated !== null
      ? 'as stated'
      : found.from === 'clusters'
        ? 'found between the levels of the log'
        : 'the log has one level; by the nameplate';
  return {
    name,
    label: name,
    spans: runs.spans,
    intervalMs: runs.switchings ? 0 : usualOf(series),
    timeMs: runs.switchings ? new Float64Array(0) : series.timeMs,
    powerFrom: power.from,
    powerHow: power.how,
    how: `On when the ${name} is above ${show(above / scale)} ${unit} (${where}).${runs.switchings ? ` Each row is a switching, so that no gap rule applies.${lastWord(runs, series.timeMs)}` : ''}`,
    notes,
  };
}

/** What is taken of the time after a log of switchings, where there is any. */
function lastWord({ spans }: SampledRuns, timeMs: Float64Array): string {
  const last = spans.state.length - 1;
  const hours = (spans.endMs[last] - timeMs[timeMs.length - 1]) / HOUR_MS;
  if (!(hours > 0)) return '';
  const length = hours < 48 ? `${show(hours)} h` : `${show(hours / 24)} days`;
  return spans.state[last] === FAN_OFF
    ? ` Its last row says off; the fan is taken to rest from then on, to the end of the season’s data ${length} later.`
    : ` Its last row says on; how long the fan ran on in the ${length} of data after it is not known.`;
}

function powerOf(name: 'current' | 'power', series: Series, state: Uint8Array, log: FanLog, fan: Fan) {
  const steady = (watt: Float64Array) => levelPower(series.timeMs, withoutInrush(watt, state), state);
  if (name === 'power' || log.power.value.length > 1) {
    const watt = name === 'power' ? series.value : heldAt(log.power, series.timeMs);
    return { watt: steady(watt), from: 'power' as const, how: null };
  }
  if (fan.supply === null) return { watt: series.value.map(() => Number.NaN), from: null, how: null };
  const { phases, volts, powerFactor } = fan.supply;
  const watt = series.value.map((value) => powerFromCurrent(fan, value));
  return {
    watt: steady(watt),
    from: 'current' as const,
    how: `Power by ${phases === 3 ? '√3 · ' : ''}${volts} V · current · power factor ${powerFactor}.`,
  };
}

/** The last value at or before each time, NaN where it is older than the time between its samples allows. */
function heldAt(series: Series, timesMs: Float64Array): Float64Array {
  const oldest = 1.5 * usualOf(series);
  let i = -1;
  return timesMs.map((ms) => {
    while (i + 1 < series.timeMs.length && series.timeMs[i + 1] <= ms) i += 1;
    return i >= 0 && ms - series.timeMs[i] <= oldest ? series.value[i] : Number.NaN;
  });
}

function usualOf(series: Series): number {
  return middle(series.timeMs.subarray(1).map((ms, i) => ms - series.timeMs[i]));
}

function show(value: number): string {
  return String(Number(value.toPrecision(3)));
}
