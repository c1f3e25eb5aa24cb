import { mkdirSync, mkdtempSync, readFileSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { tableFromIPC } from 'apache-arrow';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { madeFarm } from '../../../scripts/bench/sweep/made-farm.ts';
import { mergeShards } from '../../../scripts/sweep/merge-shards.ts';
import { writeSweep } from '../../../scripts/sweep/write-sweep.ts';
import type { SweepSummary } from '../../../src/analysis/strategies/sweep-summary.ts';
import { strategySweptSection } from '../../../src/notebook/strategy-swept.ts';
import { Units } from '../../../src/report/units.ts';
import { bytesOf, sweepInto } from './sweep-of.ts';

const LIMITS = ['humidity-limit', 'humidity-limit with rh 60 %', 'humidity-limit with rh 85 %'];
const farmOf = (strategies: string[]) => madeFarm({ bins: 1, years: 2, days: 20, layers: 8, strategies });
const farm = farmOf([...LIMITS, 'best-in-hindsight']);
let dir: string;
const at = (name: string) => join(dir, name);

beforeAll(async () => {
  dir = mkdtempSync(join(tmpdir(), 'ways-'));
  for (const name of ['whole', 's1', 's2', 'merged']) mkdirSync(at(name));
  await sweepInto(at('whole'), farm);
}, 120_000);
afterAll(() => rmSync(dir, { recursive: true, force: true }));

describe('ways of one rule in a sweep', () => {
  it('stand side by side under their names, a drier limit with fewer hours', () => {
    const rows = tableFromIPC(readFileSync(join(at('whole'), 'strategies.arrow'))).toArray();
    for (const bin of new Set(rows.map((row) => row.bin))) {
      for (const weather of new Set(rows.map((row) => row.weather))) {
        const own = rows.filter(
          (row) => row.bin === bin && row.weather === weather && !row.strategy.startsWith('best'),
        );
        expect(own.map((row) => row.strategy)).toEqual(LIMITS);
        const [usual, drier, wetter] = own.map((row) => row.fanHours);
        expect(drier).toBeLessThan(usual);
        expect(wetter).not.toBe(usual);
        expect(new Set(own.map((row) => row.inputs)).size).toBe(3);
      }
    }
    const { strategies } = JSON.parse(readFileSync(join(at('whole'), 'sweep.json'), 'utf8'));
    expect(new Set(strategies.map((one: { strategy: string }) => one.strategy))).toEqual(new Set(farm.plan.strategies));
  });

  it('are told on the page in words, with the unit', () => {
    const summary: SweepSummary = JSON.parse(readFileSync(join(at('whole'), 'sweep.json'), 'utf8'));
    const section = strategySweptSection({ summary, why: null }, [], new Units('us', 'USD', 'America/Chicago'));
    const [table] = section.tables!;
    expect(table.rows.map(({ way }) => way)).toEqual([
      'Humidity limit',
      'Humidity limit, below 60.0 %',
      'Humidity limit, below 85.0 %',
      'Best in hindsight',
    ]);
  });

  it('are no cheaper than the best in hindsight, which is searched from them too', () => {
    const rows = tableFromIPC(readFileSync(join(at('whole'), 'strategies.arrow'))).toArray();
    const best = rows.filter((row) => row.strategy === 'best-in-hindsight');
    expect(best.length).toBeGreaterThan(1);
    for (const { bin, weather, cost } of best) {
      const reach = rows.filter((row) => row.bin === bin && row.weather === weather && row.reachedTarget);
      for (const row of reach) expect(cost, row.strategy).toBeLessThanOrEqual(row.cost + 1e-9);
    }
  });

  it('are taken over from a run before, and run where only a parameter is new', async () => {
    expect((await sweepInto(at('whole'), farm)).runs).toBe(0);
    const more = farmOf([...LIMITS, 'humidity-limit with rh 61 %']);
    const runs = more.plan.bins.reduce((sum, { weathers }) => sum + weathers.length, 0);
    expect((await sweepInto(at('whole'), more)).runs).toBe(runs);
    await sweepInto(at('whole'), farm);
  });

  it('merge from shards into the bytes of the whole', async () => {
    await sweepInto(at('s1'), farm, { shard: { index: 1, of: 2 } });
    await sweepInto(at('s2'), farm, { shard: { index: 2, of: 2 } });
    const { plan, rows } = await mergeShards([at('s1'), at('s2')], '');
    writeSweep(at('merged'), plan, rows);
    const [arrow, json] = bytesOf(at('whole'));
    const merged = ['strategies.arrow', 'sweep.json'].map((name) =>
      readFileSync(join(at('merged'), name)).toString('base64'),
    );
    expect(merged).toEqual([arrow, json]);
  });
});
