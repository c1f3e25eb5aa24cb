import { writeFileSync } from 'node:fs';
import { seasonJsonSchemaText } from '../src/season/yaml/json-schema.ts';

const path = new URL('../src/season/season.schema.json', import.meta.url);
writeFileSync(path, seasonJsonSchemaText());
process.stdout.write('wrote src/season/season.schema.json\n');
