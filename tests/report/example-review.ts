// A season made by hand: the pages are tried on it. No number here is claimed to be right; they only have to be consistent enough to be read.
import { billShares } from '../../src/analysis/energy/bill-shares.ts';
import { staggeredDemand } from '../../src/analysis/energy/staggered-demand.ts';
import { failedBin } from '../../src/analysis/failed-bin.ts';
import type { SeasonReview } from '../../src/analysis/types.ts';
import type { NotebookInput } from '../../src/notebook.ts';
import { Units } from '../../src/report/units.ts';
import type { LoadedSeason } from '../../src/season/loaded.ts';
import type { Season } from '../../src/season/season.ts';
import { silentBin, wholeBin } from './example-bin.ts';
import { FINDINGS, readings, table } from './example-load.ts';
import { bin, DAY, DAYS, fanSeason, HOUR, START } from './example-season.ts';

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
