// Where a reader of the file may begin a cell (the text's start, and behind what other readers part cells and rows at),
// if what stands there opens a formula, be it behind blanks or apostrophes.
const OPENS = /(?<=^|[;\t\r\n])(?=[\s']*[=+\-@＝＋－＠\t\r\n])/g;
const OPENED = /(?<=^|[;\t\r\n])'(?=[\s']*[=+\-@＝＋－＠\t\r\n])/g;

// A number as a logger writes it: all of the text, or all of a part of it.
const NUMBER = /^\s*[+-]?(\d+([.,]\d+)*|[.,]\d+)([eE][+-]?\d+)?\s*$/;
const NUMBER_WITHIN = /^[ \u00a0]*[+-]?(\d+([.,]\d+)*|[.,]\d+)([eE][+-]?\d+)?[ \u00a0]*(?=[;\t\r\n]|$)/;

/**
 * A text that no spreadsheet takes for a formula: an apostrophe goes before a cell's `=`, `+`, `-`, `@`, tab or line end, and
 * so behind a semicolon, a tab or a line end within it, where spreadsheets of other languages part cells (OWASP, CSV
 * injection; the wide forms of the signs from memory). Numbers stand as they are: `-9999` runs nothing. Apostrophes that
 * stood there already get one more, so that `unguarded` gives every text back.
 */
export function guarded(text: string): string {
  return text.replace(OPENS, (_, at: number) => ((at === 0 ? NUMBER : NUMBER_WITHIN).test(text.slice(at)) ? '' : "'"));
}

/** The text that `guarded` was given. */
export function unguarded(text: string): string {
  return text.replace(OPENED, '');
}

/** A text as a cell of a CSV file: guarded; commas, quotes and line ends are quoted (RFC 4180). Numbers never come here. */
export function csvText(text: string): string {
  const safe = guarded(text);
  return /[",\r\n]/.test(safe) ? `"${safe.replaceAll('"', '""')}"` : safe;
}
