import { z } from 'zod';
import { interval, number, time, why } from '../summary-cells.ts';

/** A bin's energy for what drying did, in `summary.json`. */
export const ENERGY_PER_POINT_SHAPE = z.strictObject({
  kwhPerPoint: number.describe('kWh for a point'),
  kwhPerPointInterval: interval,
  kwhPerBushelPoint: number.describe('kWh for a bushel-point'),
  kwhPerBushelPointInterval: interval,
  kwhPerKgWater: number.describe('kWh for each kilogram of water that left by the sensors'),
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
  amount: number.describe('money, as stated'),
  fansKwh: number,
  fansKwhInterval: interval,
  untoldHours: number.describe('h, measured: fan time that no log tells'),
  share: number.describe('fans over billed energy, fraction'),
  shareInterval: interval,
  restKwh: number,
  restKwhInterval: interval,
  fansMoney: number.describe('money: energy, demand of the fans’ own peak, connected load'),
  fansMoneyInterval: interval,
  fixed: number.describe('money: fixed charges, as stated'),
  restMoney: number.describe('money: amount less the fans’ money and fixed charges'),
  restMoneyInterval: interval,
  cause: z.string().nullable().describe('what most likely makes the fans explain more than was billed'),
  leftOut: z.string().nullable().describe('why it stays out of sums over bills'),
  why,
});

/** A month's peak, and what it costs. */
const PEAK = {
  peakKw: number.describe('highest 15-minute mean'),
  peakKwInterval: interval,
  billedKw: number.describe('after the ratchet'),
  billedKwInterval: interval,
  cost: number.describe('money'),
  costInterval: interval,
};

/** A month of a demand rule as run and as it might have been, the tariff's fans alone. */
export const DEMAND_SHAPE = z.strictObject({
  tariff: z.string(),
  rule: z.int().describe('counted from 1'),
  month: z.string(),
  ...PEAK,
  startsApartCost: number.describe('money, with no two starts in one quarter hour'),
  startsApartCostInterval: interval,
  inTurnsCost: number.describe('money, with each fan the same hours of each local day, in turns'),
  inTurnsCostInterval: interval,
  leastCost: number.describe('money, a bound: no order of the same hours of the day can bring it lower'),
  leastCostInterval: interval,
  saving: number.describe('money: as run less in turns'),
  savingInterval: interval,
  why,
});

/** A month of a tariff for its fans that have a log. */
export const TARIFF_MONTH_SHAPE = z.strictObject({
  tariff: z.string(),
  month: z.string(),
  energyKwh: number,
  energyKwhInterval: interval,
  energyCost: number.describe('money'),
  energyCostInterval: interval,
  demandCost: number.describe('money, all demand rules together'),
  demandCostInterval: interval,
  fixed: number.describe('money, as stated'),
  connected: number.describe('money, as stated: a twelfth of the year'),
  minimumTopUp: number.describe('money that the minimum adds'),
  minimumTopUpInterval: interval,
  total: number.describe('money'),
  totalInterval: interval,
  demand: z.array(
    z.strictObject({
      rule: z.int().describe('counted from 1'),
      began: time.describe(
        'of the peak; null where no fan ran in the hours of the rule, and where a meter tells how many hours one ran, but not when',
      ),
      ...PEAK,
    }),
  ),
});
