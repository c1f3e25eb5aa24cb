/** A PDF date at UTC: `D:20250520000000+00'00'`. */
function pdfDate(ms: number): string {
  const digits = new Date(ms).toISOString().replace(/\D/g, '').slice(0, 14);
  return `D:${digits}+00'00'`;
}

/** The printer writes its clock into a PDF; the stated time of making takes its place, so that the same report is the same bytes. */
export function fixedDates(pdf: Uint8Array, ms: number): Uint8Array {
  const text = Buffer.from(pdf).toString('latin1');
  const date = pdfDate(ms);
  // Places in the file are counted in bytes: a date of another length would move what comes after it.
  const fixed = text.replace(/\/(CreationDate|ModDate) \((D:[^)]*)\)/g, (whole, key: string, old: string) =>
    old.length === date.length ? `/${key} (${date})` : whole,
  );
  return Buffer.from(fixed, 'latin1');
}
