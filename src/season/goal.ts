import type { Goal } from './season.ts';

/** A goal of temperature (cool, hold), against one of moisture (dry, condition). */
export function aimsAtTemperature(goal: Goal): boolean {
  return goal === 'cool' || goal === 'hold';
}
