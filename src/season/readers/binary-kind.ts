import { isUtf16 } from './decode-text.ts';

/** What a file is instead of text, and the way out. */
export interface BinaryKind {
  name: string;
  way: string;
}

const AS_CSV = 'Export the log as CSV.';
const UNPACK = 'Unpack it; only gzip is read as it is.';

/** First bytes, as Latin-1 (file(1) magic numbers; RFC 1952, ISO/IEC 15948 and the formats' own specifications). */
const MAGIC: readonly (readonly [start: string, name: string, way: string])[] = [
  ['PK\u0003\u0004', 'a zip file or a spreadsheet workbook', 'Save the sheet as CSV, or unpack the archive.'],
  ['PK\u0005\u0006', 'an empty zip file', UNPACK],
  ['\u00d0\u00cf\u0011\u00e0', 'an old spreadsheet workbook', 'Save the sheet as CSV.'],
  ['%PDF', 'a PDF', AS_CSV],
  ['\u0089PNG', 'a PNG picture', AS_CSV],
  ['\u00ff\u00d8\u00ff', 'a JPEG picture', AS_CSV],
  ['GIF8', 'a GIF picture', AS_CSV],
  ['RIFF', 'a picture, sound or film', AS_CSV],
  ['\u001f\u008b', 'a gzip file inside a gzip file', 'Unpack it once.'],
  ['BZh', 'a bzip2 file', UNPACK],
  ['\u00fd7zXZ', 'an xz file', UNPACK],
  ['7z\u00bc\u00af', 'a 7z archive', UNPACK],
  ['Rar!', 'a RAR archive', UNPACK],
  ['(\u00b5/\u00fd', 'a Zstandard file', UNPACK],
  ['SQLite format 3', 'a database', 'Export the table as CSV.'],
  ['PAR1', 'a Parquet file', 'Export the table as CSV.'],
  ['ARROW1', 'an Arrow file', 'Export the table as CSV.'],
  ['\u0089HDF', 'an HDF5 file', 'Export the table as CSV.'],
  ['\u007fELF', 'a program', AS_CSV],
];

const HEAD = 1024;
/** Where a header stands: what is no text there makes the whole file unreadable. */
const OPENING = 128;
/** Random bytes hold an eighth of controls, a log with a burst of noise far fewer. */
const CONTROL_SHARE = 0.03;
/** Western text in an 8-bit encoding stays far below; what lies above cannot be read as it. */
const HIGH_SHARE = 0.3;

/** What a file is where it is no text, by its first bytes and by how many of them no text holds; null for text. */
export function binaryKind(bytes: Uint8Array): BinaryKind | null {
  const start = Buffer.from(bytes.subarray(0, 32)).toString('latin1');
  for (const [magic, name, way] of MAGIC) if (start.startsWith(magic)) return { name, way };
  if (Buffer.from(bytes.subarray(257, 262)).toString('latin1') === 'ustar')
    return { name: 'a tar archive', way: UNPACK };
  if (isUtf16(bytes)) return null;
  const head = bytes.subarray(0, HEAD);
  // A logger that lost power leaves a stretch of zeros inside a good file; a file that opens with them is no text.
  if (head.includes(0)) {
    return { name: 'a binary file (zero bytes)', way: 'Export the log as CSV; UTF-16 text needs its byte-order mark.' };
  }
  if (controls(head) > CONTROL_SHARE * head.length && controls(bytes.subarray(0, OPENING)) > 0) {
    return { name: 'a binary file (bytes that no text holds)', way: AS_CSV };
  }
  const high = head.filter((byte) => byte >= 0x80).length;
  if (high > HIGH_SHARE * head.length && !isUtf8(head)) {
    return { name: 'a binary file, or text in an encoding that is not known', way: 'Export the log as CSV in UTF-8.' };
  }
  return null;
}

/** How many bytes are controls other than tab, line ends, form feed and the end mark of old systems. */
function controls(bytes: Uint8Array): number {
  return bytes.filter((byte) => byte === 0x7f || (byte < 0x20 && !(byte >= 9 && byte <= 13) && byte !== 0x1a)).length;
}

/** A character may be cut by the end of the bytes. */
function isUtf8(bytes: Uint8Array): boolean {
  try {
    new TextDecoder('utf-8', { fatal: true }).decode(bytes, { stream: true });
    return true;
  } catch {
    return false;
  }
}
