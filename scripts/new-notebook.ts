import { existsSync, mkdirSync } from 'node:fs';
import { basename, dirname, join, relative, resolve, sep } from 'node:path';
import { Command } from 'commander';
import { InputError } from '../src/base/errors.ts';
import { leave, tellError } from './command-line.ts';
import { diskProblem } from './folder/disk-problem.ts';
import { writeNewFile } from './folder/new-file.ts';
import { starterNotebook } from './new-notebook/starter-notebook.ts';
import { KIT } from './notebook/kit-folder.ts';

const NAME = /^[a-z][a-z0-9]*(-[a-z0-9]+)*$/;

/** @returns the path written. @throws InputError where the name cannot be, or something stands there */
function newNotebook(given: string): string {
  const stem = basename(given).replace(/\.ts$/, '');
  const refuse = (code: string, message: string) => new InputError([{ code, file: given, message }]);
  if (!NAME.test(stem) || stem.length > 60) {
    throw refuse(
      'NOTEBOOK_NAME',
      `"${stem}" cannot be its name; write lower-case words with hyphens, at most 60 letters, e.g. my-page.`,
    );
  }
  const named = given.includes('/') || given.includes(sep);
  const path = named ? join(resolve(dirname(given)), `${stem}.ts`) : join(KIT, 'notebooks', `${stem}.ts`);
  if (existsSync(path))
    throw refuse('NOTEBOOK_THERE', `${path} is there already; nothing was written. Give another name.`);
  const way = relative(dirname(path), join(KIT, 'src', 'notebook.ts')).replaceAll('\\', '/');
  const door = way.startsWith('.') ? way : `./${way}`;
  try {
    mkdirSync(dirname(path), { recursive: true });
    writeNewFile(path, starterNotebook(stem, door));
  } catch (error) {
    const told = diskProblem(error, {
      code: 'NOTEBOOK_WRITE',
      path,
      folder: dirname(path),
      stands: 'It is not there.',
    });
    if (told !== error) throw told;
    throw refuse(
      'NOTEBOOK_WRITE',
      `${path} cannot be written (${(error as NodeJS.ErrnoException).code}). Name another folder.`,
    );
  }
  return path;
}

const program = new Command('new-notebook')
  .description('Write a commented notebook that runs as it is. Nothing is ever written over.')
  .argument(
    '<name>',
    'lower-case words with hyphens, e.g. my-page; with a folder before it (pages/my-page) it goes there, else to notebooks/',
  )
  .addHelpText(
    'after',
    `
Exit status: 0 written; 1 the name cannot be, or something stands there; 2 wrong command line;
4 a fault of the kit.

Example: npm run new-notebook -- my-page
         npm run notebook -- notebooks/my-page.ts data-samples/sorrel-fork --watch`,
  )
  .exitOverride(leave)
  .parse();

try {
  const path = newNotebook(program.args[0]);
  const said = path.startsWith(`${KIT}${sep}`) ? relative(KIT, path) : path;
  process.stdout.write(`wrote ${path}\nDraw it: npm run notebook -- ${said} my-season --watch\n`);
} catch (error) {
  process.exitCode = tellError(error, (line) => process.stderr.write(`${line}\n`));
}
