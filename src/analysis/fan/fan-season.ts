import type { Table } from 'apache-arrow';
import { agreeing } from '../../base/agreeing.ts';
import type { Fan } from '../../bin/fan.ts';
import { type EnergySource, FAN_ON, type FanSeason, type FanSpans, type Span } from '../types.ts';
import { withEdgeWindows } from './edge-windows.ts';
import { fanLog } from './fan-log.ts';
import { fanMeters } from './fan-meters.ts';
import { fanRuns } from './fan-runs.ts';
import { hoursSd } from './hours-error.ts';
import { meteredPower } from './meter-power.ts';
import { nameplateMisfit } from './nameplate-misfit.ts';
import { nominalPower } from './nominal-power.ts';
import { runningPower } from './running-power.ts';
import { sampledSources } from './sampled-sources.ts';
import { fanHoursBetween, startsOf, unknownHoursBetween } from './spans.ts';

const J_PER_KWH = 3.6e6;

/**
 * Relative standard error of a fan's energy by the way it was measured. Meter: class 0.5 (ANSI C12.20 allows 0.5 %,
 * from memory); power transducer 1 %; current with a stated power factor: a loaded motor's power factor lies at 0.80 to
 * 0.88 (common practice, from memory), 3 % one way or the other, and current clamps are good to 2 or 3 %; nameplate:
 * fans work at 80 to 110 % of it, and motor efficiency is a guess too. Own judgement where no source is named.
 */
const ENERGY_REL_SD: Readonly<Record<EnergySource, number>> = {
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
export function fanSeason(fan: Fan, fanTable: Table, endMs = Number.NaN): FanSeason {
  const log = fanLog(fanTable, fan.id);
  const sources = sampledSources(log, fan, endMs);
  const meters = fanMeters(log, fan, sources[0]?.spans ?? null);
  const { energy, runTime, metered, perSecond } = meters;
  const runs = fanRuns(sources, meters);
  const { runsFrom, edgeMs, judgedMs, byEnergyMeter, spread, byPace, how } = runs;
  const notes = [...energy.notes, ...runTime.notes, ...runs.notes];
  const powered = runningPower(runs.spans, sources, metered, nominalPower(fan));
  if (powered.formula !== null) how.push(powered.formula);
  const scaled = energy.advance.length > 0 ? meteredPower(powered.spans, energy, edgeMs, perSecond) : null;
  const meterShare = scaled?.share ?? 0;
  if (meterShare > 0.995) how.push('Energy from the meter.');
  else if (meterShare > 0) {
    how.push(`Energy from the meter for ${Number((100 * meterShare).toFixed(1))} % of it, the rest ${powered.how}.`);
  } else if (runsFrom !== null) how.push(`Energy ${powered.how}.`);
  const energyStepMs = (energy.resolution / perSecond) * 1000 || 0;
  const stepMs = runTime.advance.length > 0 ? runTime.resolution * 1000 : energyStepMs;
  // An energy meter places each edge to a step either way (triangular: step / sqrt 6); a run-time meter's hours add up.
  const meterEdgeMs = byEnergyMeter ? energyStepMs / Math.sqrt(6) : 0;
  const told = sources[0] ?? null;
  const final = withEdgeWindows(
    scaled?.spans ?? powered.spans,
    told?.timeMs ?? new Float64Array(0),
    told?.spans ?? null,
    judgedMs,
    stepMs,
  );
  if (log.flaggedRows > 0)
    how.push(`${log.flaggedRows} flagged ${agreeing(log.flaggedRows, 'row is', 'rows are')} left out.`);
  const measured = {
    energyFrom: runsFrom === null ? null : meterShare >= 0.5 ? ('meter' as const) : powered.from,
    onHours: fanHoursBetween(final),
    energyKwh: energyOf(final) / J_PER_KWH,
  };
  const misfit = nameplateMisfit(fan, measured);
  return {
    fanId: fan.id,
    runsFrom,
    ...measured,
    spans: final,
    unknownHours: unknownHoursBetween(final),
    starts: startsApart(final, spread),
    energyRelSd: meterShare * ENERGY_REL_SD.meter + (1 - meterShare) * ENERGY_REL_SD[powered.from],
    how: how.length > 0 ? how.join(' ') : 'No log of this fan.',
    notes,
    ...(misfit === null ? {} : { misfit }),
    spread,
    onHoursSd: hoursSd(
      final,
      edgeMs > 0 ? edgeMs : meterEdgeMs,
      byPace,
      Number.isNaN(metered) ? ENERGY_REL_SD.nameplate : 0.03,
    ),
  };
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
