import { createHash } from 'node:crypto';
import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { gunzipSync } from 'node:zlib';
import type { Problem } from '../../base/errors.ts';
import { binaryKind } from './binary-kind.ts';
import { decodeText } from './decode-text.ts';

/** A file's text, and what its bytes on disk were. */
export interface FileText {
  text: string;
  sha256: string;
  bytes: number;
}

const LARGEST_BYTES = 400 * 2 ** 20; // the longest text that Node holds is half a gigabyte

/**
 * Read a file of the season folder, unpacked where its bytes are gzip, as text.
 *
 * @returns the text, or the problem: FILE_READ, FILE_GZIP, FILE_SIZE, FILE_BINARY, FILE_EMPTY
 */
export function readText(folder: string, path: string): FileText | Problem {
  let raw: Buffer;
  try {
    raw = readFileSync(join(folder, path));
  } catch (error) {
    const code = (error as NodeJS.ErrnoException).code;
    const why = code === 'EISDIR' ? 'is a folder, not a file' : `cannot be read (${code ?? 'unknown error'})`;
    return problem('FILE_READ', path, `${why}. Name a plain file that you may read.`);
  }
  let bytes: Uint8Array = raw;
  if (raw[0] === 0x1f && raw[1] === 0x8b) {
    try {
      bytes = gunzipSync(raw, { maxOutputLength: LARGEST_BYTES });
    } catch (error) {
      const tooLarge = (error as NodeJS.ErrnoException).code === 'ERR_BUFFER_TOO_LARGE';
      if (tooLarge) return tooLargeProblem(path);
      return problem('FILE_GZIP', path, 'is gzip-compressed, but the data is cut off or damaged. Copy the file again.');
    }
  }
  if (bytes.length > LARGEST_BYTES) return tooLargeProblem(path);
  const binary = binaryKind(bytes);
  if (binary !== null) return problem('FILE_BINARY', path, `is ${binary.name}, not a text file. ${binary.way}`);
  const text = decodeText(bytes);
  if (text.trim() === '') {
    return problem('FILE_EMPTY', path, 'is empty. Export the log again, or take the file out of season.yaml.');
  }
  return { text, sha256: createHash('sha256').update(raw).digest('hex'), bytes: raw.length };
}

function problem(code: string, file: string, message: string): Problem {
  return { code, file, message };
}

function tooLargeProblem(path: string): Problem {
  return problem('FILE_SIZE', path, `holds more than ${LARGEST_BYTES / 2 ** 20} MB. Split it into several files.`);
}
