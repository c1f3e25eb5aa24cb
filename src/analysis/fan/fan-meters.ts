import type { Fan } from '../../bin/fan.ts';
import type { FanSpans } from '../types.ts';
import type { FanLog } from './fan-log.ts';
import { type MeterIntervals, meterIntervals } from './meter.ts';
import { fullLoadPower, nominalPower } from './nominal-power.ts';
import { leastPace, runningRate } from './running-rate.ts';
import { paceByRuns, withoutStanding } from './standing-meter.ts';

const J_PER_KWH = 3.6e6;

/** A fan's running meters, and at what power it runs by them. */
export interface FanMeters {
  energy: MeterIntervals;
  runTime: MeterIntervals;
  /** what the energy meter advances a second while the fan runs, W; NaN where it does not show it */
  metered: number;
  /** that, else what the nameplate lets expect, and not less than the meter's fullest days, W */
  perSecond: number;
  /** where `perSecond` comes from, for a sentence */
  paceHow: string;
}

/** @param sampled  the best sampled log's runs, by which a meter that stands is told; null without one */
export function fanMeters(log: FanLog, fan: Fan, sampled: FanSpans | null): FanMeters {
  const nominalW = nominalPower(fan).powerW;
  let energy = energyMeter(log, fan, nominalW);
  let runTime = meterIntervals(log.runTime, { name: 'run-time meter', unit: 'h', unitSi: 3600, mostPerSecond: 1.02 });
  let metered = runningRate(energy, nominalW);
  if (sampled !== null) {
    if (Number.isNaN(metered)) metered = paceByRuns(energy, sampled);
    energy = withoutStanding(energy, sampled, Number.isNaN(metered) ? nominalW : metered);
    runTime = withoutStanding(runTime, sampled, 1);
  }
  const expected = fullLoadPower(fan);
  const perSecond = metered > 0 ? metered : Math.max(expected.powerW, leastPace(energy));
  const guessed = perSecond > expected.powerW ? 'at least, by its fullest days' : expected.how;
  const kw = Number((perSecond / 1000).toPrecision(3));
  const paceHow = Number.isNaN(metered) ? `${kw} kW, ${guessed}` : `${kw} kW, found from the meter`;
  return { energy, runTime, metered, perSecond, paceHow };
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
