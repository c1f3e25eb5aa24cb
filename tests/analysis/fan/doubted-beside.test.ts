import { mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, expect, it } from 'vitest';
import { reviewSeason } from '../../../src/analysis/review-season.ts';
import { loadSeason } from '../../../src/season/load-season.ts';
import { readSeason } from '../../../src/season/read-season.ts';
import { makeSeasonFolder, SMALL_SEASON } from '../../support/season-folder.ts';

const folder = mkdtempSync(join(tmpdir(), 'doubted-beside-'));
afterAll(() => rmSync(folder, { recursive: true, force: true }));

it('a bin of two fans, one of whose logs is left out for what another bin shows: nothing is told by the other fan alone', async () => {
  makeSeasonFolder(folder, { ...SMALL_SEASON, bins: 2 });
  const yamlPath = join(folder, 'season.yaml');
  const fanPath = join(folder, 'logs', 'fans.csv');
  const rows = readFileSync(fanPath, 'utf8').trim().split('\n').slice(1);
  const cells = rows.map((row) => row.split(','));
  // Fan F1 works by the plenum of its bin, and never by its log.
  const pressure = cells
    .filter(([, fan]) => fan === 'F1')
    .map(([time, , amps], i) => `${time},B1,${Number(amps) > 1 ? (2.6 + (i % 5) / 50).toFixed(2) : '0.01'}`);
  writeFileSync(join(folder, 'logs', 'plenum.csv'), `time,bin,sp\n${pressure.join('\n')}\n`);
  const log = cells.map(([time, fan, amps]) => [time, fan, fan === 'F1' ? '0.2' : amps].join(','));
  writeFileSync(fanPath, `time,fan,amps\n${log.join('\n')}\n`);
  const yaml = readFileSync(yamlPath, 'utf8').replace('fans: [F2]', 'fans: [F1, F2]');
  writeFileSync(
    yamlPath,
    `${yaml}  - path: logs/plenum.csv
    holds: plenum
    columns: { time: time, bin: bin, static_pressure: { column: sp, unit: inH2O } }
`,
  );
  const { bins, fans } = reviewSeason(await loadSeason(await readSeason(folder)));
  expect(fans.map(({ doubt }) => doubt !== undefined)).toEqual([true, false]);
  const [, { fan, fronts, useful, rates }] = bins;
  expect(fan.doubt).toMatch(/^The pressure in the plenum of Bin 1 shows fan F1 at work/);
  expect(fan.hours.why).toBe(fan.doubt);
  expect(fan.spans.state).toHaveLength(0);
  expect(fronts).toMatchObject({ campaigns: [], why: fan.doubt });
  expect([useful, rates]).toEqual([null, null]);
});
