import { aimsAtTemperature } from '../../season/goal.ts';
import type { Goal } from '../../season/season.ts';
import type { HourClass, Verdict } from './useful-hours-types.ts';
import type { Limits } from './useful-limits.ts';

/** Within so much of its target a mean moisture has reached it, fraction. @source definition of `reached` in the kit's season format */
const REACHED_WB = 0.002;
/** The same of a mean temperature: 5 degF, K. */
const REACHED_K = 5 / 1.8;

/** What one hour's air meets: NaN where it is not known. */
export interface HourState {
  /** moisture that grain takes in this air in the long run, fraction, wet basis */
  airWb: number;
  /** mean moisture of the grain */
  grainWb: number;
  /** temperature of the air as it enters, C */
  airC: number;
  /** temperature that this air leads the grain to behind its front, C */
  plateauC: number;
  /** mean temperature of the grain, C */
  grainC: number;
}

/** What the manager wanted of the grain; null: not stated. */
export interface Aim {
  goal: Goal;
  moistureWb: number | null;
  tempC: number | null;
}

/** -1 takes away (dries, cools), 1 adds (rewets, warms), 0 next to nothing, NaN not known. */
export type Effect = number;

export interface Effects {
  moisture: Effect;
  temperature: Effect;
}

/** What an hour's air could do: the distance between where it leads and where the grain is, held against the limits. */
export function hourEffects(state: HourState, limits: Limits): Effects {
  return {
    moisture: effect(state.airWb - state.grainWb, limits.moistureWb),
    temperature: effect(state.plateauC - state.grainC, limits.temperatureK),
  };
}

// A hair of rounding must not decide a difference that lies on the limit.
function effect(difference: number, limit: number): Effect {
  if (Number.isNaN(difference)) return Number.NaN;
  if (Math.abs(difference) < limit * (1 - 1e-9)) return 0;
  return Math.sign(difference);
}

/** Which effect names an hour that has both: moisture where water is the goal, else temperature. */
export function firstEffect(goal: Goal): 'moisture' | 'temperature' {
  return aimsAtTemperature(goal) ? 'temperature' : 'moisture';
}

/**
 * An hour's name: its first effect if it has one, else its second.
 *
 * @param known  whether a bin's moisture (temperature) is known at all: where it never is, the other names the hours alone;
 *               that it does nothing much names no hour, for what the unknown one did is open
 */
export function hourClass(
  { moisture, temperature }: Effects,
  first: 'moisture' | 'temperature',
  known: { moisture: boolean; temperature: boolean },
): HourClass {
  const order = first === 'moisture' ? (['moisture', 'temperature'] as const) : (['temperature', 'moisture'] as const);
  const name = { moisture: { '-1': 'dry', '1': 'rewet' }, temperature: { '-1': 'cool', '1': 'warm' } } as const;
  for (const which of order) {
    const value = which === 'moisture' ? moisture : temperature;
    if (Number.isNaN(value)) {
      if (known[which]) return 'unknown';
      continue;
    }
    if (value !== 0) return name[which][value < 0 ? '-1' : '1'];
  }
  return known.moisture && known.temperature ? 'little' : 'unknown';
}

/**
 * Whether an hour served the bin's goal.
 *
 * dry: drying is for it, until the grain is drier than its target by the limit: from there on drying is over-drying and
 * works against it, and rewetting no longer does. Once the target is reached, cooling is customary before the grain is
 * held (common practice), so an hour of air that is itself cooler than the grain is not against it whatever it does to the
 * moisture; air that cools by evaporation alone is still drying. condition: the same, turned round.
 * cool: cooling is for it until the target temperature is reached, warming against it while the grain is not colder than
 * its target by the limit. hold: warming and rewetting are against it, cooling is for it.
 */
export function hourVerdict(effects: Effects, state: HourState, aim: Aim, limits: Limits): Verdict {
  const { moisture, temperature } = effects;
  if (aim.goal === 'dry' || aim.goal === 'condition') {
    // Conditioning is drying with the sign turned.
    const sign = aim.goal === 'dry' ? 1 : -1;
    const short = aim.moistureWb === null ? Number.POSITIVE_INFINITY : sign * (state.grainWb - aim.moistureWb);
    if (Number.isNaN(moisture)) return 'unknown';
    const towards = moisture * sign < 0;
    const past = short < -limits.moistureWb * (1 - 1e-9);
    const coolerAir = temperature < 0 && state.airC <= state.grainC - limits.temperatureK;
    if (moisture === 0 || (short <= REACHED_WB && coolerAir)) return 'neither';
    if (past) return towards ? 'against' : 'neither';
    if (towards) return 'for';
    return 'against';
  }
  if (Number.isNaN(temperature)) return 'unknown';
  const above = aim.tempC === null ? Number.POSITIVE_INFINITY : state.grainC - aim.tempC;
  if (temperature > 0 && above > -limits.temperatureK) return 'against';
  if (aim.goal === 'hold' && moisture > 0) return 'against';
  return temperature < 0 && above > 0 ? 'for' : 'neither';
}

/** Whether running would have brought the grain nearer to a target that it had not reached; false where that is not known. */
export function wouldHavePaid(effects: Effects, state: HourState, aim: Aim): boolean {
  const { goal, moistureWb, tempC } = aim;
  if (goal === 'cool') return tempC !== null && effects.temperature < 0 && state.grainC > tempC + REACHED_K;
  if (moistureWb === null) return false;
  if (goal === 'dry') return effects.moisture < 0 && state.grainWb > moistureWb + REACHED_WB;
  return goal === 'condition' && effects.moisture > 0 && state.grainWb < moistureWb - REACHED_WB;
}
