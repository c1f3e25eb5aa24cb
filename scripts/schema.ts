import { execFileSync } from 'node:child_process';
import { writeFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { seasonJsonSchema } from '../src/season/yaml/json-schema.ts';

const path = fileURLToPath(new URL('../src/season/season.schema.json', import.meta.url));
writeFileSync(path, JSON.stringify(seasonJsonSchema()));
// In the house's format, so that the linter has nothing to say about it.
execFileSync('npx', ['biome', 'format', '--write', path], { stdio: ['ignore', 'ignore', 'inherit'] });
process.stdout.write('wrote src/season/season.schema.json\n');
