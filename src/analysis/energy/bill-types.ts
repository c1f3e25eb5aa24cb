import type { Estimate } from '../../base/estimate.ts';

/** A utility's bill beside what the fans explain of it; money in the season's currency. */
export interface BillShare {
  tariffId: string;
  /** ms UTC, [from, to) */
  fromMs: number;
  toMs: number;
  /** as the bill states them; null where it does not */
  billedKwh: number | null;
  billedKw: number | null;
  amount: number | null;
  /** what the tariff's fans used by their logs, with what their electric heaters drew beside them */
  fansKwh: Estimate;
  /** of that, what no log of a fan measured but its heater is taken to have drawn; null where no fan has such a heater */
  heaterKwh: Estimate | null;
  /** fan time of the bill that no log tells, h, fan by fan */
  untoldHours: number;
  /** fans over billed energy, a fraction */
  share: Estimate;
  /** billed less fans: what else the meter fed */
  restKwh: Estimate;
  /** what the tariff charges the fans for the bill's time: energy, demand of their own peak, connected load */
  fansMoney: Estimate;
  /** fixed charges of the bill's time, as stated */
  fixed: number;
  /** amount less the fans' money and fixed charges */
  restMoney: Estimate;
  /** what most likely makes the fans explain more than was billed; null where they do not */
  cause: string | null;
  /** why it stays out of sums; null where it counts */
  leftOut: string | null;
}
