import type { Fan } from '../../bin/fan.ts';
import { nominalPower } from '../fan/nominal-power.ts';
import { FAN_ON, type FanSeason, type FanSpans } from '../types.ts';

/** Output of a heater as stated against what it gives, relative standard error; own judgement. */
export const HEATER_REL_SD = 0.1;

export const HEATER_OFF = 0;
export const HEATER_ON = 1;
/** the fan ran, and nothing tells whether the heater did */
export const HEATER_UNTOLD = 2;

/** When the heater of a fan burned. */
export interface HeaterUse {
  /** the fan's own, cut where the heater starts or stops */
  spans: FanSpans;
  /** [spans] */
  burned: Uint8Array;
  /** h that it burned for sure */
  hours: number;
  /** h of the fan of which nothing tells */
  untoldHours: number;
}

/** Told: in all hours of the fan in which it may have burned; least: in those alone in which it did for sure. */
export type HeatTaken = 'told' | 'least';

/** What a heater draws or burns, W. */
export const heaterInputW = ({ outputW, efficiency }: NonNullable<Fan['heater']>): number => outputW / efficiency;

/** What the logs tell of a fan's heater; where nothing does, it is untold in all of the fan's hours. */
export function heaterUse({ heater, spans, onHours }: FanSeason): HeaterUse {
  if (heater !== undefined) return heater;
  const burned = Uint8Array.from(spans.state, (state) => (state === FAN_ON ? HEATER_UNTOLD : HEATER_OFF));
  return { spans, burned, hours: 0, untoldHours: onHours };
}

/** The fan's spans with the power of its heater in them, for pricing. @param heaterW  while it burns */
export function heaterSpans(season: FanSeason, heaterW: number, taken: HeatTaken = 'told'): FanSpans {
  const { spans, burned } = heaterUse(season);
  const burns = (of: number) => of === HEATER_ON || (taken === 'told' && of === HEATER_UNTOLD);
  return { ...spans, powerW: Float64Array.from(burned, (of) => (burns(of) ? heaterW : 0)) };
}

/** What of a fan's own power is its electric heater's, W: all of it where that power shows that meter or current include it, else 0. @param runningW  mean power while running */
export function heaterInPowerW(fan: Fan, { energyFrom }: FanSeason, runningW: number): number {
  const { heater } = fan;
  if (heater === null || heater.fuel !== 'electric' || energyFrom === 'nameplate') return 0;
  const inputW = heaterInputW(heater);
  return runningW > nominalPower(fan).powerW + inputW / 2 ? inputW : 0;
}
