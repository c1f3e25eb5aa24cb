import { type Estimate, Z80, Z90 } from '../../base/estimate.ts';
import type { BinLog } from './bin-log.ts';
import type { Doubt } from './cross-checks.ts';
import { fansPower } from './fans-power.ts';
import {
  AT_WORK_PA,
  airPower,
  LEAKS_OR_POWER,
  powerDoubts,
  powerRelSd,
  warmedAir,
  warmingDoubts,
} from './leak-checks.ts';

/**
 * Efficiency of farm fans at work, air power over shaft power, and the standard error of its logarithm: 0.22 to 0.73 of nine in ten (common
 * practice, from memory); of the smallest fans, anything.
 */
const AT_WORK = { usual: 0.4, sd: 0.3 };
const SMALLEST = { usual: 0.3, sd: 0.8 };
/** By which power of the air's part that goes through the grain efficiency falls: static pressure falls by 1.2 to 1.5, that of the air's own speed not at all. */
const FALLS_BY = 2;
/** One cfm for each horsepower, m3/s for each W. */
const CFM_PER_HP = 0.3048 ** 3 / 60 / 745.69987;
/**
 * Of grain that hardly holds a fan back efficiency says little. Fans are planned there with about 1,000 cfm for a horsepower (Iowa State
 * University 2018; University of Kentucky 2002: 1 hp cools 10,000 bu in about 150 h, 10 hp in 15), which is read to a fifth; axial ones
 * reach 3,000 near free delivery (from memory): nine in ten lie between, m3/s and W of the shaft.
 */
const ON_LIGHT_BED = { leastM3SW: 800 * CFM_PER_HP, mostM3SW: 3000 * CFM_PER_HP };
/** Up to the first of these static pressures a bed is light, from the second on efficiency alone tells, Pa: about that of a fan at work. */
const BETWEEN_PA = [AT_WORK_PA - 50, AT_WORK_PA + 50];
/** What is lost at any floor (common practice, from memory). */
const USUAL_LOSS = 1.1;

/** Where thermometers tell the warming of the air to this, relative, air that takes all of the fans' heat clears them: a damper too makes a fan's power poor. */
const WARMING_TOLD = 0.3;

/** Whether air is lost between fan and grain: by what alone shows it, else by all together. Of a fan that blows into other bins too nobody knows this bin's part. @param fittedM3S  of the fit */
export function airLost(log: BinLog, fittedM3S: number, flowM3S: Estimate): Doubt[] {
  if (fansPower(log).shared) return [];
  const warmed = warmedAir(log);
  if (warmed !== null && warmed.relSd < WARMING_TOLD && warmed.flowM3S < USUAL_LOSS * fittedM3S) return [];
  const alone = [...powerDoubts(log, fittedM3S), ...warmingDoubts(log, flowM3S)];
  return alone.length > 0 ? alone : leakDoubts(log, flowM3S);
}

/** Air blown over air through the grain, a natural logarithm and its standard error. */
interface Blown {
  by: string;
  ln: number;
  /** of what it is told by, without the grain's airflow */
  sd: number;
  /** by which power of the grain's airflow it moves the other way */
  byFlow: number;
  /** by which power of the fans' power it moves */
  byPower: number;
}

/**
 * Whether the fans blow more air than the grain got, sure to nine in ten, by all that tells it together: their power, the warming of the air, their curves.
 * Each alone leaves a leak of a third or a half open.
 *
 * @param flowM3S  of the whole bin, static pressure joined: that is of the grain's air too
 */
export function leakDoubts(log: BinLog, flowM3S: Estimate): Doubt[] {
  const over = blownOverGrain(log, flowM3S);
  // To nine in ten: of good logs a bed has to be trusted in nine of ten, no more.
  if (over === null || !(Math.log(over.times) > Z80 * over.sd)) return [];
  const [low, high] = rangeOf(over);
  return [
    {
      why: `By ${over.by} the fans blow ${over.times.toFixed(1)} (${low.toFixed(1)} to ${high.toFixed(1)}) times the air that the grain got.`,
      help: LEAKS_OR_POWER,
    },
  ];
}

/** From here on a leak of nearly a half would go unseen. */
const OPEN = 1.8;

/** What a reader must know where nothing shows that air is lost and nothing shows that none is: the bed is fitted to what the grain got either way. */
export function leakNotes(log: BinLog, flowM3S: Estimate): string[] {
  if (fansPower(log).shared) return [];
  const over = blownOverGrain(log, flowM3S);
  const high = over === null ? Number.POSITIVE_INFINITY : rangeOf(over)[1];
  if (high < OPEN) return [];
  const told =
    over === null
      ? 'nothing logged tells what the fans blow'
      : `by ${over.by} the fans may blow up to ${high.toFixed(1)} times the air that the grain got`;
  return [
    `Whether air is lost between fan and grain is not known: ${told}. The runs go by the air that the grain got; a fan curve in season.yaml would tell more.`,
  ];
}

const rangeOf = ({ times, sd }: { times: number; sd: number }): [number, number] => [
  times * Math.exp(-Z90 * sd),
  times * Math.exp(Z90 * sd),
];

/** Air blown over air through the grain, by all that tells it together, and the standard error of its logarithm; null where nothing does. */
function blownOverGrain(log: BinLog, { interval }: Estimate): { by: string; times: number; sd: number } | null {
  if (interval === null) return null;
  const [low, high] = interval;
  const flowM3S = Math.sqrt(low * high);
  const flowSd = Math.log(high / low) / 2 / Z90;
  const ways = [byPower(log, flowM3S), byWarming(log, flowM3S), byCurve(log, flowM3S)].filter((way) => way !== null);
  const told = ways.map(({ by }) => by).join(' and ');
  if (ways.length === 0) return null;
  const weights = ways.map(({ sd }) => 1 / sd ** 2);
  const weight = weights.reduce((sum, one) => sum + one, 0);
  const joined = (of: (way: Blown) => number) => ways.reduce((sum, way, i) => sum + (weights[i] * of(way)) / weight, 0);
  const ln = joined((way) => way.ln);
  // The grain's airflow is in all of them alike, the fans' power in two.
  const sd = Math.hypot(
    Math.sqrt(1 / weight),
    joined((way) => way.byFlow) * flowSd,
    joined((way) => way.byPower) * powerRelSd(log),
  );
  return { by: told, times: Math.exp(ln), sd };
}

/** By the shaft's power: at work by the efficiency that fans reach, on a light bed by the air that they blow for their power, between the two by pressure. */
function byPower(log: BinLog, flowM3S: number): Blown | null {
  const { pressurePa, shaftW, efficiency, small } = airPower(log, flowM3S);
  if (!(efficiency > 0)) return null;
  const { usual, sd } = small ? SMALLEST : AT_WORK;
  const { leastM3SW, mostM3SW } = ON_LIGHT_BED;
  const light = {
    ln: Math.log((Math.sqrt(leastM3SW * mostM3SW) * shaftW) / flowM3S),
    sd: Math.log(mostM3SW / leastM3SW) / 2 / Z90,
    power: 1,
  };
  const atWork = { ln: Math.log(usual / efficiency) / FALLS_BY, sd: sd / FALLS_BY, power: 1 / FALLS_BY };
  const work = Math.min(1, Math.max(0, (pressurePa - BETWEEN_PA[0]) / (BETWEEN_PA[1] - BETWEEN_PA[0])));
  const between = (of: (one: typeof light) => number) => (1 - work) * of(light) + work * of(atWork);
  const power = between((one) => one.power);
  return {
    by: 'their power',
    ln: between((one) => one.ln),
    sd: between((one) => one.sd),
    byFlow: power,
    byPower: power,
  };
}

function byWarming(log: BinLog, flowM3S: number): Blown | null {
  const warmed = warmedAir(log);
  return warmed === null
    ? null
    : { by: 'the warming of the air', ln: Math.log(warmed.flowM3S / flowM3S), sd: warmed.relSd, byFlow: 1, byPower: 1 };
}

function byCurve({ review }: BinLog, flowM3S: number): Blown | null {
  const { interval } = review.airflow.byFanCurve;
  if (interval === null || !(interval[0] > 0)) return null;
  const [low, high] = interval;
  return {
    by: 'their curves',
    ln: Math.log(Math.sqrt(low * high) / flowM3S),
    sd: Math.log(high / low) / 2 / Z90,
    byFlow: 1,
    byPower: 0,
  };
}
