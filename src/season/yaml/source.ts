import { readdir, readFile, stat } from 'node:fs/promises';
import { basename, dirname, join } from 'node:path';
import { InputError } from '../../base/errors.ts';
import { SEASON_FILE_NAME } from './report.ts';

/** A season of a hundred bins is a tenth of this. */
const MOST_BYTES = 1_000_000;

const START = 'Write one with: npm run new-season -- <folder>';

function fail(message: string, place: { line?: number; column?: number } = {}): never {
  throw new InputError([{ code: 'SEASON_FILE', file: SEASON_FILE_NAME, ...place, message }]);
}

/** The text of `<folder>/season.yaml` without byte-order mark. @throws InputError with one problem */
export async function readSource(folder: string): Promise<string> {
  await assertSeasonFolder(folder);
  const path = join(folder, SEASON_FILE_NAME);
  const file = await stat(path).catch((error: NodeJS.ErrnoException) => noFile(folder, error));
  if (!file.isFile()) fail(`${path} is not a file. ${START}.`);
  if (file.size > MOST_BYTES) {
    fail(
      `season.yaml has ${file.size} bytes; it must not have more than ${MOST_BYTES}. Logs belong into files of their own, named under \`files\`.`,
      { line: 1, column: 1 },
    );
  }
  const bytes = await readFile(path).catch((error: NodeJS.ErrnoException) =>
    fail(`${path} cannot be read (${error.code}). Check its permissions.`),
  );
  return decode(bytes);
}

/** Before any work for a season, so that a file in place of its folder is told as that. @throws InputError with one problem */
export async function assertSeasonFolder(folder: string): Promise<void> {
  const found = await stat(folder).catch((error: NodeJS.ErrnoException) =>
    fail(`the season folder ${folder} cannot be opened (${error.code}). Check its name. ${START}.`),
  );
  if (found.isDirectory()) return;
  const beside = join(dirname(folder), SEASON_FILE_NAME);
  const holds = basename(folder) === SEASON_FILE_NAME || (await stat(beside).catch(() => null))?.isFile() === true;
  const give = holds
    ? `the folder that season.yaml stands in: ${dirname(folder)}`
    : 'the folder that holds season.yaml';
  const message = `${folder} is a file; a season is given by its folder. Give ${give}`;
  throw new InputError([{ code: 'SEASON_FILE', message: `${message}.` }]);
}

async function noFile(folder: string, error: NodeJS.ErrnoException): Promise<never> {
  if (error.code !== 'ENOENT') fail(`${join(folder, SEASON_FILE_NAME)} cannot be opened (${error.code}).`);
  const names = await readdir(folder).catch(() => []);
  const like = names.sort().find((name) => /^season\.ya?ml(\.txt)?$/i.test(name));
  if (like !== undefined) fail(`there is no season.yaml in ${folder}, but "${like}". Rename it to season.yaml.`);
  return fail(`there is no season.yaml in ${folder}. ${START}.`);
}

function decode(bytes: Buffer): string {
  if ((bytes[0] === 0xff && bytes[1] === 0xfe) || (bytes[0] === 0xfe && bytes[1] === 0xff)) {
    fail('season.yaml is UTF-16 text. Save it as UTF-8.', { line: 1, column: 1 });
  }
  if (bytes.includes(0)) {
    fail('season.yaml is a binary file (it holds zero bytes). It must be YAML, plain text in UTF-8.', {
      line: 1,
      column: 1,
    });
  }
  let text: string;
  try {
    text = new TextDecoder('utf-8', { fatal: true }).decode(bytes);
  } catch {
    const place = firstBad(bytes);
    fail('season.yaml has a byte here that is not UTF-8 text. Save the file as UTF-8.', place);
  }
  if (text.trim() === '') fail(`season.yaml is empty. ${START}.`, { line: 1, column: 1 });
  return text;
}

/** The line and column of the first byte that is not UTF-8. */
function firstBad(bytes: Buffer): { line: number; column: number } {
  let start = 0;
  for (let line = 1; ; line++) {
    const end = bytes.indexOf(0x0a, start);
    const piece = bytes.subarray(start, end < 0 ? bytes.length : end);
    // A replacement character that the file does not hold itself marks the bad byte.
    const text = new TextDecoder('utf-8', { ignoreBOM: true }).decode(piece);
    if (!Buffer.from(text).equals(piece)) return { line, column: firstDifference(Buffer.from(text), piece, text) };
    if (end < 0) return { line, column: 1 };
    start = end + 1;
  }
}

function firstDifference(decoded: Buffer, piece: Buffer, text: string): number {
  let at = 0;
  while (decoded[at] === piece[at]) at += 1;
  // Whole characters before the byte at which both part.
  let bytes = 0;
  let column = 1;
  for (const char of text) {
    bytes += Buffer.byteLength(char);
    if (bytes > at) break;
    column += char.length;
  }
  return column;
}
