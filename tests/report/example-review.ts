// A season made by hand: the pages are tried on it. No number here is claimed to be right; they only have to be consistent enough to be read.
import { missing } from '../../src/analysis/airflow/bin-airflow.ts';
import { billShares } from '../../src/analysis/energy/bill-shares.ts';
import { staggeredDemand } from '../../src/analysis/energy/staggered-demand.ts';
import { failedBin } from '../../src/analysis/failed-bin.ts';
import type { BinReview, FanSeason, FanSpans, MomentMean, SeasonReview } from '../../src/analysis/types.ts';
import { missingWater } from '../../src/analysis/water/bin-water.ts';
import { estimate, withheld } from '../../src/base/estimate.ts';
import type { NotebookInput } from '../../src/notebook.ts';
import { Units } from '../../src/report/units.ts';
import type { Finding, LoadedSeason } from '../../src/season/loaded.ts';
import type { Bin, Season } from '../../src/season/season.ts';
import { type RawColumn, type TextColumn, toArrow } from '../../src/tables/arrow.ts';
import { TABLES, type TableName } from '../../src/tables/columns.ts';

const HOUR = 3_600_000;
const DAY = 24 * HOUR;
// 00:00 on 4 October 2024 in Chicago
const START = Date.UTC(2024, 9, 4, 5);
const DAYS = 150;
const HEIGHTS = [0.6, 1.5, 2.4, 3.4, 4.3, 5.2];

function bin(id: string, name: string, goal: Bin['goal'], crop: string): Bin {
  return {
    id,
    name,
    diameterM: 10.97,
    eaveHeightM: 6.4,
    openFloor: 1,
    grain: {
      crop,
      depthSteps: [{ fromMs: Number.NEGATIVE_INFINITY, depthM: 6.1 }],
      bulkDensityKgM3: 721,
      bulkDensityFrom: 'crop',
      moistureInWb: null,
      moistureOutWb: null,
      isotherm: null,
      targetMoistureWb: 0.15,
      targetTempC: 4.4,
      filledMs: START,
      unloadedMs: START + DAYS * DAY,
    },
    goal,
    air: 'up',
    airflowFactor: 1.5,
    airflowFactorFrom: 'crop',
    managedAs: 'dry-air window',
    strategy: null,
    fanIds: [`F${id.slice(1)}`],
    cables: ['C1', 'C5'].map((cable, i) => ({
      id: cable,
      fromCentreM: i === 0 ? 2.7 : 0,
      bearingDeg: 0,
      sensorHeightsM: HEIGHTS,
    })),
  };
}

/** Fan on from 10:00 to 22:00 on two days of three for 60 days, with ten days unknown after. */
function spans(): FanSpans {
  const list: [number, number, number][] = [];
  for (let day = 0; day < 60; day++) {
    const from = START + day * DAY;
    if (day % 3 === 2) list.push([from, from + DAY, 0]);
    else
      list.push(
        [from, from + 10 * HOUR, 0],
        [from + 10 * HOUR, from + 22 * HOUR, 1],
        [from + 22 * HOUR, from + DAY, 0],
      );
  }
  list.push([START + 60 * DAY, START + 70 * DAY, 2], [START + 70 * DAY, START + DAYS * DAY, 0]);
  return {
    startMs: Float64Array.from(list, (one) => one[0]),
    endMs: Float64Array.from(list, (one) => one[1]),
    state: Uint8Array.from(list, (one) => one[2]),
    powerW: Float64Array.from(list, (one) => [0, 12_000, Number.NaN][one[2]]),
  };
}

function fanSeason(fanId: string): FanSeason {
  return {
    fanId,
    runsFrom: 'current',
    energyFrom: 'current',
    spans: spans(),
    onHours: 480,
    unknownHours: 240,
    starts: 40,
    energyKwh: 5760,
    energyRelSd: 0.04,
    how: 'on above 4 A, stated; power is √3 · 230 V · current · 0.85',
  };
}

function moment(value: number, day: number, fanOn: number): MomentMean {
  const window = { fromMs: START + day * DAY, toMs: START + (day + 1) * DAY };
  return { value, window, stillAir: true, readings: 144, sensors: 12, fanOn };
}

function wholeBin(of: Bin, scale: number, dry: boolean): BinReview {
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
function silentBin(of: Bin): BinReview {
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

function text(values: readonly string[]): TextColumn {
  const unique = [...new Set(values)];
  return { codes: Int32Array.from(values, (value) => unique.indexOf(value)), values: unique };
}

/** A table from rows; columns that a row leaves out are empty. */
function table(name: TableName, rows: readonly Readonly<Record<string, string | number>>[]) {
  const columns: Record<string, RawColumn> = {};
  for (const def of TABLES[name]) {
    const of = rows.map((row) => row[def.name]);
    if (def.type === 'text') columns[def.name] = text(of.map((value) => String(value ?? '')));
    else if (def.type === 'integer') columns[def.name] = Int16Array.from(of, (value) => Number(value ?? 0));
    else if (def.type === 'flags') columns[def.name] = Uint8Array.from(of, (value) => Number(value ?? 0));
    else columns[def.name] = Float64Array.from(of, (value) => Number(value ?? Number.NaN));
  }
  return toArrow(name, columns);
}

function readings(bins: readonly string[]) {
  const rows: Record<string, string | number>[] = [];
  for (let hour = 0; hour < DAYS * 24; hour += 3) {
    const day = hour / 24;
    if (day > 90 && day < 95) continue;
    for (const [b, id] of bins.entries()) {
      for (const [c, cable] of ['C1', 'C5'].entries()) {
        HEIGHTS.forEach((height_m, i) => {
          const front = Math.min(1, Math.max(0, (day - 10 - i * 3 - c * 2) / 6));
          rows.push({
            time: START + hour * HOUR,
            bin: id,
            cable,
            sensor: i + 1,
            height_m,
            temp_c: 18 - 14 * front + b + Math.sin(day / 9 + i),
            moisture_wb: 0.179 - 0.023 * Math.min(1, Math.max(0, (day - i * 6) / 30)),
            temp_flags: i === 5 && day > 120 ? 4 : 0,
            moisture_flags: i === 5 && day > 120 ? 4 : 0,
            file: 'logs/cables.csv',
          });
        });
      }
    }
  }
  return table('readings', rows);
}

const FINDINGS: Finding[] = [
  {
    kind: 'stuck',
    where: 'B1 C5 sensor 3',
    binId: 'B1',
    fromMs: START + 20 * DAY,
    toMs: START + 26 * DAY,
    cells: 144,
    text: 'B1 C5 sensor 3 kept 61.2 °F for 144 hours while its neighbours moved.',
    advice: 'Check the sensor and its lead.',
  },
  {
    kind: 'gap',
    where: 'logs/cables.csv',
    binId: null,
    fromMs: START + 90 * DAY,
    toMs: START + 95 * DAY,
    cells: 960,
    text: 'No cable was read for 5 days; 960 readings are lacking.',
    advice: null,
  },
  {
    kind: 'clock',
    where: 'logs/plenum.csv',
    binId: null,
    fromMs: START,
    toMs: START + DAYS * DAY,
    cells: 0,
    text: 'logs/plenum.csv keeps standard time all year.',
    advice: 'State `time_zone: local standard` for the file.',
  },
];

/** The example, in US units unless told otherwise; names can be replaced to try hostile ones. */
export function exampleInput(options: { units?: 'us' | 'si'; names?: readonly string[] } = {}): NotebookInput {
  const names = options.names ?? ['North 36', 'South 30', 'Old wooden bin', 'East 42'];
  const bins = [
    bin('B1', names[0], 'dry', 'corn'),
    bin('B2', names[1], 'dry', 'wheat'),
    bin('B3', names[2], 'cool', 'soybean'),
    bin('B4', names[3], 'condition', 'soybean'),
  ];
  const season: Season = {
    title: 'Harvest 2024',
    folder: '/nowhere',
    startsMs: START,
    endsMs: START + DAYS * DAY,
    preparedFor: 'Larkspur Flats',
    preparedBy: null,
    site: { latitudeDeg: 42.1, longitudeDeg: -94, elevationM: 320, timeZone: 'America/Chicago' },
    showUnits: options.units ?? 'us',
    currency: 'USD',
    tariffs: [],
    prices: {},
    dryingAlternative: null,
    bins,
    fans: [
      {
        id: 'F1',
        nameplateW: 11_185,
        supply: null,
        load: null,
        motorEfficiency: null,
        runningAboveA: null,
        tariffId: 'rural-tou',
        curve: null,
        heater: null,
      },
    ],
    sensors: {
      temperature: { accuracyK: null, noiseK: null, biasK: null },
      moisture: { accuracyWb: null, noiseWb: null, biasWb: null, isotherm: null },
    },
    files: [],
  };
  const fanRows = Array.from({ length: DAYS * 24 }, (_, hour) => ({
    time: START + hour * HOUR,
    fan: 'F1',
    current_a: 30,
  }));
  const weather = Array.from({ length: DAYS * 24 }, (_, hour) => ({
    time: START + hour * HOUR,
    role: 'season',
    temp_c: 8,
  }));
  const tables: LoadedSeason['tables'] = {
    readings: readings(['B1', 'B2']),
    fan: table('fan', fanRows),
    plenum: table('plenum', []),
    weather: table('weather', weather),
    tickets: table('tickets', []),
    probes: table('probes', []),
    bills: table('bills', [
      { from: START - 3 * DAY, to: START + 28 * DAY, tariff: 'rural-tou', energy_j: 9000 * 3.6e6, amount: 1140.2 },
      { from: START + 28 * DAY, to: START + 58 * DAY, tariff: 'rural-tou' },
    ]),
  };
  const file = { holds: 'grain', role: 'season', bytes: 1_204_331, sha256: 'ab'.repeat(32) } as const;
  const loaded: LoadedSeason = {
    season,
    tables,
    load: {
      files: [
        {
          ...file,
          path: 'logs/cables.csv',
          rows: 28_416,
          cells: 56_832,
          kept: 56_800,
          missing: 20,
          rejected: 12,
          outside: 0,
          firstMs: START,
          lastMs: START + DAYS * DAY,
        },
        {
          ...file,
          path: 'logs/empty.csv',
          rows: 0,
          cells: 0,
          kept: 0,
          missing: 0,
          rejected: 0,
          outside: 0,
          firstMs: null,
          lastMs: null,
        },
      ],
      rejects: [{ file: 'logs/cables.csv', line: 812, column: 'T', text: '<b>4O.1</b>', reason: 'is no number' }],
      findings: FINDINGS,
      totals: {
        rows: 28_416,
        cells: 56_832,
        missing: 20,
        rejected: 12,
        outside: 0,
        flagged: { stuck: 144, spike: 0, headspace: 960, duplicate: 0, clock: 0, unit: 0 },
      },
    },
  };
  const review: SeasonReview = {
    bins: [
      wholeBin(bins[0], 1, true),
      wholeBin(bins[1], 1.7, true),
      silentBin(bins[2]),
      failedBin(bins[3], 'the shares of its cables do not add up.'),
    ],
    fans: [fanSeason('F1')],
    tariffMonths: ['2024-10', '2024-11'].map((month, i) => ({
      tariffId: 'rural-tou',
      month,
      energyKwh: [7000, 7780][i],
      energyCost: [680, 756][i],
      demand: [{ peakKw: 24, billedKw: 24, atMs: START + (3 + 30 * i) * DAY + 11 * HOUR, cost: 228 }],
      fixed: 38,
      connected: 15,
      minimumTopUp: 0,
      total: [961, 1037][i],
    })),
    bills: billShares(season, tables.bills, [fanSeason('F1')]),
    demandWays: staggeredDemand(season, [fanSeason('F1')]),
  };
  return {
    loaded,
    review,
    units: new Units(season.showUnits, season.currency, season.site.timeZone),
    made: {
      seasonTitle: season.title,
      farm: season.preparedFor,
      command: 'npm run review -- my-season',
      version: '0.1.0',
      generatedAtMs: Date.UTC(2025, 4, 1, 12),
      inputs: loaded.load.files,
      changedDefaults: ['airflow factor of North 36: 1.5'],
    },
  };
}
