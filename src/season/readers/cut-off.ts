/**
 * Why the last row of a text is not believed: no line break ends it and it has fewer fields than a whole one, so that its last number may be half
 * of one. Null for a whole row.
 *
 * @param wanted  fields of a whole row
 */
export function cutOff(text: string, fields: number, wanted: number): string | null {
  if (fields >= wanted || /[\r\n]\s*$/.test(text)) return null;
  return `is the last and is cut off: it has ${fields} of ${wanted} fields and no end of line`;
}
