import { mkdirSync, rmSync, writeFileSync } from 'node:fs';
import { dirname, join, resolve } from 'node:path';
import { Command } from 'commander';
import { leave } from './command-line.ts';
import { sampleFiles } from './sample/sample-files.ts';

const program = new Command('make-sample')
  .description('Write the sample seasons of the invented farm, with their truth and planted faults, from fixed seeds.')
  .option('--out <folder>', 'where to', 'data-samples')
  .addHelpText(
    'after',
    '\nWrites sorrel-fork/ (2024, six bins) and sorrel-fork-2023/ (two bins): season.yaml, README.md, truth.json, logs/ and weather/, tickets, probes, bills.\n\nExit status: 0 written; 2 wrong command line.\n\nExample: npm run make-sample -- --out /tmp/sample',
  )
  .allowExcessArguments(false)
  .exitOverride(leave)
  .parse();

const out = resolve(program.opts<{ out: string }>().out);
let bytes = 0;
for (const season of sampleFiles((line) => console.error(line))) {
  // Only what this script makes is taken away first; a review that stands beside is the user's.
  for (const part of ['logs', 'weather']) rmSync(join(out, season.folder, part), { recursive: true, force: true });
  for (const file of season.files) {
    const path = join(out, season.folder, file.path);
    mkdirSync(dirname(path), { recursive: true });
    writeFileSync(path, file.bytes);
    bytes += file.bytes.length;
  }
}
console.error(`${(bytes / 1e6).toFixed(2)} MB in ${out}`);
