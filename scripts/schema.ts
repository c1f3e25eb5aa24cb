import { execFileSync } from 'node:child_process';
import { writeFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { Command } from 'commander';
import { seasonJsonSchema } from '../src/season/yaml/json-schema.ts';
import { leave } from './command-line.ts';

new Command('schema')
  .description('Write src/season/season.schema.json anew, from the shape that the reader of season.yaml checks by.')
  .addHelpText('after', '\nExit status: 0 written; 2 wrong command line.\n\nExample: npm run schema')
  .allowExcessArguments(false)
  .exitOverride(leave)
  .parse();

const path = fileURLToPath(new URL('../src/season/season.schema.json', import.meta.url));
writeFileSync(path, JSON.stringify(seasonJsonSchema()));
// In the house's format, so that the linter has nothing to say about it.
execFileSync('npx', ['biome', 'format', '--write', path], { stdio: ['ignore', 'ignore', 'inherit'] });
process.stdout.write('wrote src/season/season.schema.json\n');
