import { type BinRun, FT, STEP_MS } from './bin-run.ts';
import { type Reading, tenth, toF, within } from './cable-log.ts';
import { fromLocal } from './calendar.ts';
import type { Random } from './random.ts';

/** A fault put in on purpose, with what the review should say of it. */
export interface PlantedFault {
  /** kinds of the load report; `outside` is counted by file; `repeated-hour` must NOT raise a finding */
  kind:
    | 'stuck'
    | 'spike'
    | 'headspace'
    | 'duplicate'
    | 'clock'
    | 'unit'
    | 'gap'
    | 'silent'
    | 'reject'
    | 'meter-reset'
    | 'outside'
    | 'repeated-hour';
  /** `B1 C3 sensor 4`, `fan F1`, `logs/plenum-b2.csv` */
  where: string;
  bin: string | null;
  quantity: 'temperature' | 'moisture' | 'both' | null;
  fromMs: number;
  toMs: number;
  /** cells touched; for a gap the readings that are lacking; rows for rejects and duplicates */
  count: number;
  expect: string;
  /** spikes: each single reading */
  cells?: { cable: string; sensor: number; ms: number }[];
}

type Where = { bin: string; cable?: string; sensor?: number };

const picks = (one: Reading, where: Where): boolean =>
  one.bin === where.bin &&
  (where.cable === undefined || one.cable === where.cable) &&
  (where.sensor === undefined || one.sensor === where.sensor);

const nameOf = (where: Where): string =>
  [where.bin, where.cable, where.sensor === undefined ? undefined : `sensor ${where.sensor}`]
    .filter((part) => part !== undefined)
    .join(' ');

/** From its first reading in the span on the sensor repeats itself. */
export function stick(
  readings: readonly Reading[],
  where: Where,
  quantity: 'temperature' | 'moisture',
  from: string,
  to: string,
): PlantedFault {
  const key = quantity === 'temperature' ? 'temp' : 'moisture';
  const hit = readings.filter((one) => picks(one, where) && within(one.ms, from, to));
  for (const one of hit) one[key] = hit[0][key];
  return {
    kind: 'stuck',
    where: nameOf(where),
    bin: where.bin,
    quantity,
    fromMs: hit[0].ms,
    toMs: hit.at(-1)!.ms,
    count: hit.length,
    expect: `flagged stuck: the same ${quantity} for weeks while its neighbours move`,
  };
}

/** Single readings far off, never two in a row at one sensor. */
export function spike(
  readings: readonly Reading[],
  where: Where,
  quantity: 'temperature' | 'moisture',
  from: string,
  to: string,
  count: number,
  jumps: readonly [number, number],
  random: Random,
): PlantedFault {
  const key = quantity === 'temperature' ? 'temp' : 'moisture';
  const hit = readings.filter((one) => picks(one, where) && within(one.ms, from, to));
  const stride = Math.floor(hit.length / count);
  const cells: { cable: string; sensor: number; ms: number }[] = [];
  for (let k = 0; k < count; k++) {
    const one = hit[k * stride + random.integer(0, stride - Math.floor(stride / 3))];
    const size = jumps[0] + (jumps[1] - jumps[0]) * random.uniform();
    one[key] = tenth(one[key]! + (quantity === 'temperature' && random.uniform() < 0.4 ? -size : size));
    cells.push({ cable: one.cable, sensor: one.sensor, ms: one.ms });
  }
  return {
    kind: 'spike',
    where: nameOf(where),
    bin: where.bin,
    quantity,
    fromMs: cells[0].ms,
    toMs: cells.at(-1)!.ms,
    count,
    expect: `${count} single readings flagged spike`,
    cells,
  };
}

/** The cable hangs in the headspace from a day on: it follows the air under the roof, above what the bin holds. */
export function hangOut(readings: readonly Reading[], run: BinRun, cable: string, from: string): PlantedFault {
  const where = { bin: run.plan.id, cable };
  const hit = readings.filter((one) => picks(one, where) && one.ms >= fromLocal(from));
  for (const one of hit) {
    const step = Math.round((one.ms - run.startMs) / STEP_MS);
    // Lower sensors hang nearer the grain and swing a little less.
    const c = run.headspaceC[step] - 0.15 * (6 - one.sensor);
    one.temp = tenth(toF(c));
    const db = run.kernel.emc(run.headspaceRh[step], c);
    one.moisture = tenth((100 * db) / (100 + db));
  }
  return {
    kind: 'headspace',
    where: nameOf(where),
    bin: run.plan.id,
    quantity: 'both',
    fromMs: hit[0].ms,
    toMs: hit.at(-1)!.ms,
    count: 2 * hit.length,
    expect: 'flagged headspace: the whole cable swings with the day as the air under the roof does',
  };
}

/** Where a sensor hung above the level: nothing is changed, the truth is told. */
export function aboveLevel(readings: readonly Reading[], run: BinRun, endMs: number): PlantedFault[] {
  const levels = [
    ...run.plan.fills.map((one) => ({ ms: fromLocal(one.at), depthM: one.depthFt * FT })),
    ...run.plan.emptying.map((one) => ({ ms: fromLocal(one.at), depthM: one.depthFt * FT })),
  ];
  return run.sensors.flatMap((sensor) => {
    const where = { bin: run.plan.id, cable: sensor.cable, sensor: sensor.sensor };
    const out = readings.filter((one) => {
      // Before the first grain the bin is empty for every sensor: no fault, and `filled` says so.
      if (!picks(one, where) || one.ms >= endMs || one.ms < levels[0].ms) return false;
      return sensor.heightM >= levels.filter((level) => level.ms <= one.ms).at(-1)!.depthM;
    });
    if (out.length === 0) return [];
    return [
      {
        kind: 'headspace' as const,
        where: nameOf(where),
        bin: run.plan.id,
        quantity: 'both' as const,
        fromMs: out[0].ms,
        toMs: out.at(-1)!.ms,
        count: 2 * out.length,
        expect: 'flagged headspace: above the level by season.yaml',
      },
    ];
  });
}

/** Degrees Celsius written into a file of Fahrenheit. */
export function celsius(readings: readonly Reading[], where: Where, from: string, to: string): PlantedFault {
  const hit = readings.filter((one) => picks(one, where) && within(one.ms, from, to));
  for (const one of hit) one.temp = tenth((one.temp! - 32) / 1.8);
  return {
    kind: 'unit',
    where: nameOf(where),
    bin: where.bin,
    quantity: 'temperature',
    fromMs: hit[0].ms,
    toMs: hit.at(-1)!.ms,
    count: hit.length,
    expect: 'flagged unit: °C in a °F file for this stretch',
  };
}

/** Take readings out of a log; the rest is returned. */
export function cutOut<T extends { ms: number }>(
  rows: readonly T[],
  picked: (row: T) => boolean,
  from: string,
  to: string,
  where: string,
  bin: string | null,
): { kept: T[]; fault: PlantedFault } {
  const gone = rows.filter((row) => picked(row) && within(row.ms, from, to));
  const lost = new Set(gone);
  return {
    kept: rows.filter((row) => !lost.has(row)),
    fault: {
      kind: 'gap',
      where,
      bin,
      quantity: null,
      fromMs: gone[0].ms,
      toMs: gone.at(-1)!.ms,
      count: gone.length,
      expect: 'a gap of days, told with its length; no fan time is made up for it',
    },
  };
}
