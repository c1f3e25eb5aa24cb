import { inflateRawSync } from 'node:zlib';
import { DOMParser, type Document, type Element, onErrorStopParsing } from '@xmldom/xmldom';

// A workbook read without the libraries that write it: the zip by PKWARE's APPNOTE (4.3.7, 4.3.12, 4.3.16), the parts by a strict
// XML parser, the sheets by ECMA-376 part 1, chapter 18.

export interface ZipEntry {
  name: string;
  bytes: Buffer;
  /** DOS date and time as one number, date in the upper half */
  stamp: number;
}

/** The entries of a zip file in the order of its directory. */
export function unzip(file: Uint8Array): ZipEntry[] {
  const buffer = Buffer.from(file);
  const end = buffer.lastIndexOf(Buffer.from('504b0506', 'hex'));
  let at = buffer.readUInt32LE(end + 16);
  return Array.from({ length: buffer.readUInt16LE(end + 10) }, () => {
    if (buffer.readUInt32LE(at) !== 0x02014b50) throw new Error(`no entry of a zip directory at ${at}`);
    const [method, size, nameLength, extra, comment, local] = [
      buffer.readUInt16LE(at + 10),
      buffer.readUInt32LE(at + 20),
      buffer.readUInt16LE(at + 28),
      buffer.readUInt16LE(at + 30),
      buffer.readUInt16LE(at + 32),
      buffer.readUInt32LE(at + 42),
    ];
    const name = buffer.toString('utf8', at + 46, at + 46 + nameLength);
    const start = local + 30 + buffer.readUInt16LE(local + 26) + buffer.readUInt16LE(local + 28);
    const raw = buffer.subarray(start, start + size);
    const stamp = buffer.readUInt32LE(at + 12);
    if (buffer.readUInt32LE(local + 10) !== stamp) throw new Error(`${name} has two stamps`);
    at += 46 + nameLength + extra + comment;
    return { name, bytes: method === 8 ? inflateRawSync(raw) : raw, stamp };
  });
}

export interface ReadCell {
  ref: string;
  value: string | number;
  /** format code of a number */
  format: string;
  quotePrefix: boolean;
  bold: boolean;
}

export interface ReadSheet {
  name: string;
  xml: Document;
  cells: Map<string, ReadCell>;
  /** by cell: `#…` within, else the target of the relationship */
  links: Map<string, string>;
  /** rows by column, null where there is no cell */
  rows: (ReadCell | null)[][];
}

const BUILT_IN: Readonly<Record<string, string>> = { '0': 'General', '3': '#,##0', '4': '#,##0.00' };

const all = (node: Document | Element, tag: string): Element[] => [...node.getElementsByTagName(tag)];

/** `_x000D_` and the like (22.9.2.19). */
const unescaped = (text: string) =>
  text.replace(/_x([0-9A-Fa-f]{4})_/g, (_, code: string) => String.fromCharCode(Number.parseInt(code, 16)));

export function columnOf(ref: string): number {
  return [...ref.replace(/\d+$/, '')].reduce((sum, letter) => 26 * sum + letter.charCodeAt(0) - 64, 0) - 1;
}

/** All parts as parsed XML and the sheets in the order of the workbook. @throws for XML that is not well formed */
export function openWorkbook(file: Uint8Array): { parts: Map<string, Document>; sheets: ReadSheet[] } {
  const parser = new DOMParser({ onError: onErrorStopParsing });
  const parts = new Map(
    unzip(file).map(({ name, bytes }) => [name, parser.parseFromString(bytes.toString('utf8'), 'text/xml')]),
  );
  const part = (name: string) => {
    const found = parts.get(name);
    if (found === undefined) throw new Error(`no part ${name}`);
    return found;
  };
  const relations = (name: string) =>
    new Map(all(part(name), 'Relationship').map((one) => [one.getAttribute('Id'), one.getAttribute('Target') ?? '']));
  const strings = all(part('xl/sharedStrings.xml'), 'si').map((one) => unescaped(one.textContent ?? ''));
  const looks = part('xl/styles.xml');
  const own = new Map(
    all(looks, 'numFmt').map((one) => [one.getAttribute('numFmtId'), one.getAttribute('formatCode')]),
  );
  const fonts = all(all(looks, 'fonts')[0], 'font');
  const styles = all(all(looks, 'cellXfs')[0], 'xf').map((one) => {
    const id = one.getAttribute('numFmtId') ?? '';
    return {
      format: own.get(id) ?? BUILT_IN[id],
      quotePrefix: one.getAttribute('quotePrefix') === '1',
      bold: all(fonts[Number(one.getAttribute('fontId'))], 'b').length > 0,
    };
  });
  const targets = relations('xl/_rels/workbook.xml.rels');
  const sheets = all(part('xl/workbook.xml'), 'sheet').map((entry): ReadSheet => {
    const path = `xl/${targets.get(entry.getAttribute('r:id'))}`;
    const xml = part(path);
    const cells = new Map<string, ReadCell>();
    for (const cell of all(xml, 'c')) {
      const ref = cell.getAttribute('r') ?? '';
      const text = all(cell, 'v')[0]?.textContent ?? null;
      if (text === null) continue;
      const style = styles[Number(cell.getAttribute('s') ?? 0)];
      const type = cell.getAttribute('t') ?? 'n';
      if (type !== 's' && type !== 'n') throw new Error(`${path} ${ref} is of type ${type}`);
      cells.set(ref, { ref, value: type === 's' ? strings[Number(text)] : Number(text), ...style });
    }
    const rels = `xl/worksheets/_rels/${path.split('/').at(-1)}.rels`;
    const outside = parts.has(rels) ? relations(rels) : new Map();
    const links = new Map(
      all(xml, 'hyperlink').map((one) => {
        const location = one.getAttribute('location');
        const target = outside.get(one.getAttribute('r:id')) ?? '';
        return [one.getAttribute('ref') ?? '', location === null ? target : `${target}#${location}`];
      }),
    );
    const height = Math.max(0, ...[...cells.keys()].map((ref) => Number(/\d+$/.exec(ref)?.[0])));
    const width = Math.max(0, ...[...cells.keys()].map((ref) => columnOf(ref) + 1));
    const rows = Array.from({ length: height }, () => Array<ReadCell | null>(width).fill(null));
    for (const cell of cells.values()) rows[Number(/\d+$/.exec(cell.ref)?.[0]) - 1][columnOf(cell.ref)] = cell;
    return { name: entry.getAttribute('name') ?? '', xml, cells, links, rows };
  });
  return { parts, sheets };
}

/** A number as its format shows it, for the formats in use: grouped thousands with fixed decimals, days, minutes, months in English. */
export function shownAs(value: number, format: string): string {
  const decimals = /^#,##0(?:\.(0+))?$/.exec(format);
  if (decimals !== null) return value.toLocaleString('en-US', places(decimals[1]?.length ?? 0));
  // Day 25569 is 1 January 1970 (18.17.4.1).
  const at = new Date(Math.round((value - 25569) * 1440) * 60_000);
  const month = new Intl.DateTimeFormat('en-US', { month: 'short', timeZone: 'UTC' }).format(at);
  const two = (part: number) => String(part).padStart(2, '0');
  const day = `${at.getUTCDate()} ${month} ${at.getUTCFullYear()}`;
  if (format === 'd mmm yyyy') return day;
  if (format === 'd mmm yyyy hh:mm') return `${day} ${two(at.getUTCHours())}:${two(at.getUTCMinutes())}`;
  if (format === 'mmm yyyy') return `${month} ${at.getUTCFullYear()}`;
  throw new Error(`no such format: ${format}`);
}

const places = (count: number) => ({ minimumFractionDigits: count, maximumFractionDigits: count });
