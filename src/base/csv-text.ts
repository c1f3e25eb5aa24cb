/**
 * A text as a cell of a CSV file: one that a spreadsheet would take for a formula gets an apostrophe in front (OWASP, CSV
 * injection); commas, quotes and line ends are quoted (RFC 4180). Numbers never come here.
 */
export function csvText(text: string): string {
  const guarded = /^[=+\-@\t\r]/.test(text) ? `'${text}` : text;
  return /[",\r\n]/.test(guarded) ? `"${guarded.replaceAll('"', '""')}"` : guarded;
}
