import { mkdtempSync, readFileSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, beforeAll, expect, it } from 'vitest';
import { madeFarm } from '../../../scripts/bench/sweep/made-farm.ts';
import { rowsOfArrow } from '../../../scripts/sweep/rows-arrow.ts';
import { sweepOptions } from '../../../scripts/sweep/sweep-options.ts';
import type { SweepRow } from '../../../src/analysis/strategies/sweep-columns.ts';
import type { SweepSummary } from '../../../src/analysis/strategies/sweep-summary.ts';
import { sweepInto } from './sweep-of.ts';

let dir: string;
let rows: SweepRow[];
let told: SweepSummary;

// Three years of a bin that gets there, everything moved that --vary all moves.
beforeAll(async () => {
  dir = mkdtempSync(join(tmpdir(), 'vary-'));
  const farm = madeFarm({ bins: 1, years: 3, days: 100, layers: 8, strategies: ['always-on', 'as-logged'] });
  farm.plan = { ...farm.plan, variants: sweepOptions({ vary: 'all' }).variants };
  await sweepInto(dir, farm);
  rows = rowsOfArrow(readFileSync(join(dir, 'strategies.arrow')));
  told = JSON.parse(readFileSync(join(dir, 'sweep.json'), 'utf8'));
}, 120_000);
afterAll(() => rmSync(dir, { recursive: true, force: true }));

const hoursBy = (key: 'airflowFactor' | 'startPoints' | 'fillDays', weather: string) => {
  const others = ['airflowFactor', 'startPoints', 'fillDays'].filter((one) => one !== key);
  const still = (row: SweepRow) => others.every((one) => row[one] === (one === 'airflowFactor' ? 1 : 0));
  return rows
    .filter((row) => row.strategy === 'always-on' && row.weather === weather && still(row))
    .sort((a, b) => Number(a[key]) - Number(b[key]))
    .map((row) => ({
      at: Number(row[key]),
      hours: Number(row.fanHours),
      kw: Number(row.energyKwh) / Number(row.fanHours),
    }));
};
/** Steps that the season's end cuts off are alike. */
const rises = (values: readonly number[]) =>
  values.every((value, i) => i === 0 || value >= values[i - 1]) && values[values.length - 1] > values[0];

it('--vary all moves one thing at a time, in a row for each step, year and strategy', () => {
  expect(rows).toHaveLength(3 * 14 * 2);
  expect(rows.filter((row) => row.strategy === 'always-on' && row.fanHours === null)).toEqual([]);
  expect(rows.filter((row) => row.strategy === 'as-logged').every((row) => String(row.why).includes('log'))).toBe(true);
});

it.each(['season', '2022', '2023'])(
  'more air is done sooner and takes more power; wetter grain takes longer: %s',
  (weather) => {
    const air = hoursBy('airflowFactor', weather);
    expect(air.map(({ at }) => at)).toEqual([0.5, 0.75, 1, 1.25, 1.5, 2]);
    expect(rises(air.map(({ hours }) => -hours))).toBe(true);
    expect(rises(air.map(({ kw }) => kw))).toBe(true);
    const wetter = hoursBy('startPoints', weather);
    expect(wetter.map(({ at }) => at)).toEqual([-2, -1, 0, 1, 2]);
    expect(rises(wetter.map(({ hours }) => hours))).toBe(true);
    expect(hoursBy('fillDays', weather).map(({ at }) => at)).toEqual([-14, -7, 0, 7, 14]);
  },
);

it('sweep.json pairs each step with the bin as it is in the same years', () => {
  const steps = told.sensitivity.filter(({ strategy }) => strategy === 'always-on');
  expect(steps.map(({ varied, step }) => `${varied} ${step}`)).toHaveLength(13);
  const twice = steps.find(({ varied, step }) => varied === 'airflow' && step === 2);
  const cost = (factor: number) =>
    rows
      .filter(
        (row) =>
          row.strategy === 'always-on' && row.airflowFactor === factor && row.fillDays === 0 && row.startPoints === 0,
      )
      .reduce((sum, row) => sum + Number(row.cost), 0);
  expect(twice?.years).toBe(3);
  expect(twice?.costChange).toBeCloseTo((cost(2) - cost(1)) / 3, 6);
  expect(told.airflowLaw).toMatch(/D272\.3/);
});
