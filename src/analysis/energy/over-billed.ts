import type { Estimate } from '../../base/estimate.ts';
import { listed } from '../../base/listed.ts';
import { energyCost } from '../../money/energy-cost.ts';
import { NO_RATES } from '../../money/rate-breaks.ts';
import type { FanSeason } from '../types.ts';
import { fanRelSd } from './fan-cost.ts';

/** One fan in the time of one bill. */
export interface BilledFan {
  fan: FanSeason;
  /** with its electric heater's */
  kwh: number;
  /** of that */
  heaterKwh: number;
  cost: number;
  /** power while it runs; the nameplate's where no log shows it running */
  runningKw: number;
  /** h that no log tells */
  untoldHours: number;
  /** true: so has the fan in the eleven months before the bill, as far back as the tariff's logs go */
  untoldBefore: boolean;
}

const DAY_MS = 24 * 3_600_000;
/** A meter is read, or its reading estimated, some days off the bill's dates (common practice; from memory). */
const READING_DAYS = 4;
/** Standard errors that a wrong assumption of a fan's power may be off before something else must be. */
const STILL_POSSIBLE = 3;
/** From here on the logs count nearly double. */
const DOUBLE = 1.8;

/**
 * Why the fans explain more energy than was billed, most likely: the error of their logs; a heater that burned or drew less; what is assumed of their power; the
 * days on which the meter was read; else a fan on another meter, or a factor of the meter.
 *
 * @param rest  billed less fans, kWh, below zero
 */
export function overBilled(rest: Estimate, fans: readonly BilledFan[], fromMs: number, toMs: number): string {
  const over = -(rest.value ?? 0);
  if ((rest.interval?.[1] ?? 0) >= 0)
    return 'It is within the error of the fans’ energy: little else was on this meter.';
  const heated = fans.filter(({ heaterKwh }) => heaterKwh > 0).map(({ fan }) => fan);
  if (fans.reduce((sum, { heaterKwh }) => sum + heaterKwh, 0) >= over) {
    const names = listed(heated.map(({ fanId }) => fanId));
    // Where a log tells in which hours it burned these are no guess.
    const told = heated.every(({ heater }) => heater !== undefined && heater.untoldHours === 0);
    return heated.length > 1
      ? `Most likely the electric heaters of fans ${names} ${told ? 'draw less than is stated' : 'burned in fewer of the fans’ hours than they are taken to'}, or are on another meter.`
      : `Most likely the electric heater of fan ${names} ${told ? 'draws less than is stated' : 'burned in fewer of the fan’s hours than it is taken to'}, or is on another meter.`;
  }
  const used = fans.reduce((sum, one) => sum + one.kwh, 0);
  const sdOf = ({ fan, kwh }: BilledFan) => fanRelSd(fan) * kwh;
  const guessed = fans.filter(({ fan }) => fan.energyFrom === 'nameplate' || fan.energyFrom === 'current');
  const least = guessed.reduce<BilledFan | null>(
    (worst, one) => (worst === null || sdOf(one) > sdOf(worst) ? one : worst),
    null,
  );
  if (least !== null && over <= STILL_POSSIBLE * Math.hypot(...fans.map(sdOf))) {
    return least.fan.energyFrom === 'nameplate'
      ? `Most likely fan ${least.fan.fanId} draws less than its nameplate says: its energy rests on that alone.`
      : `Most likely the volts or the power factor stated for fan ${least.fan.fanId} are too high, or its current sensor reads high.`;
  }
  const days = daysToExplain(
    fans.map(({ fan }) => fan),
    over,
    fromMs,
    toMs,
  );
  if (days !== null) {
    return `Most likely the meter was read up to ${days} day${days === 1 ? '' : 's'} off the bill’s dates, or its reading was an estimate: the fans ran then, and the bill beside it would hold the difference.`;
  }
  if (used >= DOUBLE * (used - over)) {
    return 'Most likely the bill’s meter has a factor that is not on the bill, or one of these fans is on another meter.';
  }
  return 'Most likely one of these fans is on another meter, or the tariff named for it in season.yaml is not its own.';
}

/** Days by which one end of the bill must move inward for the fans to have used so much less; null: more than readings are off. */
function daysToExplain(fans: readonly FanSeason[], kwh: number, fromMs: number, toMs: number): number | null {
  for (let days = 1; days <= READING_DAYS; days++) {
    const at = (from: number, to: number) =>
      fans.reduce((sum, fan) => sum + energyCost(fan.spans, NO_RATES, from, to).kwh, 0);
    const first = at(fromMs, fromMs + days * DAY_MS);
    const last = at(toMs - days * DAY_MS, toMs);
    if (Math.max(first, last) >= kwh) return days;
  }
  return null;
}
