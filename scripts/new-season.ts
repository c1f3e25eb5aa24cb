import { mkdir } from 'node:fs/promises';
import { dirname, isAbsolute, join, relative, resolve } from 'node:path';
import { fileURLToPath } from 'node:url';
import { Command, CommanderError } from 'commander';
import { InputError } from '../src/base/errors.ts';
import { starterSeason } from '../src/season/yaml/starter.ts';
import { diskProblem } from './folder/disk-problem.ts';
import { writeNewFile } from './folder/new-file.ts';

const SCHEMA = fileURLToPath(new URL('../src/season/season.schema.json', import.meta.url));

/** Makes the folder, its sub-folders and season.yaml; what is there already stays as it is. */
async function newSeason(folder: string): Promise<void> {
  const root = resolve(folder);
  const schema = relative(root, SCHEMA).replaceAll('\\', '/');
  await mkdir(root, { recursive: true });
  writeNewFile(join(root, 'season.yaml'), starterSeason(isAbsolute(schema) ? null : schema));
  for (const name of ['logs', 'weather']) await mkdir(join(root, name), { recursive: true });
  process.stdout.write(
    `wrote ${join(root, 'season.yaml')}\nPut your logs into ${join(root, 'logs')}, name them under \`files\`, then: npm run review -- ${folder}\n`,
  );
}

function explain(folder: string, error: NodeJS.ErrnoException): string {
  if (error.code === 'EEXIST') {
    return `${resolve(folder)} holds a season.yaml already, or is no folder; nothing was written. Name another folder.`;
  }
  const [path, stands] = [resolve(folder), 'No season.yaml was written.'];
  const told = diskProblem(error, { code: 'SEASON_WRITE', path, folder: dirname(path), stands });
  if (told instanceof InputError) return told.message;
  return `cannot write the season folder ${path} (${error.code ?? error.message}). Check the name and your permissions.`;
}

const program = new Command('new-season')
  .description('Write a commented season.yaml and the folders for logs and weather. Nothing is ever written over.')
  .argument('<folder>', 'the season folder to make or complete')
  .addHelpText(
    'after',
    '\nWrites season.yaml, logs/ and weather/ into the folder.\n\nExit status: 0 written; 1 a season.yaml stands there, or the folder cannot be written; 2 wrong command line.\n\nExample: npm run new-season -- my-season',
  )
  .exitOverride()
  .action(async (folder: string) => {
    try {
      await newSeason(folder);
    } catch (error) {
      process.stderr.write(`${explain(folder, error as NodeJS.ErrnoException)}\n`);
      process.exitCode = 1;
    }
  });

try {
  await program.parseAsync();
} catch (error) {
  // The library has printed its message; asking for help is no wrong use.
  process.exitCode = error instanceof CommanderError && error.exitCode === 0 ? 0 : 2;
}
