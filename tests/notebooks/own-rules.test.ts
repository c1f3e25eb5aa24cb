import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import firstLook from '../../notebooks/first-look.ts';
import type { BinModel } from '../../src/analysis/model/model-types.ts';
import { notebook } from '../../src/notebook.ts';
import { renderPages } from '../../src/report/html/pages.ts';
import { Units } from '../../src/report/units.ts';
import { statedModel } from '../support/stated-model.ts';
import ownRule from './user/own-rule.ts';
import { HOURS, localOf, type TwoBins, tableOf, twoBins, whole } from './user/two-bins.ts';

// Notebooks that run a bin's fan in other ways; what they cost is worked out here from hours, power and tariff.
let bins: TwoBins;
beforeAll(async () => {
  bins = await twoBins();
});
afterAll(() => bins?.clear());

// A bed as a fit would leave it, so that nothing waits for one: what a clock's rule costs hangs on hours, power and tariff alone.
const model = statedModel({ flowM3S: 5, isotherm: 'modified Henderson D245.5' });
const withBed = (of: BinModel) => ({ ...bins.input, beds: { get: () => of, keep: () => {} } });

describe('a notebook with a rule of its own', () => {
  it('costs what its hours cost by the tariff', async () => {
    const page = await ownRule.page(withBed(model));
    const [early, half, logged] = tableOf(page, 'Three ways').rows;
    // From filling, local midnight of 4 October, to the last row of the log.
    const firstMs = Date.UTC(2024, 9, 4, 5);
    const hours = Array.from({ length: HOURS - 1 }, (_, h) => localOf(firstMs + h * 3_600_000).hour);
    const kw = (Math.sqrt(3) * 230 * 38.5 * 0.85) / 1000;
    const price = (hour: number) => (hour >= 22 || hour < 6 ? 0.08 : 0.11);
    const run = hours.filter((hour) => hour >= 4 && hour < 9);
    const money = (of: readonly number[], share: number) => of.reduce((sum, hour) => sum + share * kw * price(hour), 0);
    expect(early.fanHours).toBe(run.length);
    expect(early.energy).toBeCloseTo(run.length * kw, 6);
    expect(early.cost).toMatchObject({ value: expect.closeTo(money(run, 1), 6) });
    expect(half.fanHours).toBe(hours.length / 2);
    expect(half.cost).toMatchObject({ value: expect.closeTo(money(hours, 0.5), 6) });
    // As the log's samples say it, each on until the next.
    const on = readFileSync(join(bins.folder, 'logs', 'fans.csv'), 'utf8')
      .split('\n')
      .filter((line) => line.includes(',F1,38.5')).length;
    expect(logged.fanHours).toBeCloseTo(on, 6);
    expect(page.answer).toContain(`Before breakfast runs ${run.length} h`);
    expect(whole(page)).toContain('by the model');
  });

  it('is withheld where the bed is not trusted, and says why in the answer and the warnings', async () => {
    const page = await ownRule.page(withBed({ ...model, trusted: false, why: 'The fan’s clock cannot be.' }));
    expect(page.answer).toBe('Can’t tell: The fan’s clock cannot be.');
    expect(page.warnings.join()).toContain('withheld. The fan’s clock cannot be.');
    expect(page.sections.flatMap(({ tables = [] }) => tables)).toEqual([]);
  });
});

describe('a mistake in a rule of one’s own', () => {
  const failures = async (fan: (now: Record<string, number>) => unknown) => {
    const page = await notebook({ title: 'Mine', question: 'Mine?' }, ({ bins, tryWays, answer }) => {
      answer`${tryWays(bins[0], [{ id: 'mine', title: 'Mine', fan } as never]).ways.length} ways.`;
    }).page(withBed(model));
    return renderPages([page])[0].failures.join();
  };

  it('is told by the word that nobody knows, or by what was given, and is no result of no hours', async () => {
    expect(await failures((now) => now.outdorC > 3)).toMatch(/now has no "outdorC"\. Did you mean "outdoorC"\?/);
    expect(await failures(() => 'yes')).toContain('fan gave "yes"; true, false or a share');
    expect(await failures(() => undefined)).toContain('fan gave undefined');
    expect(await failures((now) => now.outdoorC > 3)).toBe('');
    expect(await failures((now) => JSON.stringify(now).length > 3)).toBe('');
  });
});

describe('a notebook with a rule of the kit as it sets it', () => {
  const page = (ways: readonly unknown[]) =>
    notebook({ title: 'Clocks', question: 'Which clock?' }, ({ bins, tryWays, answer, table }) => {
      const tried = tryWays(bins[0], ways as never);
      answer`${tried.ways.length} ways.`;
      table(tried.ways, { title: 'Clocks' });
    }).page(withBed(model));

  it('runs its hours, beside the rule as it is usual, each by its name in words', async () => {
    const early = {
      id: 'early',
      title: 'Early',
      fan: (now: { localHour: number }) => now.localHour >= 4 && now.localHour < 9,
    };
    const clock = { id: 'night-hours', parameters: { from: 4, to: '9 h' } };
    const rows = tableOf(await page([early, clock, 'night-hours', 'night-hours with from 22 h']), 'Clocks').rows;
    expect(rows.map(({ way }) => way)).toEqual([
      'Early',
      'Night hours, from 4 h',
      'Night hours',
      'Night hours, from 22 h',
    ]);
    expect({ ...rows[1], way: 'Early' }).toEqual(rows[0]);
    expect(Number(rows[3].fanHours)).toBeLessThan(Number(rows[2].fanHours));
    // Kept from the time before, under the same name.
    expect(tableOf(await page([clock]), 'Clocks').rows).toEqual([rows[1]]);
  });

  it('says all that is wrong with its ways', async () => {
    const [{ failures }] = renderPages([await page([{ id: 'night-hours', parameters: { form: 4, to: 30 } }])]);
    const told = failures.join();
    expect(told).toContain('night-hours has no parameter "form"');
    expect(told).toContain('night-hours: to is 30; 0 h to 24 h is allowed, 9 h is usual.');
  });
});

describe('the first look', () => {
  it('tells what the log’s samples say, in the units of either reader', async () => {
    const { season } = bins.input.loaded;
    for (const system of ['us', 'si'] as const) {
      const units = new Units(system, season.currency, season.site.timeZone);
      const page = await firstLook.page({ ...withBed(model), units });
      expect(whole(page)).toContain(system === 'us' ? '°F' : '°C');
      // As the made log has them, each sample on until the next.
      expect(page.answer).toMatch(new RegExp(`^Bin 1 ran ${bins.fanHours} h`));
      expect(page.sections.map(({ title }) => title)).toEqual([
        'Every bin',
        'What its cables read',
        'The days in numbers',
        'Another rule',
      ]);
      const ways = tableOf(page, 'Bin 1, three ways to run its fans').rows;
      expect(ways.map(({ way }) => way)).toEqual(['As logged', 'Humidity limit', 'Dry afternoons']);
      expect(ways[0].fanHours).toBeCloseTo(bins.fanHours, 6);
    }
  });

  it('goes on where a bed is not trusted', async () => {
    const page = await firstLook.page(withBed({ ...model, trusted: false, why: 'The depth cannot be.' }));
    expect(whole(page)).toContain('Not told for Bin 1: The depth cannot be.');
  });
});
