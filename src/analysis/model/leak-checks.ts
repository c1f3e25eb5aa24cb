import { HEAT_DRY_AIR_J_KGK } from '../../air/enthalpy.ts';
import { type Estimate, Z90 } from '../../base/estimate.ts';
import { resistancePaM } from '../../bin/airflow-resistance.ts';
import { statedHeaters } from '../../season/stated-heaters.ts';
import { resistanceCurve } from '../airflow/airflow-by-pressure.ts';
import { POWER_TO_AIR } from '../fan/power-to-air.ts';
import type { BinLog } from './bin-log.ts';
import type { Doubt } from './cross-checks.ts';
import { type FansPower, fansPower } from './fans-power.ts';
import { LOOK_FOR_LEAKS } from './flow-checks.ts';

/** Pressure of the air's own speed where a farm fan blows it out, at about 10 m/s (common practice), Pa. */
const VELOCITY_PA = 60;
/**
 * Air power, static pressure and speed, over shaft power: farm fans at work reach 0.3 to 0.65 (common practice). Where half of the air goes
 * elsewhere a quarter to a fifth of the sound part is left; of a third about a half.
 */
const LEAST_AT_WORK = 0.15;
/** From this static pressure on a fan is at work, Pa; on a lighter bed efficiency may be anything. */
export const AT_WORK_PA = 150;
/** The smallest fans, up to 3/4 hp, are often too large for their grain and throttled: up to what shaft power, W, and what part static pressure has to have too. */
const SMALL_SHAFT_W = 700;
const LEAST_OF_SMALL = 0.04;

/** What to do, and what else may look like a leak. */
export const LEAKS_OR_POWER = `${LOOK_FOR_LEAKS} See whether the fans’ meter has other loads and whether a damper throttles them; log current or power where only the nameplate tells it.`;

/** What the fans' power makes of an airflow through the grain. */
export interface AirPower {
  /** static, as logged, else of the grain's resistance; NaN where neither is known */
  pressurePa: number;
  shaftW: number;
  /** air power, of static pressure and speed, over shaft power */
  efficiency: number;
  /** such a fan is often too large for its grain */
  small: boolean;
  /** whether the pressure is one of a fan at work */
  atWork: boolean;
}

/** What fans draw at work over one kilowatt for each horsepower of their nameplates: 0.6 to 1 (common practice, from memory), and its relative standard error. */
const OF_NAMEPLATE = { usual: 0.8, least: 0.6, sd: 0.15 };

/** Electric power as a leak may be told by it, W. @param nameplate  the part of its nameplate that a fan is taken to draw which nothing else tells of */
function drawnW({ powerW, byNameplate }: FansPower, nameplate: number): number {
  return byNameplate ? nameplate * powerW : powerW;
}

/** Relative standard error of the power of the fans. */
export function powerRelSd(log: BinLog): number {
  const { relSd, byNameplate } = fansPower(log);
  return byNameplate ? OF_NAMEPLATE.sd : relSd;
}

/** @param nameplate  see `drawnW` */
export function airPower(log: BinLog, flowM3S: number, nameplate = OF_NAMEPLATE.usual): AirPower {
  const fans = fansPower(log);
  const shaftW = fans.motorEfficiency * drawnW(fans, nameplate);
  const pressurePa = log.review.airflow.pressure?.pressurePa ?? pressureOf(log, flowM3S);
  return {
    pressurePa,
    shaftW,
    efficiency: ((pressurePa + VELOCITY_PA) * flowM3S) / shaftW,
    small: shaftW <= SMALL_SHAFT_W,
    atWork: pressurePa >= AT_WORK_PA,
  };
}

/** Whether the power of fans at work fits the airflow that the grain got, at the pressure that was logged, else at that of the grain's resistance. */
export function powerDoubts(log: BinLog, flowM3S: number): Doubt[] {
  const { pressurePa, shaftW, efficiency, small, atWork } = airPower(log, flowM3S, OF_NAMEPLATE.least);
  if (!atWork || !(efficiency < LEAST_AT_WORK)) return [];
  if (small && !((pressurePa * flowM3S) / shaftW < LEAST_OF_SMALL)) return [];
  const share = (100 * efficiency).toFixed(efficiency < 0.01 ? 1 : 0);
  return [
    {
      why: `To blow the fitted airflow through the grain takes ${share} % of the fans’ power; fans at work reach 30 to 65 %, so that much of the air seems to go elsewhere.`,
      help: LEAKS_OR_POWER,
    },
  ];
}

/** Static pressure of an airflow through the grain, Pa; NaN where the crop's resistance is not known or not so far. */
function pressureOf({ bin, depthM, floorAreaM2 }: BinLog, flowM3S: number): number {
  const curve = resistanceCurve(bin.grain.crop);
  if (curve === null) return Number.NaN;
  return bin.airflowFactor * depthM * resistancePaM(curve.a, curve.b, flowM3S / floorAreaM2);
}

/** Of the fan's heat in the air: its part of the power and how evenly it is mixed, relative; two thermometers of half a degree (95 %), K. */
const HEAT_REL_SD = 0.1;
const THERMOMETERS_K = 0.35;
/** So much more air must have taken the heat than reached the grain. */
const CLEARLY_MORE = 1.3;

/**
 * The air that takes the fans' heat by its warming: m3/s and its relative standard error; null where a heater, a plenum without readings or
 * air drawn down leaves it untold.
 */
export function warmedAir(log: BinLog): { flowM3S: number; relSd: number } | null {
  const { bin, season, warmingK, meanVolumeM3Kg } = log;
  const heated = statedHeaters(season, bin).length > 0;
  if (warmingK === null || !(warmingK > 0) || heated || bin.air === 'down') return null;
  return {
    flowM3S:
      (POWER_TO_AIR * drawnW(fansPower(log), OF_NAMEPLATE.usual) * meanVolumeM3Kg) / (HEAT_DRY_AIR_J_KGK * warmingK),
    relSd: Math.hypot(HEAT_REL_SD, THERMOMETERS_K / warmingK),
  };
}

/**
 * Whether the fans warm the air by what their power makes of the air that the grain got: what leaks on the way takes its share of the heat.
 *
 * @param flowM3S  of the whole bin, static pressure joined: that is of the grain's air too
 */
export function warmingDoubts(log: BinLog, { interval }: Estimate): Doubt[] {
  const warmed = warmedAir(log);
  if (warmed === null || interval === null) return [];
  const [low, high] = interval;
  const more = warmed.flowM3S / Math.sqrt(low * high);
  const sd = Math.hypot(warmed.relSd, powerRelSd(log), Math.log(high / low) / 2 / Z90);
  if (!(more * Math.exp(-Z90 * sd) > CLEARLY_MORE)) return [];
  const times = more.toFixed(1);
  return [
    {
      why: `The fans’ power warms the air as little as if ${times} times the air were blown that the grain got.`,
      help: LEAKS_OR_POWER,
    },
  ];
}
