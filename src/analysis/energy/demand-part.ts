import { Z90 } from '../../base/estimate.ts';
import type { Part } from './parts.ts';

/** A month's demand of a fan, money: what unknown time could add, and what of it hangs on heat that is not sure. */
export type DemandPart = Required<Part>;

export const NO_DEMAND: DemandPart = { value: 0, sd: 0, more: 0, less: 0, leastSd: 0 };

/**
 * A fan's part of a month's demand, whose interval holds that with the heat that is told and that with the least that is sure, each
 * with its own error: as the tariff's own month has it (`bothHeats`), of which it is a share.
 *
 * @param told, sure  money and its standard error
 * @param most        what unknown time may make of it, money
 */
export function demandPart(told: Charged, sure: Charged, most: number): DemandPart {
  const end = ({ cost, sd }: Charged, side: 1 | -1) => cost + side * Z90 * sd;
  const lower = end(sure, -1) < end(told, -1);
  const more = Math.max(0, most - told.cost, end(sure, 1) - end(told, 1));
  return {
    value: told.cost,
    sd: told.sd,
    more,
    less: lower ? told.cost - sure.cost : 0,
    leastSd: lower ? sure.sd : told.sd,
  };
}

interface Charged {
  cost: number;
  sd: number;
}

/** Of one fan: its power is wrong in all months and rules alike. */
export function summedDemand(parts: readonly DemandPart[]): DemandPart {
  const sum = (key: keyof DemandPart) => parts.reduce((all, part) => all + part[key], 0);
  return { value: sum('value'), sd: sum('sd'), more: sum('more'), less: sum('less'), leastSd: sum('leastSd') };
}
