import { csvRecords, textLines } from './csv-records.ts';

const CANDIDATES = [',', ';', '\t', '|'];
const NAMES: Readonly<Record<string, string>> = { comma: ',', semicolon: ';', tab: '\t', '\\t': '\t', pipe: '|' };

/** A `delimiter:` of season.yaml as the character it means: itself, or `tab`, `comma`, `semicolon`, `pipe`. */
export function namedDelimiter(text: string): string {
  return NAMES[text.toLowerCase()] ?? text;
}

/**
 * The delimiter of a text: that by which a line shows the most wanted headers, then by which the most of the next lines have as many
 * fields as the first.
 *
 * @param wanted  says whether a header is one that is looked for
 */
export function findDelimiter(text: string, wanted: (header: string) => boolean): string {
  const head = text.slice(0, 65_536);
  const firstLines = textLines(head)
    .filter((line) => line.trim() !== '')
    .slice(0, 40);
  let best = ',';
  let most = -1;
  for (const delimiter of CANDIDATES) {
    const records = csvRecords(head, delimiter, 40);
    // With a quote left open (or cut by the end of the head) the lines as they stand must do.
    const fields = 'fields' in records ? records.fields : firstLines.map((line) => line.split(delimiter));
    if (fields.length === 0) continue;
    const [header, ...rows] = fields;
    const known = Math.max(...fields.map((record) => new Set(record.map(bare).filter(wanted)).size));
    const even = rows.filter((row) => row.length === header.length).length / Math.max(1, rows.length);
    const score = known * 10 + (header.length > 1 ? 1 + even : 0);
    if (score > most) {
      most = score;
      best = delimiter;
    }
  }
  return best;
}

const bare = (field: string) => field.trim().replace(/^"|"$/g, '');
