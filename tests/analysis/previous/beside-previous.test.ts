import { createHash } from 'node:crypto';
import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { basename, join } from 'node:path';
import { afterAll, describe, expect, it } from 'vitest';
import { previousSeason } from '../../../scripts/review/previous-season.ts';
import { besidePrevious } from '../../../src/analysis/previous/beside-previous.ts';
import { PREVIOUS_SHAPE, seasonNumbers } from '../../../src/analysis/previous/previous-shape.ts';

const work = mkdtempSync(join(tmpdir(), 'fanbook-previous-'));
afterAll(() => rmSync(work, { recursive: true, force: true }));

const bin = (id: string, hours: number, cost: number | null, half: number) => ({
  id,
  crop: 'corn',
  goal: 'dry',
  fan: {
    hours,
    hoursInterval: [hours - half, hours + half],
    energyKwh: 10 * hours,
    energyKwhInterval: null,
    cost,
    costInterval: cost === null ? null : [cost - half, cost + half],
    why: cost === null ? 'No tariff.' : null,
  },
  moisture: { pointsRemoved: 3, interval: [2.5, 3.5], why: null },
  costPerPoint: { value: null, interval: null, perBushelPoint: null, perBushelPointInterval: null, why: 'Cooled.' },
});
const season = (title: string, currency: string, bins: unknown[]) =>
  seasonNumbers(PREVIOUS_SHAPE.parse({ season: title, currency, bins }));

describe('a season beside the one before', () => {
  const before = season('2023', 'USD', [bin('B1', 500, 900, 30), bin('B7', 1, 1, 1)]);
  const now = season('2024', 'USD', [bin('B1', 540, 700, 40), bin('B2', 1, 1, 1)]);

  it('joins the errors of both as squares, and says where a change is no more than that', () => {
    const { bins } = besidePrevious(now, before);
    const of = (kind: string) => bins[0].rows.find((row) => row.kind === kind);
    // 40 h more, ± √(30² + 40²) = 50 h: no clear change. 200 less, ± 50: clear.
    expect(of('hours')).toMatchObject({ change: { value: 40, interval: [-10, 90] }, clear: false });
    expect(of('cost')).toMatchObject({ change: { value: -200, interval: [-250, -150] }, clear: true });
    // Without an interval on either side nobody can tell.
    expect(of('energyKwh')).toMatchObject({ change: { value: 400, interval: null }, clear: null });
    expect(of('costPerPoint')).toMatchObject({ change: { value: null, why: 'Cooled.' }, clear: null });
  });

  it('holds bins of one id beside each other, and names the others', () => {
    expect(besidePrevious(now, before)).toMatchObject({ onlyNow: ['B2'], onlyBefore: ['B7'], bins: [{ id: 'B1' }] });
  });

  it('compares no money of two currencies, and says what else was not alike', () => {
    const other = season('2023', 'CAD', [{ ...bin('B1', 500, 900, 30), crop: 'wheat', goal: 'cool' }]);
    const { bins } = besidePrevious(now, other);
    expect(bins[0].rows.find(({ kind }) => kind === 'cost')?.change.why).toMatch(/another currency/);
    expect(bins[0].unlike).toEqual([
      'It held wheat then and corn now.',
      'Its fans were run to cool then and to dry now.',
    ]);
  });
});

describe('--previous', () => {
  const file = (name: string, text: string) => {
    writeFileSync(join(work, name), text);
    return join(work, name);
  };
  it('takes a summary.json of an older or newer kit, with keys fewer or more', async () => {
    const text = JSON.stringify({ season: 'Old', bins: [bin('B1', 5, 6, 1)], later: 'key' });
    const read = await previousSeason(file('summary.json', text), () => {});
    expect(read.numbers).toMatchObject({
      title: 'Old',
      currency: null,
      bins: [{ id: 'B1', hours: { value: 5, interval: [4, 6] } }],
    });
    const sha256 = createHash('sha256').update(text).digest('hex');
    expect(read.inputs).toMatchObject([
      { path: `${basename(work)}/summary.json`, sha256, bytes: text.length, rows: null },
    ]);
    // The folder that it stands in will do too.
    expect(await previousSeason(work, () => {})).toEqual(read);
  });
  it.each([
    ['nothing there', () => join(work, 'no-such'), /is not there/],
    ['season.yaml itself', () => file('season.yaml', 'format: 1'), /is a file of a season folder/],
    ['no JSON', () => file('a.json', '{'), /is no JSON/],
    ['another JSON', () => file('b.json', '{"season":"x"}'), /is no summary\.json of a review \(bins/],
  ])('refuses %s with a word', async (_, path, message) => {
    await expect(previousSeason(path(), () => {})).rejects.toThrow(message);
    await expect(previousSeason(path(), () => {})).rejects.toThrow(/^PREVIOUS .*Give the folder of the season before/);
  });
});
