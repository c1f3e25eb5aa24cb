import type { Table } from 'apache-arrow';
import type { Fan } from '../../bin/fan.ts';
import type { Season } from '../../season/season.ts';
import {
  type EnergySource,
  FAN_ON,
  FAN_UNKNOWN,
  type FanSeason,
  type FanSpans,
  type RunSource,
  type Span,
} from '../types.ts';
import { byTheClock, isEdge, withEdgeWindows } from './edge-windows.ts';
import { type FanLog, fanLog } from './fan-log.ts';
import { type MeterIntervals, meterIntervals } from './meter.ts';
import { placeEdges } from './meter-edges.ts';
import { meteredPower } from './meter-power.ts';
import { type MeterRate, meterRuns } from './meter-runs.ts';
import { fullLoadPower, nominalPower } from './nominal-power.ts';
import { contradictions, overlay } from './overlay.ts';
import { resolveByTotals } from './resolve-by-totals.ts';
import { isCoarse, LONG_MS, leastPace, runningRate } from './running-rate.ts';
import { type SampledSource, sampledSources } from './sampled-sources.ts';
import { fanHoursBetween, startsOf, toFanSpans, unknownHoursBetween } from './spans.ts';
import { paceByRuns, withoutStanding } from './standing-meter.ts';
import { middle } from './usual-interval.ts';

const HOUR_MS = 3_600_000;
const J_PER_KWH = 3.6e6;
const RUN_TIME_RATE: MeterRate = { perSecond: 1, slack: 0.02 };

/**
 * Relative standard error of a fan's energy by the way it was measured. Meter: class 0.5 (ANSI C12.20 allows 0.5 %,
 * from memory); power transducer 1 %; current with a stated power factor: a motor's power factor lies 0.80 to 0.88
 * (power factor 0.80 to 0.88 loaded: common practice, from memory), 3 % one way or the other, and current clamps are good to 2 or 3 %; nameplate:
 * fans work at 80 to 110 % of it, and motor efficiency is a guess too. Own judgement where no source is named.
 */
export const ENERGY_REL_SD: Readonly<Record<EnergySource, number>> = {
  meter: 0.005,
  power: 0.01,
  current: 0.04,
  nameplate: 0.12,
};

/**
 * One fan's season out of its log: runs, hours, starts, energy.
 *
 * Runs by the best log there is: current before power (both see the motor), then a logged state (often only what the
 * controller ordered), the run-time meter, the energy meter. What the best one leaves unknown the next ones fill.
 *
 * @param fanTable  table `fan`; flagged rows are left out
 * @param endMs     where the season's data end, ms UTC: a log of switchings that ends with "off" holds until then
 */
export function fanSeason(fan: Fan, fanTable: Table, _season: Season, endMs = Number.NaN): FanSeason {
  const log = fanLog(fanTable, fan.id);
  const notes: string[] = [];
  const how: string[] = [];
  const nominal = nominalPower(fan);
  const sources = sampledSources(log, fan, endMs);
  let energy = energyMeter(log, fan, nominal.powerW);
  let runTime = meterIntervals(log.runTime, { name: 'run-time meter', unit: 'h', unitSi: 3600, mostPerSecond: 1.02 });
  let metered = runningRate(energy, nominal.powerW);
  if (sources.length > 0) {
    if (Number.isNaN(metered)) metered = paceByRuns(energy, sources[0].spans);
    energy = withoutStanding(energy, sources[0].spans, Number.isNaN(metered) ? nominal.powerW : metered);
    runTime = withoutStanding(runTime, sources[0].spans, 1);
  }
  notes.push(...energy.notes, ...runTime.notes);
  const expected = fullLoadPower(fan);
  const perSecond = metered > 0 ? metered : Math.max(expected.powerW, leastPace(energy));

  const byMeter = runTime.advance.length > 0 ? 'run_hours' : energy.advance.length > 0 ? 'meter' : null;
  const runsFrom: RunSource | null = sources.length > 0 ? sources[0].name : byMeter;
  const byRunTime = meterRuns(runTime, RUN_TIME_RATE, runsFrom === 'run_hours');
  const energyRate = { perSecond, slack: 0.06 };
  const byEnergy = meterRuns(energy, energyRate, runsFrom === 'meter');
  const spread: Span[] = [...byRunTime.spread, ...byEnergy.spread];
  let spans: FanSpans = toFanSpans({ startMs: [], endMs: [], state: [], powerW: [] });
  let edgeMs = 0;
  let edgesFrom: string | null = null;
  if (sources.length > 0) {
    how.push(sources[0].how);
    notes.push(...sources[0].notes);
    const set = placed(sources[0], runTime, energy, energyRate);
    if (set !== null) how.push(`Starts and stops are placed between samples by the ${set.by}.`);
    edgesFrom = set?.by ?? null;
    spans = set?.spans ?? sources[0].spans;
    edgeMs = set === null ? sources[0].intervalMs / Math.sqrt(12) : 0;
    for (const other of sources.slice(1)) spans = overlay(spans, other.spans);
    // A meter read once a day says full of a day that lacks an hour: it contradicts nothing.
    const dense = middle(energy.endMs.map((end, i) => end - energy.startMs[i])) <= LONG_MS;
    const died = dense ? contradictions(spans, byEnergy.spans, Math.max(HOUR_MS, 3 * sources[0].intervalMs)) : [];
    if (died.length > 0) {
      const before = total(spans, FAN_ON);
      spans = overlay(spans, byEnergy.spans, died);
      notes.push(
        `The ${sources[0].label} said off for ${round(total(spans, FAN_ON) - before)} h while the energy meter ran at running power: that sensor died or was cut off, and the meter is taken instead.`,
      );
    }
  }
  const unknownBefore = spans.state.length === 0 ? 0 : total(spans, FAN_UNKNOWN);
  for (const [meter, runs, pace] of [
    [runTime, byRunTime, 1],
    [energy, byEnergy, perSecond],
  ] as const) {
    if (meter.advance.length === 0) continue;
    if (sources.length > 0) spans = resolveByTotals(spans, meter, pace, spread);
    spans = overlay(spans, runs.spans);
  }
  if (runsFrom === 'run_hours') how.push('Hours from the run-time meter.');
  if (runsFrom === 'meter') {
    const from = Number.isNaN(metered)
      ? `${kw(perSecond)} kW, ${perSecond > expected.powerW ? 'at least, by its fullest days' : expected.how}`
      : `${kw(perSecond)} kW, found from the meter`;
    how.push(`On when the energy meter advances at running power (${from}).`);
    if (Number.isNaN(metered) && spread.length > 0) {
      notes.push(
        'The meter is read too seldom to show the power of the running fan: the energy stands, the hours hang on the nameplate and may be a fifth off.',
      );
    }
    if (!isCoarse(energy, perSecond)) edgeMs = 0;
  }
  const resolved = unknownBefore - total(spans, FAN_UNKNOWN);
  if (resolved > 0.05) how.push(`A meter tells ${round(resolved)} h that the other log is silent about.`);

  const powered = withPower(spans, sources, metered, nominal, how);
  const scaled = energy.advance.length > 0 ? meteredPower(powered.spans, energy, edgeMs, perSecond) : null;
  const meterShare = scaled?.share ?? 0;
  if (meterShare > 0.995) how.push('Energy from the meter.');
  else if (meterShare > 0) {
    how.push(`Energy from the meter for ${round(100 * meterShare)} % of it, the rest ${powered.how}.`);
  } else if (runsFrom !== null) how.push(`Energy ${powered.how}.`);
  const stepMs = runTime.advance.length > 0 ? runTime.resolution * 1000 : (energy.resolution / perSecond) * 1000 || 0;
  // An energy meter places each edge to a step either way (triangular: step / sqrt 6); a run-time meter's hours add up.
  const byEnergyMeter = runsFrom === 'meter' || edgesFrom === 'energy meter';
  const meterEdgeMs = byEnergyMeter ? ((energy.resolution / perSecond) * 1000 || 0) / Math.sqrt(6) : 0;
  const told = sources[0] ?? null;
  const final = withEdgeWindows(
    scaled?.spans ?? powered.spans,
    told?.timeMs ?? new Float64Array(0),
    told?.spans ?? null,
    stepMs,
  );
  if (log.flaggedRows > 0) how.push(`${log.flaggedRows} flagged rows are left out.`);
  return {
    fanId: fan.id,
    runsFrom,
    energyFrom: runsFrom === null ? null : meterShare >= 0.5 ? 'meter' : powered.from,
    spans: final,
    onHours: total(final, FAN_ON),
    unknownHours: total(final, FAN_UNKNOWN),
    starts: startsApart(final, spread),
    energyKwh: energyOf(final) / J_PER_KWH,
    energyRelSd: meterShare * ENERGY_REL_SD.meter + (1 - meterShare) * ENERGY_REL_SD[powered.from],
    how: how.length > 0 ? how.join(' ') : 'No log of this fan.',
    notes,
    spread,
    onHoursSd: hoursSd(
      final,
      edgeMs > 0 ? edgeMs : meterEdgeMs,
      spread,
      Number.isNaN(metered) ? ENERGY_REL_SD.nameplate : 0.03,
    ),
  };
}

function energyMeter(log: FanLog, fan: Fan, nominalW: number): MeterIntervals {
  // Three times the nameplate's power, and an electric heater on the same meter: beyond is no reading of this fan.
  const heaterW = fan.heater?.fuel === 'electric' ? fan.heater.outputW / fan.heater.efficiency : 0;
  return meterIntervals(log.energy, {
    name: 'energy meter',
    unit: 'kWh',
    unitSi: J_PER_KWH,
    mostPerSecond: 3 * nominalW + heaterW,
  });
}

/** Starts and stops of the best sampled log, set within their sampling interval by a meter read with it; null without one. */
function placed(
  source: SampledSource,
  runTime: MeterIntervals,
  energy: MeterIntervals,
  rate: MeterRate,
): { spans: FanSpans; by: string } | null {
  for (const [meter, pace, name] of [
    [runTime, RUN_TIME_RATE, 'run-time meter'],
    [energy, rate, 'energy meter'],
  ] as const) {
    if (meter.advance.length === 0) continue;
    const usual = middle(meter.endMs.map((end, i) => end - meter.startMs[i]));
    if (usual > Math.min(LONG_MS, 1.5 * source.intervalMs)) continue;
    const spans = placeEdges(source.spans, meter, pace);
    if (spans === source.spans) continue;
    return { spans, by: name };
  }
  return null;
}

/** Power for every on span that has none yet: the meter's usual, the log's usual, else the nameplate's. */
function withPower(
  spans: FanSpans,
  sources: readonly SampledSource[],
  metered: number,
  nominal: { powerW: number; how: string },
  how: string[],
): { spans: FanSpans; from: EnergySource; how: string } {
  const withOwn = sources.find((source) => source.powerFrom !== null);
  const own = spans.powerW.filter((power, k) => spans.state[k] === FAN_ON && !Number.isNaN(power));
  const usual = middle(own);
  const fill = !Number.isNaN(usual) ? usual : !Number.isNaN(metered) ? metered : nominal.powerW;
  const powerW = spans.powerW.map((power, k) => (spans.state[k] === FAN_ON && Number.isNaN(power) ? fill : power));
  const from: EnergySource = withOwn?.powerFrom ?? (Number.isNaN(metered) ? 'nameplate' : 'meter');
  if (withOwn?.powerHow) how.push(withOwn.powerHow);
  const words =
    from === 'nameplate'
      ? nominal.how
      : from === 'meter'
        ? 'at the usual power by the meter'
        : `from ${withOwn?.label}`;
  return { spans: { ...spans, powerW }, from, how: words };
}

function total(spans: FanSpans, state: number): number {
  const count = state === FAN_ON ? fanHoursBetween : unknownHoursBetween;
  return count(spans, Number.NEGATIVE_INFINITY, Number.POSITIVE_INFINITY);
}

function energyOf(spans: FanSpans): number {
  let joule = 0;
  for (let k = 0; k < spans.state.length; k++) {
    if (spans.state[k] === FAN_ON) joule += (spans.powerW[k] * (spans.endMs[k] - spans.startMs[k])) / 1000;
  }
  return joule;
}

/** Starts, those left out that are only a way to spread hours: a spread stretch counts one. */
function startsApart(spans: FanSpans, spread: readonly Span[]): number {
  let starts = startsOf(spans);
  for (const { fromMs, toMs } of spread) {
    let inside = 0;
    for (let k = 0; k < spans.state.length; k++) {
      if (spans.startMs[k] < fromMs || spans.startMs[k] >= toMs || spans.state[k] !== FAN_ON) continue;
      if (k === 0 || spans.state[k - 1] !== FAN_ON) inside += 1;
    }
    starts -= Math.max(0, inside - 1);
  }
  return starts;
}

/** Steps of meters and clocks of loggers, which no log shows, as a share of the hours; a working assumption, from memory. */
const CLOCK_REL_SD = 0.001;

/**
 * Each start and each stop is unsure on its own, those of a clock that switches at one time of day all together, for they
 * meet the samples at one place; hours told by a meter over long intervals by how well its pace is known.
 */
function hoursSd(spans: FanSpans, edgeMs: number, spread: readonly Span[], paceRelSd: number): number {
  const starts = startsOf(spans);
  const begun = Array.from(spans.startMs).filter((_, k) => isEdge(spans, k) && spans.state[k] === FAN_ON);
  const alike = byTheClock(begun, edgeMs) * starts;
  const edges = 2 * (starts - alike + alike ** 2) * (edgeMs / HOUR_MS) ** 2;
  const spreadHours = spread.reduce((sum, { fromMs, toMs }) => sum + fanHoursBetween(spans, fromMs, toMs), 0);
  const clock = CLOCK_REL_SD * fanHoursBetween(spans, Number.NEGATIVE_INFINITY, Number.POSITIVE_INFINITY);
  return Math.sqrt(edges + clock ** 2 + (paceRelSd * spreadHours) ** 2);
}

function round(value: number): string {
  return String(Number(value.toFixed(1)));
}

function kw(watt: number): string {
  return String(Number((watt / 1000).toPrecision(3)));
}
