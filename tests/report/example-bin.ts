import { missing } from '../../src/analysis/airflow/bin-airflow.ts';
import { failedBin } from '../../src/analysis/failed-bin.ts';
import type { BinReview, MomentMean } from '../../src/analysis/types.ts';
import { missingWater } from '../../src/analysis/water/bin-water.ts';
import { estimate, withheld } from '../../src/base/estimate.ts';
import type { Bin } from '../../src/season/season.ts';
import { kept } from '../analysis/condition/kept-bin.ts';
import { DAY, DAYS, fanSeason, HEIGHTS, HOUR, START, spans } from './example-season.ts';

function moment(value: number, day: number, fanOn: number): MomentMean {
  const window = { fromMs: START + day * DAY, toMs: START + (day + 1) * DAY };
  return { value, window, stillAir: true, readings: 144, sensors: 12, fanOn };
}

/** A bin of which all is told. @param scale  of its airflow, hours and money */
export function wholeBin(of: Bin, scale: number, dry: boolean): BinReview {
  const shares = ['C1', 'C5'].flatMap((cable, c) =>
    HEIGHTS.map((heightM, i) => ({
      cable,
      sensor: i + 1,
      heightM,
      share: 1 / 12,
      startWb: 0.178 + 0.002 * c,
      endWb: 0.148 + 0.003 * i + 0.004 * c,
      startC: 18,
      endC: 2 + i,
    })),
  );
  const no = withheld(`Its goal is ${of.goal}; a cost per point is given for drying alone.`);
  return {
    bin: of,
    failure: null,
    grain: {
      dryMatterKg: 340_000,
      weightKg: 413_000,
      volumeM3: 577,
      bushels: 16_260,
      volumeBushels: 16_370,
      depthM: 6.1,
      why: null,
    },
    fan: {
      fans: [fanSeason(of.fanIds[0])],
      spans: spans(),
      hours: estimate(480 * scale, 480 * scale, 720 * scale),
      unknownHours: 240,
      starts: 40,
      energyKwh: estimate(5760 * scale, 5400 * scale, 6120 * scale),
      energyFrom: 'current',
      energyFromHow: 'Its energy is from logged current.',
      energyCost: estimate(560 * scale, 523 * scale, 597 * scale),
      demandCost: estimate(228 * scale, 210 * scale, 246 * scale),
      connectedCost: estimate(90, 90, 90),
      heatCost: estimate(0, 0, 0),
      cost: estimate(878 * scale, 823 * scale, 933 * scale),
      kwhPerBushel: estimate(0.354 * scale, 0.33 * scale, 0.38 * scale),
      costPerBushel: estimate(0.054 * scale, 0.0506 * scale, 0.0574 * scale),
      why: '240 hours of the fan log are not known.',
      months: ['2024-10', '2024-11', '2024-12'].map((month, i) => ({
        month,
        hours: [216, 240, 24][i] * scale,
        unknownHours: [0, 0, 240][i],
        energyKwh: [2592, 2880, 288][i] * scale,
        energyCost: [252, 280, 28][i] * scale,
        demandCost: [114, 114, 0][i] * scale,
      })),
    },
    moisture: {
      start: moment(0.179, 1, 0.176),
      end: moment(0.156, 148, 0.152),
      pointsRemoved: estimate(2.3, 2.02, 2.58),
      perHundredFanHours: estimate(0.48, 0.3, 0.54),
      shares,
      errorParts: [
        { cause: 'spread between cables', sd: 0.14 },
        { cause: 'noise of readings', sd: 0.03 },
      ],
      degreesOfFreedom: 7.4,
      cables: [
        { cable: 'C1', points: 2.4, weight: 0.6 },
        { cable: 'C5', points: 2.1, weight: 0.4 },
      ],
      overdryingLossBushels: estimate(0, 0, 40),
      overdryingLoss: estimate(0, 0, 174),
      daily: Array.from({ length: DAYS }, (_, day) => {
        const mean = day > 90 && day < 95 ? null : 0.179 - 0.023 * Math.min(1, day / 60);
        const half = day < 60 && day % 3 !== 2 ? 0.005 : 0.0025;
        return {
          dayMs: START + day * DAY,
          mean,
          low: mean === null ? null : mean - half,
          high: mean === null ? null : mean + half,
          stillAir: day >= 60 || day % 3 === 2,
          fanHours: day < 60 && day % 3 !== 2 ? 12 : 0,
        };
      }),
      notes: ['1 of 13 sensors is left out, for want of believable readings.'],
      why: null,
    },
    condition: kept({
      days: DAYS,
      crop: of.grain.crop,
      tempC: (heightM, day) => Math.max(2, 18 - 0.2 * day + heightM / 2),
      moistureWb: (heightM, day) => 0.179 - 0.023 * Math.min(1, day / 60) + 0.002 * heightM,
      outdoorC: (day) => 12 - 0.1 * day,
    }),
    temperature: {
      start: { ...moment(18.2, 1, 17.9) },
      end: { ...moment(4.1, 148, 3.9) },
      why: null,
    },
    unitCosts: {
      costPerPoint: dry ? estimate(382 * scale, 330 * scale, 445 * scale) : no,
      perBushelPoint: dry ? estimate(0.0235 * scale, 0.0203 * scale, 0.0274 * scale) : no,
      costPerPointAdded: withheld('Its goal is not condition.'),
      perBushelPointAdded: withheld('Its goal is not condition.'),
      why: null,
      whyAdded: 'Its goal is not condition.',
    },
    airflow: {
      ...missing('No static pressure was logged while a fan ran.'),
      byFront: estimate(6.1 * scale, 5.2 * scale, 7.1 * scale),
      byPressure: estimate(6.6 * scale, 5.4 * scale, 8 * scale),
      flowM3S: estimate(6.1 * scale, 5.2 * scale, 7.1 * scale),
      cfmPerBushel: estimate(0.79 * scale, 0.67 * scale, 0.92 * scale),
      hpPerThousandBushels: 0.92,
      from: 'front',
      agree: true,
      fanSet: of.fanIds.join('+'),
      why: null,
    },
    water: {
      ...missingWater('There are no scale tickets of this bin.'),
      bySensors: estimate(12_400 * scale, 10_900 * scale, 13_900 * scale),
      byAir: estimate(11_000 * scale, 8000 * scale, 14_100 * scale),
      byAirBetween: estimate(11_000 * scale, 8000 * scale, 14_100 * scale),
      agree: true,
      why: 'There are no scale tickets of this bin.',
    },
    fronts: {
      campaigns: [
        {
          number: 1,
          kind: 'cooling',
          span: { fromMs: START + 10 * DAY, toMs: START + 24 * DAY },
          fanHours: 120,
          airC: 8,
          grainC: 18,
          airFrom: 'plenum',
          arrivals: ['C1', 'C5'].flatMap((cable, c) =>
            HEIGHTS.map((heightM, i) => {
              const fanHours = c === 1 && i > 3 ? null : 6 + i * 11 + c * i * 9;
              return {
                cable,
                sensor: i + 1,
                heightM,
                arrivedMs: fanHours === null ? null : START + 10 * DAY + fanHours * 2 * HOUR,
                fanHours,
                aheadC: fanHours === null ? null : 18,
                behindC: fanHours === null ? null : 9,
                why: fanHours === null ? 'The campaign ended before the front came by.' : null,
              };
            }),
          ),
        },
      ],
      why: null,
    },
  };
}

/** A bin of which no log says anything. */
export function silentBin(of: Bin): BinReview {
  const broken = failedBin(of, 'x');
  const why = 'No log mentions this bin.';
  const none = withheld(why);
  const estimates = (block: object) =>
    Object.fromEntries(
      Object.entries(block).map(([key, value]) => [
        key,
        typeof value === 'object' && value !== null && 'interval' in value ? none : value,
      ]),
    );
  return {
    ...broken,
    failure: null,
    grain: { ...broken.grain, why },
    fan: { ...broken.fan, ...estimates(broken.fan), why },
    moisture: { ...broken.moisture, ...estimates(broken.moisture), why },
    temperature: { ...broken.temperature, why },
    unitCosts: { ...broken.unitCosts, ...estimates(broken.unitCosts), why, whyAdded: why },
    fronts: { campaigns: [], why },
    airflow: missing(why),
    water: missingWater(why),
  };
}
