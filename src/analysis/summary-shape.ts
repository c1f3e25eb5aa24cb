import { z } from 'zod';
import { FUEL_UNITS } from '../base/fuel-unit.ts';
import { COMPARISON_SHAPE } from './compare/comparison-shape.ts';
import { CONDITION_SHAPE } from './condition/condition-summary.ts';
import { BILL_SHAPE, DEMAND_SHAPE, ENERGY_PER_POINT_SHAPE, TARIFF_MONTH_SHAPE } from './energy/money-shape.ts';
import { LAYERS_SHAPE } from './moisture/layers-summary.ts';
import { STAGES_SHAPE } from './moisture/stages-summary.ts';
import { TICKETS_SHAPE } from './moisture/tickets-summary.ts';
import { PROBES_SHAPE } from './probes/probes-summary.ts';
import { RATE_SHAPE } from './rates/rates-summary.ts';
import { interval, number, time, why } from './summary-cells.ts';
import { USEFUL_SHAPE } from './useful/useful-summary.ts';
import { CROSSED_SHAPE } from './what-if/crossed-shape.ts';
import { DOUBTS } from './what-if/doubts.ts';

const grain = z.strictObject({
  dryMatterKg: number.describe('as filled'),
  dryMatterKgInterval: interval,
  volumeM3: number.describe('stated: from diameter and depth'),
  bushels: number.describe('weight as filled over the legal bushel weight'),
  bushelsInterval: interval,
  from: z
    .enum(['tickets', 'volume'])
    .nullable()
    .describe('the weight as filled: scale tickets that cover the filling, else depth and test weight'),
  depthM: number.describe('stated'),
  why,
});

const fan = z.strictObject({
  hours: number.describe('h, clock hours in which any fan of the bin ran'),
  hoursInterval: interval,
  unknownHours: number.describe('measured: h that no log tells; the upper ends of the intervals take them as run'),
  starts: number.describe('counted'),
  energyKwh: number,
  energyKwhInterval: interval,
  energyFrom: z.enum(['meter', 'power', 'current', 'nameplate']).nullable(),
  energyCost: number.describe('money'),
  energyCostInterval: interval,
  demandCost: number.describe('money'),
  demandCostInterval: interval,
  connectedCost: number.describe('money'),
  connectedCostInterval: interval,
  heatCost: number.describe('money'),
  heatCostInterval: interval,
  heaters: z
    .array(
      z.strictObject({
        fan: z.string(),
        fuel: z.enum(['electric', 'propane', 'natural gas']),
        hours: number.describe('h that it burned'),
        hoursInterval: interval,
        hoursFrom: z
          .enum(['plenum', 'fan'])
          .describe('told by the warming of the plenum’s air, or taken to be those of its fan'),
        used: number.describe('in `unit`, by which the season prices it; kWh of heat without a price'),
        usedInterval: interval,
        unit: z.enum(FUEL_UNITS),
        why,
      }),
    )
    .describe('of the bin’s fans that have one; empty where the fans’ hours are not known'),
  cost: number.describe('money: energy + demand + connected + heat'),
  costInterval: interval,
  kwhPerBushel: number,
  kwhPerBushelInterval: interval,
  costPerBushel: number.describe('money per bushel'),
  costPerBushelInterval: interval,
  months: z
    .array(
      z.strictObject({
        month: z.string(),
        hours: number.describe('h'),
        hoursInterval: interval,
        unknownHours: number.describe('measured: h that no log tells'),
        energyKwh: number,
        energyKwhInterval: interval,
        energyCost: number.describe('money; null where no tariff prices the fans'),
        energyCostInterval: interval,
        demandCost: number.describe('money; null where no tariff prices the fans'),
        demandCostInterval: interval,
      }),
    )
    .describe('by local calendar month'),
  why,
});

const moisture = z.strictObject({
  startPct: number,
  startPctInterval: interval,
  endPct: number,
  endPctInterval: interval,
  pointsRemoved: number.describe('points; its interval is `interval`'),
  interval,
  perHundredFanHours: number.describe('points in 100 h, of the fan hours between the moistures at start and end'),
  perHundredFanHoursInterval: interval,
  overdryingLossBushels: number,
  overdryingLossBushelsInterval: interval,
  overdryingLoss: number.describe('money'),
  overdryingLossInterval: interval,
  why,
});

const water = z.strictObject({
  bySensorsKg: number,
  bySensorsKgInterval: interval,
  byAirKg: number,
  byAirKgInterval: interval,
  byTicketsKg: number,
  byTicketsKgInterval: interval,
  agree: z.boolean().nullable(),
  why,
});

const costPerPoint = z.strictObject({
  value: number.describe('money per point; its interval is `interval`'),
  interval,
  perBushelPoint: number.describe('money per bushel-point'),
  perBushelPointInterval: interval,
  why,
});

const front = z.strictObject({
  campaign: z.int().describe('counted from 1'),
  kind: z.enum(['cooling', 'warming', 'drying', 'wetting']),
  cable: z.string(),
  sensor: z.int().describe('as stated, numbered from the floor up'),
  heightM: z.number().describe('stated'),
  arrived: time,
  fanHours: number.describe('h since the campaign began'),
  fanHoursInterval: interval,
  arrivedInterval: z
    .tuple([time, time])
    .nullable()
    .describe('the hole of the log, where the arrival stands by the front’s pace along the cable; else null'),
  why,
});

const frontCampaign = z.strictObject({
  campaign: z.int().describe('counted from 1'),
  kind: z.enum(['cooling', 'warming']),
  from: time,
  to: time,
  fanHours: number.describe('h, measured'),
  airC: number.describe('measured: mean of the entering air'),
  grainC: number.describe('measured: mean of the grain when it began'),
  speedMPerFanHour: number.describe(
    'm for a fan hour: speed of its front, by robust regression of fan hours on height',
  ),
  speedMPerFanHourInterval: interval,
  sensors: z.strictObject({
    passed: z.int().describe('counted: sensors that the front passed'),
    followed: z.int().describe('counted: where the grain followed the air without a front to date'),
    notReached: z.array(z.string()).describe('cable and sensor that it did not reach'),
    untold: z.int().describe('counted: sensors that cannot tell'),
  }),
  throughAfterFanHours: number.describe('h, until the last sensor that it passed'),
  throughAfterFanHoursInterval: interval,
  ranOnFanHours: number.describe('h, that the campaign ran on after that'),
  ranOnFanHoursInterval: interval,
  slowestPlace: z.string().nullable().describe('cable and sensor farthest behind the other cables at its height'),
  slowestBehindFanHours: number.describe('h behind them'),
  slowestBehindFanHoursInterval: interval,
  why,
});

const seasonCooling = z
  .strictObject({
    verdict: z.enum(['through', 'held', 'untold']).describe('whether the season’s cooling got through the bin'),
    campaign: z.int().nullable().describe('counted as in `fronts`: the one that tells it'),
    ranOnCost: number.describe('money: energy of the hours run on after it was through'),
    ranOnCostInterval: interval,
    ruleOfThumbHours: number.describe('h: the rule of thumb at the bin’s airflow'),
    ruleOfThumbHoursInterval: interval,
    handbookHours: number.describe('h: the handbook’s at the bin’s airflow, by season'),
    handbookHoursInterval: interval,
    why,
  })
  .describe('the season’s cooling of the bin, by its main campaign');

const moistureFront = z.strictObject({
  campaign: z.int().nullable().describe('counted as in `fronts`'),
  kind: z.enum(['drying', 'wetting']).nullable(),
  from: time,
  to: time,
  fanHours: number.describe('h, measured'),
  aheadPct: number.describe('measured: median of the sensors before it came'),
  behindPct: number.describe('measured: where the air enters, in the later half of the fan hours'),
  why,
});

const bin = z.strictObject({
  id: z.string(),
  crop: z.string(),
  goal: z.enum(['dry', 'cool', 'condition', 'hold']),
  grain,
  fan,
  usefulHours: USEFUL_SHAPE,
  moisture,
  layers: LAYERS_SHAPE,
  stages: STAGES_SHAPE,
  sensorsAndTickets: TICKETS_SHAPE,
  probes: PROBES_SHAPE,
  rates: z.array(RATE_SHAPE),
  ratesWhy: why,
  temperature: z.strictObject({ startC: number, startCInterval: interval, endC: number, endCInterval: interval, why }),
  water,
  costPerPoint,
  costPerPointAdded: costPerPoint,
  energyPerPoint: ENERGY_PER_POINT_SHAPE,
  airflow: z.strictObject({
    byPressureM3S: number.describe('m³/s'),
    byPressureM3SInterval: interval,
    byFrontM3S: number.describe('m³/s'),
    byFrontM3SInterval: interval,
    byModelM3S: number.describe('m³/s'),
    byModelM3SInterval: interval,
    cfmPerBushel: number,
    cfmPerBushelInterval: interval,
    from: z.enum(['model', 'front', 'pressure']).nullable(),
    fans: z.array(z.string()).describe('that ran: of two fans those that ran together for most of the hours'),
    agree: z.boolean().nullable(),
    why,
  }),
  fronts: z.array(front),
  frontsWhy: why,
  frontCampaigns: z.array(frontCampaign),
  seasonCooling,
  moistureFront,
  condition: CONDITION_SHAPE,
  model: z.strictObject({
    temperatureRmseC: number.describe('measured: root mean square of model less readings where it was judged'),
    moistureRmsePct: number.describe('measured: the same in points'),
    trusted: z.boolean().nullable(),
    why,
  }),
  comparison: COMPARISON_SHAPE,
});

const byModel = 'by the fitted model';
const strategy = z.strictObject({
  bin: z.string(),
  strategy: z.string(),
  weather: z.string().describe('season, or the year of the weather'),
  fanHours: number.describe(`h, ${byModel}`),
  energyKwh: number.describe(`kWh, ${byModel}`),
  cost: number.describe(`money, ${byModel}: the bin alone on its tariff, connected charges left out`),
  costInterval: interval.describe(DOUBTS),
  endMoisturePct: number.describe(`%, wet basis, mean of the bin, ${byModel}`),
  topMoisturePct: number.describe(`%, wet basis, ${byModel}`),
  bottomMoisturePct: number.describe(`%, wet basis, ${byModel}`),
  endTemperatureC: number.describe(`°C, mean of the bin, ${byModel}`),
  dryMatterLossPct: number.describe(`%, mean of the bin, ${byModel}`),
  storageLifeUsedPct: number.describe(`%, of the allowable storage time, worst layer, ${byModel}`),
  reachedTarget: z.boolean().nullable(),
  reachedOn: z.iso.date().nullable(),
  why,
});

const count = z.int().nonnegative().describe('counted');

/** `summary.json`, the one place that says what stands in it. */
export const SUMMARY_SHAPE = z.strictObject({
  season: z.string(),
  currency: z.string().describe('of every amount called money'),
  bins: z.array(bin),
  tariffs: z
    .array(TARIFF_MONTH_SHAPE)
    .describe('what each tariff charges its fans that have a log, by local month, fixed and minimum charges included'),
  bills: z.array(BILL_SHAPE).describe('the utility’s bills beside what the fans explain of them'),
  demand: z.array(DEMAND_SHAPE).describe('demand charges as run and as they might have been'),
  strategies: z.array(strategy),
  strategiesWhy: z.string().nullable().describe('why there are no strategies; null where there are'),
  crossed: CROSSED_SHAPE.describe('every bin’s way to run its fans on every bin’s grain, fan and air'),
  load: z.strictObject({
    rows: count,
    cells: count,
    missing: count,
    rejected: count,
    outside: count,
    flagged: z.strictObject({
      stuck: count,
      spike: count,
      headspace: count,
      duplicate: count,
      clock: count,
      unit: count,
    }),
  }),
});

export type Summary = z.infer<typeof SUMMARY_SHAPE>;
export type BinSummary = Summary['bins'][number];

/** The JSON Schema (draft 2020-12) of `summary.json`, written next to it. */
export function summaryJsonSchema(): object {
  return { title: 'summary.json of a fanbook review', ...z.toJSONSchema(SUMMARY_SHAPE) };
}
