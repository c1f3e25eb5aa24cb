import { z } from 'zod';
import { interval, number, why } from '../summary-cells.ts';

const factor = z.strictObject({
  times: number.describe('times the other bin’s'),
  timesInterval: interval,
  share: number.describe(
    'fraction of the logarithm of the cost’s ratio; the shares of price, charges, power and hours add up to 1',
  ),
  shareInterval: interval,
});

/** The block of a bin beside the others in `summary.json`. */
export const COMPARISON_SHAPE = z.strictObject({
  measure: z
    .enum(['costPerBushelPoint', 'costPerBushelPointAdded', 'costPerBushel'])
    .nullable()
    .describe('what bins of this goal are ranked by'),
  rank: z
    .strictObject({
      best: z.int().describe('counted from 1'),
      worst: z.int().describe('counted from 1'),
      of: z.int().describe('counted: bins'),
    })
    .nullable()
    .describe('places from 1 among bins of the same goal and crop; a range where intervals overlap'),
  pricePerKwh: number.describe('money for a kWh: energy cost over energy'),
  pricePerKwhInterval: interval,
  chargesOverEnergy: number.describe('times: cost over energy cost'),
  chargesOverEnergyInterval: interval,
  kwPerBushel: number.describe('kW for a bushel: energy over fan hours and bushels'),
  kwPerBushelInterval: interval,
  fanHours: number.describe('h for a point, of all hours that were paid; for costPerBushel those of the season'),
  fanHoursInterval: interval,
  against: z
    .strictObject({
      bin: z.string(),
      sameCrop: z.boolean(),
      times: number.describe('times the other bin’s cost: the product of the four factors’'),
      timesInterval: interval,
      price: factor,
      charges: factor,
      power: factor,
      hours: factor,
      why,
    })
    .nullable()
    .describe('held against the cheapest; null for the cheapest itself and where there is none'),
  airAtFill: z.strictObject({
    outdoorC: number.describe('mean over the fan hours of the first weeks, measured'),
    outdoorRhPct: number.describe('measured, the same mean'),
    equilibriumPct: number.describe('moisture at which the crop settles in that air, warmed by the fan'),
    equilibriumPctInterval: interval,
    why,
  }),
  why,
});
