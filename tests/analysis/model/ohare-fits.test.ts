import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, describe, expect, it } from 'vitest';
import { binModel } from '../../../src/analysis/model/bin-model.ts';
import { reviewSeason } from '../../../src/analysis/review-season.ts';
import { loadSeason } from '../../../src/season/load-season.ts';
import { readSeason } from '../../../src/season/read-season.ts';
import { ohareSeason } from '../strategies/ohare-season.ts';

const work = mkdtempSync(join(tmpdir(), 'fanbook-ohare-'));
afterAll(() => rmSync(work, { recursive: true, force: true }));

// Real weather, another bed, the fan on for weeks.
describe('corn dried at O’Hare', { timeout: 240_000 }, () => {
  // 4054: the fan starts within two hours of filling. 4042: isotherms that only the whole season tells apart.
  it.each([4054, 4042])('is trusted, its airflow and end moisture found: bin %i', async (seed) => {
    const folder = join(work, String(seed));
    const truth = await ohareSeason(folder, seed);
    const loaded = await loadSeason(await readSeason(folder));
    const model = binModel(loaded, reviewSeason(loaded).bins[0]);
    expect(model.trusted, model.why).toBe(true);
    expect(Math.abs(model.flowM3S.value! / truth.flowM3S - 1)).toBeLessThan(0.1);
    expect(model.unseen!.misfit.moisturePoints).toBeLessThan(0.4);
    const end = model.endMoistureWb.value;
    if (end !== null) expect(Math.abs(100 * end - truth.endWb)).toBeLessThan(0.3);
  });
});
