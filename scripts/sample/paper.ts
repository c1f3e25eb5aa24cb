import { type BinRun, FT } from './bin-run.ts';
import { tenth, toF } from './cable-log.ts';
import { DAY, fromLocal, HOUR, isoDay, localClock, localText, MINUTE } from './calendar.ts';
import { addQuarter, demandMonths, energyPrice, monthOf, type QuarterLoads } from './charges.ts';
import type { FarmPlan, TariffPlan } from './farm-types.ts';
import { toWetBasis } from './kernels.ts';
import { randomStream } from './random.ts';

const LB = 0.45359237;
const csv = (rows: readonly (readonly (string | number)[])[]): string =>
  `${rows.map((row) => row.join(',')).join('\n')}\n`;

/** Scale tickets: net to 20 lb, moisture meter with its own error. */
export function ticketsCsv(runs: readonly BinRun[], seed: number): string {
  const random = randomStream(seed, 'tickets');
  const meterError = 0.1 * random.normal();
  const rows: { ms: number; cells: (string | number)[] }[] = [];
  const weigh = (ms: number, bin: string, way: string, kg: number, moisture: number) => {
    const lb = 20 * Math.round((kg / LB + 35 * random.normal()) / 20);
    rows.push({
      ms,
      cells: [localText(ms), bin, way, lb, tenth(moisture + meterError + 0.15 * random.normal()).toFixed(1)],
    });
  };
  for (const run of runs) {
    if (run.plan.weighedIn) for (const load of run.loads) weigh(load.atMs, run.plan.id, 'in', load.kg, load.moistureWb);
    if (!run.plan.weighedOut) continue;
    const emptied = fromLocal(run.plan.emptying[0].at);
    const moisture = toWetBasis(run.meanMoistureDb[Math.round((emptied - run.startMs) / (10 * MINUTE)) - 1]);
    // A little is lost in handling.
    const kg = (run.dryKg / (1 - moisture / 100)) * 0.998;
    const count = Math.round(kg / 24_000);
    for (let k = 0; k < count; k++) {
      const day = Math.floor((3 * k) / count);
      const at = emptied + day * DAY + (1 + k - Math.ceil((count * day) / 3)) * 70 * MINUTE;
      weigh(at, run.plan.id, 'out', kg / count, moisture + 0.2 * random.normal());
    }
  }
  rows.sort((a, b) => a.ms - b.ms);
  return csv([['date', 'bin', 'way', 'lb', 'mc'], ...rows.map((row) => row.cells)]);
}

/** Hand samples: on these days, at these heights, in the core and in the ring half-way out. */
export const PROBE_DAYS: Readonly<Record<string, readonly string[]>> = {
  B1: ['2024-10-07 10:00', '2024-11-18 14:00', '2025-04-14 10:00'],
  B2: ['2024-10-03 10:00', '2024-11-18 15:00'],
  B4: ['2024-09-30 10:00', '2024-11-25 10:00'],
};

export function probesCsv(runs: readonly BinRun[], seed: number): string {
  const random = randomStream(seed, 'probes');
  const rows: (string | number)[][] = [['date', 'bin', 'ft', 'r', 'mc', 't']];
  for (const run of runs) {
    for (const [ms, columns] of run.snapshots) {
      const layers = columns[0].moistureDb.length;
      for (const at of [0.9, 0.6, 0.3]) {
        for (const ring of [0, 3]) {
          const i = Math.min(layers - 1, Math.floor(at * layers));
          const { fromFt, toFt } = run.plan.columns[ring];
          rows.push([
            localText(ms),
            run.plan.id,
            tenth(((i + 0.5) * run.layerM) / FT),
            ring === 0 ? 0 : tenth((fromFt + toFt) / 2),
            tenth(toWetBasis(columns[ring].moistureDb[i]) + 0.2 * random.normal()).toFixed(1),
            Math.round(toF(columns[ring].tempC[i] + 0.4 * random.normal())),
          ]);
        }
      }
    }
  }
  return csv(rows);
}

/** Bills of whole local months: the fans and all else on the meter, by the whole tariff. */
export function billsCsv(
  farm: FarmPlan,
  fanLoads: ReadonlyMap<string, QuarterLoads>,
  months: readonly string[],
  seed: number,
): string {
  const rows: (string | number)[][] = [['from', 'to', 'tariff', 'kwh', 'kw', 'usd']];
  for (const tariff of farm.tariffs) {
    const meter = otherLoads(tariff, months, seed);
    for (const [ms, payers] of fanLoads.get(tariff.id)!)
      for (const [payer, kwh] of payers) addQuarter(meter, ms, payer, kwh);
    const demand = demandMonths(tariff, meter, months);
    const hp = farm.fans.filter((fan) => fan.tariff === tariff.id).reduce((sum, fan) => sum + fan.hp, 0);
    months.forEach((month, i) => {
      let kwh = 0;
      let usd = tariff.fixed + ((tariff.connectedPerHpYear ?? 0) * hp) / 12 + (demand[i]?.cost ?? 0);
      let peak = 0;
      for (const [ms, payers] of meter) {
        if (monthOf(ms) !== month) continue;
        const sum = [...payers.values()].reduce((total, one) => total + one, 0);
        kwh += sum;
        usd += sum * energyPrice(tariff, ms);
        peak = Math.max(peak, 4 * sum);
      }
      const from = fromLocal(`${month}-01`);
      const next = fromLocal(
        isoDay(new Date(localClock(from).getTime() + 32 * DAY))
          .slice(0, 8)
          .concat('01'),
      );
      const billed = demand[i]?.peakKw ?? peak;
      rows.push([
        `${month}-01`,
        isoDay(localClock(next)),
        tariff.id,
        Math.round(kwh),
        tenth(billed).toFixed(1),
        Math.max(tariff.minimum ?? 0, usd).toFixed(2),
      ]);
    });
  }
  return csv(rows);
}

/** Shop, well and yard light: a steady part, an afternoon part, some chance. */
function otherLoads(tariff: TariffPlan, months: readonly string[], seed: number): QuarterLoads {
  const random = randomStream(seed, `meter ${tariff.id}`);
  const loads: QuarterLoads = new Map();
  const last = months.at(-1)!;
  const end = fromLocal(`${last}-01`) + 32 * DAY;
  for (let ms = fromLocal(`${months[0]}-01`); ms < end; ms += HOUR / 4) {
    if (!months.includes(monthOf(ms))) continue;
    const hour = localClock(ms).getUTCHours();
    const kw = tariff.otherKw[0] + (hour >= 8 && hour < 18 ? tariff.otherKw[1] : 0.2) * random.uniform() * 1.4;
    addQuarter(loads, ms, 'other', kw / 4);
  }
  return loads;
}
