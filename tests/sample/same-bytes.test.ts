import { readdirSync, readFileSync, statSync } from 'node:fs';
import { join, relative } from 'node:path';
import { afterAll, beforeAll, expect, test } from 'vitest';
import { type SampleSeason, sampleFiles } from '../../scripts/sample/sample-files.ts';
import { SAMPLES, textOf } from './read-sample.ts';

const zone = process.env.TZ;
let made: SampleSeason[];

beforeAll(() => {
  // Far from the farm's own zone: nothing may lean on the machine's clock.
  process.env.TZ = 'Pacific/Auckland';
  made = sampleFiles(() => {});
}, 300_000);

afterAll(() => {
  if (zone === undefined) delete process.env.TZ;
  else process.env.TZ = zone;
});

const walk = (folder: string): string[] =>
  readdirSync(folder, { withFileTypes: true }).flatMap((entry) =>
    entry.isDirectory() ? walk(join(folder, entry.name)) : [join(folder, entry.name)],
  );

// The whole of both seasons, about 20 s. Packed files are compared unpacked: zlib may pack the same text otherwise on another processor.
test('the committed seasons are what the generator writes, in another time zone too', () => {
  for (const season of made) {
    for (const file of season.files) {
      const committed = readFileSync(join(SAMPLES, season.folder, file.path));
      // A boolean, so that a difference does not print a megabyte.
      expect(textOf(committed, file.path) === textOf(file.bytes, file.path), `${season.folder}/${file.path}`).toBe(
        true,
      );
    }
  }
});

test('no file stands in the committed folders that the generator does not write', () => {
  const known = new Set(made.flatMap((season) => season.files.map((file) => join(season.folder, file.path))));
  for (const season of made) {
    for (const path of walk(join(SAMPLES, season.folder))) {
      const name = relative(SAMPLES, path);
      // A review or sweep that somebody ran beside the season is theirs, and so is what it keeps of the season.
      if (['review', 'sweep', '.cache'].some((own) => name.startsWith(join(season.folder, own)))) continue;
      expect(known.has(name), name).toBe(true);
    }
  }
});

test('both seasons together stay under 8 MB', () => {
  const bytes = made.flatMap((season) =>
    season.files.map((file) => statSync(join(SAMPLES, season.folder, file.path)).size),
  );
  expect(bytes.reduce((sum, one) => sum + one, 0)).toBeLessThan(8e6);
});
