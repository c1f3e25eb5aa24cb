import { type Zone, zoneOf } from '../base/zone.ts';
import type { LoadedSeason } from '../season/loaded.ts';
import { type SensorSeries, sensorSeries } from '../tables/sensors.ts';
import { comparisonSummary } from './compare/comparison-summary.ts';
import { conditionSummary } from './condition/condition-summary.ts';
import { billsSummary, demandSummary, energyPerPointSummary, tariffSummary } from './energy/money-summary.ts';
import { frontsSummary } from './fronts/fronts-summary.ts';
import { layersSummary } from './moisture/layers-summary.ts';
import { stagesSummary } from './moisture/stages-summary.ts';
import { ticketsSummary } from './moisture/tickets-summary.ts';
import { probesSummary } from './probes/probes-summary.ts';
import { ratesSummary } from './rates/rates-summary.ts';
import { both, pair, plain, reason } from './summary-numbers.ts';
import type { BinSummary, Summary } from './summary-shape.ts';
import type { BinReview, SeasonReview } from './types.ts';
import { usefulSummary } from './useful/useful-summary.ts';
import { crossedSummary } from './what-if/crossed-summary.ts';
import { modelSummary, strategiesSummary } from './what-if/what-if-summary.ts';

function binSummary(
  review: BinReview,
  series: readonly SensorSeries[],
  zone: Zone,
  latitudeDeg: number | null,
): Omit<BinSummary, 'comparison' | 'model'> {
  const { bin, grain, fan, moisture, temperature, unitCosts, airflow, water } = review;
  return {
    id: bin.id,
    crop: bin.grain.crop,
    goal: bin.goal,
    grain: {
      dryMatterKg: plain(grain.dryMatterKg),
      dryMatterKgInterval: pair(grain.dryMatterKgInterval),
      volumeM3: plain(grain.volumeM3),
      bushels: plain(grain.bushels),
      bushelsInterval: pair(grain.bushelsInterval),
      from: grain.from ?? null,
      depthM: plain(grain.depthM),
      why: grain.why,
    },
    fan: {
      ...both('hours', fan.hours),
      unknownHours: plain(fan.unknownHours),
      starts: fan.starts,
      ...both('energyKwh', fan.energyKwh),
      energyFrom: fan.energyFrom,
      ...both('energyCost', fan.energyCost),
      ...both('demandCost', fan.demandCost),
      ...both('connectedCost', fan.connectedCost),
      ...both('heatCost', fan.heatCost),
      heaters: (fan.heaters ?? []).map(({ fanId, fuel, hours, hoursFrom, used, unit }) => ({
        fan: fanId,
        fuel,
        ...both('hours', hours),
        hoursFrom,
        ...both('used', used),
        unit,
        why: reason(null, hours, used),
      })),
      ...both('cost', fan.cost),
      ...both('kwhPerBushel', fan.kwhPerBushel),
      ...both('costPerBushel', fan.costPerBushel),
      months: fan.months.map(({ told, ...one }) => ({
        month: one.month,
        hours: plain(one.hours),
        hoursInterval: pair(told?.hours.interval),
        unknownHours: plain(one.unknownHours),
        energyKwh: plain(one.energyKwh),
        energyKwhInterval: pair(told?.energyKwh.interval),
        energyCost: plain(one.energyCost),
        energyCostInterval: pair(told?.energyCost.interval),
        demandCost: plain(one.demandCost),
        demandCostInterval: pair(told?.demandCost.interval),
      })),
      why: reason(
        fan.why,
        fan.hours,
        fan.energyKwh,
        fan.energyCost,
        fan.demandCost,
        fan.connectedCost,
        fan.heatCost,
        fan.cost,
        fan.kwhPerBushel,
        fan.costPerBushel,
      ),
    },
    usefulHours: usefulSummary(review),
    moisture: {
      startPct: plain(moisture.start.value, 100),
      startPctInterval: pair(moisture.start.interval, 100),
      endPct: plain(moisture.end.value, 100),
      endPctInterval: pair(moisture.end.interval, 100),
      pointsRemoved: plain(moisture.pointsRemoved.value),
      interval: pair(moisture.pointsRemoved.interval),
      ...both('perHundredFanHours', moisture.perHundredFanHours),
      ...both('overdryingLossBushels', moisture.overdryingLossBushels),
      ...both('overdryingLoss', moisture.overdryingLoss),
      why: reason(
        moisture.why,
        moisture.pointsRemoved,
        moisture.perHundredFanHours,
        moisture.overdryingLossBushels,
        moisture.overdryingLoss,
      ),
    },
    ...ratesSummary(review),
    layers: layersSummary(review),
    stages: stagesSummary(review),
    sensorsAndTickets: ticketsSummary(review),
    probes: probesSummary(review),
    temperature: {
      startC: plain(temperature.start.value),
      startCInterval: pair(temperature.start.interval),
      endC: plain(temperature.end.value),
      endCInterval: pair(temperature.end.interval),
      why: temperature.why,
    },
    water: {
      ...both('bySensorsKg', water.bySensors),
      ...both('byAirKg', water.byAir),
      ...both('byTicketsKg', water.byTickets),
      agree: water.agree,
      why: reason(null, water.bySensors, water.byAir, water.byTickets),
    },
    costPerPoint: {
      value: plain(unitCosts.costPerPoint.value),
      interval: pair(unitCosts.costPerPoint.interval),
      ...both('perBushelPoint', unitCosts.perBushelPoint),
      why: reason(unitCosts.why, unitCosts.costPerPoint, unitCosts.perBushelPoint),
    },
    costPerPointAdded: {
      value: plain(unitCosts.costPerPointAdded.value),
      interval: pair(unitCosts.costPerPointAdded.interval),
      ...both('perBushelPoint', unitCosts.perBushelPointAdded),
      why: reason(unitCosts.whyAdded, unitCosts.costPerPointAdded, unitCosts.perBushelPointAdded),
    },
    energyPerPoint: energyPerPointSummary(review),
    airflow: {
      ...both('byPressureM3S', airflow.byPressure),
      ...both('byFrontM3S', airflow.byFront),
      ...both('byModelM3S', airflow.byModel),
      ...both('cfmPerBushel', airflow.cfmPerBushel),
      from: airflow.from,
      fans: airflow.fanSet === '' ? [] : airflow.fanSet.split('+'),
      agree: airflow.agree,
      why: reason(null, airflow.byFront, airflow.byPressure, airflow.cfmPerBushel, airflow.byModel),
    },
    ...frontsSummary(review, series, zone, latitudeDeg),
    condition: conditionSummary(review),
  };
}

/** Every headline number of a review, for programs: the contract's `summary.json`. */
export function summaryOf(loaded: LoadedSeason, review: SeasonReview): Summary {
  const series = sensorSeries(loaded.tables.readings);
  const zone = zoneOf(loaded.season.site.timeZone);
  const { rows, cells, missing, rejected, outside, flagged } = loaded.load.totals;
  return {
    season: loaded.season.title,
    currency: loaded.season.currency,
    bins: review.bins.map((one) => ({
      ...binSummary(one, series, zone, loaded.season.site.latitudeDeg),
      model: modelSummary(review, one.bin.id),
      comparison: comparisonSummary(review, one.bin.id),
    })),
    tariffs: tariffSummary(review),
    bills: billsSummary(review),
    demand: demandSummary(review),
    ...strategiesSummary(loaded, review),
    crossed: crossedSummary(review),
    load: { rows, cells, missing, rejected, outside, flagged: { ...flagged } },
  };
}
