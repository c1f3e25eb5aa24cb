import { type RunAir, runAir, takenAtHumidity, type YearAir, type YearRun } from './held-back-run.ts';

/**
 * What makes a year slower than the best, each a ratio above 1 where it held the year back. `hours`: the rule let the fan run for
 * less of the day; `warmth`: colder air carries less, though a fan moves more of it; `dryness`: air of the same temperature nearer to balance with the
 * grain; `use`: less taken of what the air could take (grain that is dry already, grain still to be warmed).
 */
export const FACTORS = ['hours', 'warmth', 'dryness', 'use'] as const;
export type Factor = (typeof FACTORS)[number];

/** A year's pace over the best's. */
export interface Pace {
  air: YearAir;
  /** so many times the best’s days for as much water; the product of `times` */
  slower: number;
  times: Readonly<Record<Factor, number>>;
  /** water that came out over the best's; the days' ratio is `slower` times this */
  water: number;
  /** logarithm of each factor over that of `slower`; they add up to 1. null where the pace is the best's within 2 % */
  shares: Readonly<Record<Factor, number>> | null;
}

/**
 * A year held against the best: its pace until it was done; of a late year over as many days as the best took, as what came
 * long after did not hold it back.
 */
export interface HeldBack extends Pace {
  /** days until it was done; null where it was not */
  days: number | null;
  /** it was not done, or took more than twice the best's days */
  late: boolean;
}

export interface YearsHeldBack {
  /** done in the fewest days; where none was done, that which took most water out. null: no year can be told */
  best: YearAir | null;
  /** the years but the best, as given */
  others: readonly HeldBack[];
  untold: readonly { weather: string; why: string }[];
}

const SAME_PACE = 0.02;
/** A year that was not done, or took so many times the days, is late: most of its days lie in another season. Our choice. */
const LATE = 2;

type Told = Extract<RunAir, { why: null }>;

/**
 * Why a strategy took longer in some years than in the best.
 *
 * @param runs  one a year, of one bin and strategy, without a heater
 */
export function heldBack(runs: readonly YearRun[]): YearsHeldBack {
  const untold: { weather: string; why: string }[] = [];
  const tell = (run: YearRun, days?: number): Told | null => {
    const { weather } = run;
    const read = runAir(run, days);
    if (read.air !== null && read.air.water > 0 && read.air.canTake > 0) return read;
    const why = read.why ?? 'Over the fan’s hours the air could take no water from the grain, or the grain gave none.';
    untold.push({ weather, why });
    return null;
  };
  const told = runs.map((run) => tell(run)).filter((one) => one !== null);
  const first = [...told].sort(bySpeed)[0];
  if (first === undefined) return { best: null, others: [], untold };
  const { plenumRh, days, weather } = first.air;
  const whole = ({ air, hours }: Told): YearAir => ({ ...air, asWarm: takenAtHumidity(hours, plenumRh) });
  const best = whole(first);
  const others = told.flatMap((own) => {
    if (own.air.weather === weather) return [];
    const late = !own.air.reached || own.air.days > LATE * days;
    const one = late ? tell(runOf(runs, own.air.weather), days) : own;
    if (one === null) return [];
    return [{ ...against(whole(one), best), days: own.air.reached ? own.air.days : null, late }];
  });
  return { best, others, untold };
}

function runOf(runs: readonly YearRun[], weather: string): YearRun {
  return runs.find((one) => one.weather === weather) as YearRun;
}

function bySpeed({ air: a }: Told, { air: b }: Told): number {
  if (a.reached !== b.reached) return a.reached ? -1 : 1;
  return a.reached ? a.days - b.days : b.water - a.water;
}

/**
 * A year's pace against the best's as a product. With as much air by volume each hour, water a day is hours a day times what a
 * cubic metre of air took; that is what it could take times the part of it that it did; and what it could take is what air as
 * warm, and so dense, takes at one humidity, times what its own humidity makes of that. Means are of hours, not of kilograms: what that
 * leaves (a hundredth between years) is in the use.
 *
 * @source  ang-2005: logarithmic shares of a product's change
 */
export function against(air: YearAir, best: YearAir): Pace {
  const times = {
    hours: best.hoursPerDay / air.hoursPerDay,
    warmth: (best.asWarm * best.airKgM3) / (air.asWarm * air.airKgM3),
    dryness: best.canTake / best.asWarm / (air.canTake / air.asWarm),
    use: best.took / best.canTake / (air.took / air.canTake),
  };
  const slower = best.water / best.days / (air.water / air.days);
  const share = (factor: Factor) => Math.log(times[factor]) / Math.log(slower);
  const shares = { hours: share('hours'), warmth: share('warmth'), dryness: share('dryness'), use: share('use') };
  return {
    air,
    slower,
    times,
    water: air.water / best.water,
    shares: Math.abs(Math.log(slower)) < SAME_PACE ? null : shares,
  };
}
