import { aimsAtTemperature } from '../../season/goal.ts';
import type { Bin, Goal } from '../../season/season.ts';
import { onAt } from '../fan/spans.ts';
import type { AirLog } from '../fronts/air-log.ts';
import { statedWarming } from '../fronts/fan-warming.ts';
import { RULE_OF_THUMB_HOURS } from '../fronts/rule-of-thumb.ts';
import { FAN_ON, type FanSpans } from '../types.ts';
import { ANY_OUTDOOR_C } from './grain-edges.ts';
import type { MomentName, MomentWindow } from './moment-window.ts';

/** Airflow that few fans exceed, cfm per bushel: of those that dry, and of those that only cool (common practice). */
const MOST_CFM_PER_BUSHEL = { drying: 1, cooling: 0.5 } as const;
/** Where more of the bin than this may have been passed before the first reading, what it was before can't be told. */
export const MOST_PASSED = 0.6;

/** Share of a bin that a front may have passed at the most in so many fan hours, by the planning figure. */
export function mostPassed(goal: Goal, fanHours: number): number {
  const most = aimsAtTemperature(goal) ? MOST_CFM_PER_BUSHEL.cooling : MOST_CFM_PER_BUSHEL.drying;
  return Math.min(1, (fanHours * most) / RULE_OF_THUMB_HOURS);
}

/**
 * How far the mean at a moment may lie from that of the day read nearest to it, K, least and most: fan hours in between may
 * have moved as much of the grain as `mostPassed` to the air that they blew. By hand, of a share f passed:
 * after = before + f (air - before).
 *
 * @param tempC  mean of the day that was read, C
 */
export function missedCooling(
  { air, goal }: Pick<Bin, 'air' | 'goal'>,
  moment: MomentName,
  tempC: number,
  { span, slidMs, missedFanHours }: MomentWindow,
  weather: AirLog,
  spans: FanSpans | null,
): [least: number, most: number] {
  if (!(missedFanHours > 0)) return [0, 0];
  const share = Math.min(mostPassed(goal, missedFanHours), moment === 'start' ? MOST_PASSED : 1);
  const [fromMs, toMs] = moment === 'start' ? [span.fromMs - slidMs, span.fromMs] : [span.toMs, span.toMs + slidMs];
  const blown = [...weather.timeMs.keys()].filter((row) => {
    const ms = weather.timeMs[row];
    return ms >= fromMs && ms < toMs && (spans === null || onAt(spans, ms) === FAN_ON);
  });
  const warmedK = air === 'up' ? statedWarming(goal).usualK : 0;
  const mean = blown.reduce((sum, row) => sum + weather.tempC[row], 0) / blown.length + warmedK;
  const moves = (blown.length === 0 ? ANY_OUTDOOR_C : [mean]).map((airC) =>
    moment === 'start' ? (share / (1 - share)) * (tempC - airC) : share * (airC - tempC),
  );
  return [Math.min(0, ...moves), Math.max(0, ...moves)];
}
