import { humidityRatio } from '../../../src/air/humidity-ratio.ts';
import type { SweepBin } from '../../../src/analysis/strategies/group-spec.ts';
import type { OutdoorAir } from '../../../src/analysis/strategies/outdoor-air.ts';
import type { SweepPlan } from '../../../src/analysis/strategies/sweep-plan.ts';
import { AS_IT_IS } from '../../../src/analysis/strategies/variant.ts';
import { yearSpec } from '../../../src/analysis/strategies/weather-years.ts';
import { localDayStart, zoneOf } from '../../../src/base/zone.ts';
import type { Tariff } from '../../../src/money/tariff.ts';
import type { RunSpec } from '../../../src/simulation/run/run-spec.ts';
import { STRATEGIES } from '../../../src/simulation/strategies/strategies.ts';
import { bareSpec } from './bare-spec.ts';

const ZONE = zoneOf('America/Chicago');
const HOUR_MS = 3_600_000;
const PRESSURE_PA = 98_000;

/** Energy by night and day, and a demand charge by day. */
export const MADE_TARIFF: Tariff = {
  id: 'made',
  energy: [
    { pricePerKwh: 0.074, when: { months: null, days: null, hours: [[22 * 60, 6 * 60]] } },
    { pricePerKwh: 0.109, when: null },
  ],
  demand: [{ pricePerKw: 8, when: { months: null, days: null, hours: [[7 * 60, 22 * 60]] }, ratchet: 0.6 }],
  fixedPerMonth: null,
  connectedPerHpYear: null,
  minimumPerMonth: null,
};

/** A farm to sweep, from no file: how many bins, years and days. */
export interface MadeFarm {
  plan: SweepPlan;
  bins: SweepBin[];
  air: OutdoorAir;
}

/** Hourly weather of the autumns of `years` years up to 2024, with days, spells and years that differ. */
export function madeAir(years: number): OutdoorAir {
  const first = localDayStart(ZONE, 2025 - years, 9, 1);
  const count = Math.round((localDayStart(ZONE, 2025, 6, 1) - first) / HOUR_MS);
  const timeMs = Float64Array.from({ length: count }, (_, i) => first + i * HOUR_MS);
  const year = (ms: number) => (2 * Math.PI * ms) / (365.2425 * 24 * HOUR_MS);
  const tempC = timeMs.map(
    (ms, i) =>
      10 -
      14 * Math.cos(year(ms) - 0.35) +
      5 * Math.sin((2 * Math.PI * (ms / HOUR_MS - 15)) / 24) +
      4 * Math.sin(i / 29) +
      3 * Math.sin(i / 211),
  );
  const ratio = timeMs.map((ms, i) => {
    const rh = 0.7 - 0.17 * Math.sin((2 * Math.PI * (ms / HOUR_MS - 15)) / 24) + 0.13 * Math.sin(i / 61 + i / 5003);
    return humidityRatio(tempC[i], Math.min(0.99, rh), PRESSURE_PA);
  });
  return { timeMs, tempC, humidityRatio: ratio, hourMean: new Uint8Array(count), typical: [] };
}

/** As many as beds fitted to logs have at most: a core, a side that is short of air, and the rest. Of the floor; over the mean. */
const COLUMNS = { areaShares: [1 / 16, 7 / 16, 1 / 2], airShares: [0.8, 0.95, 1.06875] };

interface MadeBeds {
  days: number;
  layers: number;
  /** in columns whose air differs; one column when left out */
  uneven?: boolean;
}

/** A bin of corn filled at 17:00 on a day of October 2024, `days` long. */
function madeSpec(air: OutdoorAir, day: number, startWb: number, { days, layers, uneven }: MadeBeds): RunSpec {
  const startMs = localDayStart(ZONE, 2024, 10, day) + 17 * HOUR_MS;
  const bare = bareSpec({
    ...{ startMs, count: 24 * days, depthM: 5, layers, tempC: 14, moistureWb: startWb, pressurePa: PRESSURE_PA },
    blower: { airM3M2S: 0.067, heaterK: 3, heaterW: 24_000 },
  });
  const made = uneven === true ? { ...bare, bed: { ...bare.bed, ...COLUMNS } } : bare;
  const { spec, why } = yearSpec(made, air, { zone: ZONE, tariff: MADE_TARIFF }, 2024);
  if (spec === null) throw new Error(why);
  return spec;
}

export function madeFarm(
  options: MadeBeds & { bins: number; years: number; strategies?: readonly string[] },
): MadeFarm {
  const { bins, years, strategies = STRATEGIES.map(({ id }) => id) } = options;
  const air = madeAir(years);
  const weathers = ['season', ...Array.from({ length: years - 1 }, (_, i) => String(2025 - years + i))];
  const names = Array.from({ length: bins }, (_, i) => `B${i + 1}`);
  return {
    air,
    plan: {
      format: 1,
      kit: { version: '0', code: '' },
      season: { title: 'Made', sha256: '', currency: 'USD' },
      strategies,
      variants: [AS_IT_IS],
      by: [],
      bins: names.map((id) => ({ id, name: id, bushels: 11_000, startOn: '2024-10-01', weathers })),
    },
    bins: names.map((_, i) => ({
      site: { zone: ZONE, tariff: MADE_TARIFF },
      spec: madeSpec(air, 1 + i, 0.18 + 0.002 * i, options),
      why: null,
      logged: null,
    })),
  };
}
