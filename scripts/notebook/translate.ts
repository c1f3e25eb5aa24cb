import { existsSync, readFileSync, realpathSync, statSync, writeFileSync } from 'node:fs';
import { createRequire, isBuiltin } from 'node:module';
import { dirname, extname, join, resolve } from 'node:path';
import { fileURLToPath, pathToFileURL } from 'node:url';
import { init, parse } from 'es-module-lexer';
import { type Loader, type TransformFailure, transform } from 'esbuild';
import type { Problem } from '../../src/base/errors.ts';
import { isKitSource, KIT } from './kit-folder.ts';

const LOADERS: Readonly<Record<string, Loader>> = { '.ts': 'ts', '.mts': 'ts', '.js': 'js', '.mjs': 'js' };

/** A notebook's own files as modules that Node can import, beside each other in a folder for once. */
export interface Translated {
  /** path of the entry's module; null where there are problems */
  entry: string | null;
  /** every file of the notebook, and those that it asks for and are not there, sorted */
  files: string[];
  problems: Problem[];
}

/**
 * Translate a notebook and all files of its own that it imports. Each becomes a module of its own with a source map, so that what it
 * throws is told by the lines of its TypeScript; the kit and packages stay what they are. A fresh folder each time makes Node read
 * them afresh.
 *
 * @param into  folder inside the kit, so that the kit's packages are found
 * @param say   how a path is told to its reader
 */
export async function translate(path: string, into: string, say: (path: string) => string): Promise<Translated> {
  await init;
  const modules = new Map<string, string>();
  const files = new Set<string>();
  const problems: Problem[] = [];

  const moduleOf = async (file: string): Promise<string> => {
    const known = modules.get(file);
    if (known !== undefined) return known;
    const target = join(into, `${modules.size}.mjs`);
    modules.set(file, target);
    files.add(file);
    const text = readFileSync(file, 'utf8');
    const code = await toModule(file, text, say, problems);
    if (code !== null) writeFileSync(target, await withImports(file, text, code));
    return target;
  };

  const withImports = async (file: string, text: string, code: string): Promise<string> => {
    let out = '';
    let from = 0;
    for (const { n, s, e, d } of parse(code)[0]) {
      if (d === -2) {
        if (code.slice(e, e + 4) !== '.url') continue;
        out += code.slice(from, s) + JSON.stringify(pathToFileURL(file).href);
        from = e + 4;
      } else if (n !== undefined) {
        const target = await targetOf(file, text, n);
        if (target === null) continue;
        // A dynamic import's span holds its quotes.
        out += code.slice(from, s) + (d > -1 ? JSON.stringify(target) : target);
        from = e;
      }
    }
    return out + code.slice(from);
  };

  /** Where an import leads; null: as it stands. */
  const targetOf = async (file: string, text: string, specifier: string): Promise<string | null> => {
    if (isBuiltin(specifier)) return null;
    const local = /^(\.{0,2}\/|file:)/.test(specifier);
    if (!local) {
      const found = packageOf(file, specifier);
      if (found === undefined)
        problems.push(missingImport(file, text, specifier, say, 'no package of this name is installed for it'));
      return found ?? null;
    }
    const wanted = specifier.startsWith('file:') ? fileURLToPath(specifier) : resolve(dirname(file), specifier);
    const found = localFile(wanted);
    if (found === null) {
      for (const one of asNamed(wanted)) files.add(one);
      problems.push(missingImport(file, text, specifier, say, 'there is no such file'));
      return null;
    }
    if (isKitSource(found) || !(extname(found) in LOADERS)) return pathToFileURL(found).href;
    return pathToFileURL(await moduleOf(found)).href;
  };

  const entry = await moduleOf(path);
  return { entry: problems.length === 0 ? entry : null, files: [...files].sort(), problems };
}

async function toModule(
  file: string,
  text: string,
  say: (path: string) => string,
  problems: Problem[],
): Promise<string | null> {
  try {
    const { code } = await transform(text, {
      loader: LOADERS[extname(file)],
      format: 'esm',
      target: 'node20',
      sourcemap: 'inline',
      sourcefile: pathToFileURL(file).href,
    });
    return code;
  } catch (error) {
    const { errors } = error as TransformFailure;
    if (errors === undefined) throw error;
    for (const { text: message, location } of errors) {
      problems.push({
        code: 'NOTEBOOK_SYNTAX',
        file: say(file),
        line: location?.line,
        column: location === null ? undefined : location.column + 1,
        message: `cannot be read as TypeScript: ${message}.`,
      });
    }
    return null;
  }
}

/** As written, or with the ending that TypeScript lets one leave out or write as `.js`. */
function asNamed(wanted: string): string[] {
  return [wanted, wanted.replace(/\.js$/, '.ts'), `${wanted}.ts`, `${wanted}.js`];
}

function localFile(wanted: string): string | null {
  const found = asNamed(wanted).find((path) => existsSync(path) && statSync(path).isFile());
  return found === undefined ? null : realpathSync(found);
}

/** A package's address: null where the kit has it, else its file where the notebook's own folders have it; undefined where nobody has. */
function packageOf(file: string, specifier: string): string | null | undefined {
  const name = specifier
    .split('/')
    .slice(0, specifier.startsWith('@') ? 2 : 1)
    .join('/');
  if (existsSync(join(KIT, 'node_modules', name))) return null;
  try {
    return pathToFileURL(createRequire(file).resolve(specifier)).href;
  } catch {
    return undefined;
  }
}

function missingImport(
  file: string,
  text: string,
  specifier: string,
  say: (path: string) => string,
  why: string,
): Problem {
  const at = Math.max(text.indexOf(`'${specifier}'`), text.indexOf(`"${specifier}"`));
  const before = at < 0 ? [] : text.slice(0, at).split('\n');
  return {
    code: 'NOTEBOOK_IMPORT',
    file: say(file),
    ...(at < 0 ? {} : { line: before.length, column: (before.at(-1)?.length ?? 0) + 1 }),
    message: `imports "${specifier}"; ${why}.`,
  };
}
