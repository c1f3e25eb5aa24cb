import { z } from 'zod';
import { interval, number, time, why } from '../summary-cells.ts';

/** A bin's energy for what drying did, in `summary.json`. */
export const ENERGY_PER_POINT_SHAPE = z.strictObject({
  kwhPerPoint: number,
  kwhPerPointInterval: interval,
  kwhPerBushelPoint: number,
  kwhPerBushelPointInterval: interval,
  kwhPerKgWater: number.describe('for each kilogram of water that left by the sensors'),
  kwhPerKgWaterInterval: interval,
  stands: z
    .enum(['within', 'below', 'above', 'across'])
    .nullable()
    .describe('beside published figures of natural-air drying; null where none fits'),
  likely: z.array(z.string()).describe('how it stands, in sentences'),
  why,
});

/** A utility's bill beside its fans. */
export const BILL_SHAPE = z.strictObject({
  tariff: z.string(),
  from: time,
  to: time.describe('first moment after the billed time'),
  billedKwh: number.describe('as stated'),
  billedKw: number.describe('as stated'),
  amount: number.describe('as stated'),
  fansKwh: number,
  fansKwhInterval: interval,
  untoldHours: number.describe('fan time that no log tells'),
  share: number.describe('fans over billed energy, fraction'),
  shareInterval: interval,
  restKwh: number,
  restKwhInterval: interval,
  fansMoney: number.describe('energy, demand of the fans’ own peak, connected load'),
  fansMoneyInterval: interval,
  fixed: number.describe('fixed charges, as stated'),
  restMoney: number.describe('amount less the fans’ money and fixed charges'),
  restMoneyInterval: interval,
  cause: z.string().nullable().describe('what most likely makes the fans explain more than was billed'),
  leftOut: z.string().nullable().describe('why it stays out of sums over bills'),
  why,
});

/** A month of a demand rule as run and as it might have been, the tariff's fans alone. */
export const DEMAND_SHAPE = z.strictObject({
  tariff: z.string(),
  rule: z.int().describe('from 1'),
  month: z.string(),
  peakKw: number,
  billedKw: number,
  cost: number,
  costInterval: interval,
  startsApartCost: number.describe('no two starts in one quarter hour'),
  startsApartCostInterval: interval,
  inTurnsCost: number.describe('each fan the same hours of each local day, in turns'),
  inTurnsCostInterval: interval,
  leastCost: number.describe('no order of the same hours of the day can bring it lower'),
  saving: number.describe('as run less in turns'),
  savingInterval: interval,
});
