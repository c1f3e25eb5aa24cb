import { type Estimate, estimate, Z90 } from '../../base/estimate.ts';
import {
  type Aim,
  firstEffect,
  type HourState,
  hourClass,
  hourEffects,
  hourVerdict,
  wouldHavePaid,
} from './hour-effects.ts';
import { HOUR_CLASSES, VERDICTS } from './useful-hours-types.ts';
import type { Limits } from './useful-limits.ts';

/** The hours as one choice of isotherm, limits, sensor error and fan warming shows them; every array is [pieces]. */
export interface HourCase {
  airWb: Float64Array;
  grainWb: Float64Array;
  airC: Float64Array;
  plateauC: Float64Array;
  grainC: Float64Array;
  limits: Limits;
}

/** The same judged: indices of `HOUR_CLASSES` and `VERDICTS`, and 1 where running would have paid. */
export interface Judged {
  classes: Uint8Array;
  verdicts: Uint8Array;
  pays: Uint8Array;
  /** -1, 0, 1 or NaN */
  moisture: Float64Array;
}

const EMPTY = HOUR_CLASSES.indexOf('empty');
const NEITHER = VERDICTS.indexOf('neither');

/**
 * @param inGrain  [pieces]; 0 while the bin held no grain
 * @param known    whether the bin's moisture and temperature are known at any hour
 */
export function judge(
  hours: HourCase,
  aim: Aim,
  inGrain: Uint8Array,
  known: { moisture: boolean; temperature: boolean },
): Judged {
  const count = inGrain.length;
  const first = firstEffect(aim.goal);
  const out: Judged = {
    classes: new Uint8Array(count).fill(EMPTY),
    verdicts: new Uint8Array(count).fill(NEITHER),
    pays: new Uint8Array(count),
    moisture: new Float64Array(count).fill(Number.NaN),
  };
  for (let i = 0; i < count; i++) {
    if (inGrain[i] === 0) continue;
    const state: HourState = {
      airWb: hours.airWb[i],
      grainWb: hours.grainWb[i],
      airC: hours.airC[i],
      plateauC: hours.plateauC[i],
      grainC: hours.grainC[i],
    };
    const effects = hourEffects(state, hours.limits);
    out.classes[i] = HOUR_CLASSES.indexOf(hourClass(effects, first, known));
    out.verdicts[i] = VERDICTS.indexOf(hourVerdict(effects, state, aim, hours.limits));
    out.pays[i] = wouldHavePaid(effects, state, aim) ? 1 : 0;
    out.moisture[i] = effects.moisture;
  }
  return out;
}

/** The main case, and cases by what was changed in them: isotherms, limits, the sensors' error, the fan's warming. */
export interface JudgedCases {
  main: Judged;
  changed: readonly (readonly Judged[])[];
  /** whether the bin's moisture and temperature are known at any of the hours */
  known: { moisture: boolean; temperature: boolean };
}

/** What a sum over judged hours leaves open beside the choices that they were judged by. */
export interface LeftOpen {
  /** what the sum cannot exceed */
  most: number;
  /** added to the upper end whole: what hours that nobody can class, and a silent log, could add */
  more: number;
  /** standard error of the sum by the log's own error */
  sd: number;
}

/** The most that a sum comes to by any of the choices. */
export function mostOf({ main, changed }: JudgedCases, sum: (judged: Judged) => number): number {
  return Math.max(...[main, ...changed.flat()].map(sum));
}

/**
 * A sum over the hours with the interval that the choices leave: the farthest cases of each kind of choice, the kinds
 * taken as independent, and the log's own error with them.
 */
export function spanned(
  { main, changed }: JudgedCases,
  sum: (judged: Judged) => number,
  { most, more, sd }: LeftOpen,
): Estimate {
  const value = sum(main);
  let down = (Z90 * sd) ** 2;
  let up = down;
  for (const cases of changed) {
    const sums = cases.map(sum);
    down += Math.max(0, value - Math.min(value, ...sums)) ** 2;
    up += Math.max(0, Math.max(value, ...sums) - value) ** 2;
  }
  const high = Math.min(Math.max(most, value), value + Math.sqrt(up) + more);
  return estimate(value, Math.max(0, value - Math.sqrt(down)), high);
}
