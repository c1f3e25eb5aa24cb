/** Text from a file as a message may show it: quoted, one line, not endless. */
export function shown(text: string): string {
  const flat = Array.from(text, (char) => (char < ' ' || (char >= '\u007f' && char < '\u00a0') ? '·' : char));
  return `"${flat.length > 60 ? `${flat.slice(0, 57).join('')}…` : flat.join('')}"`;
}

/** Names in a message: `"a", "b", …`, at most twenty. */
export function shownList(texts: readonly string[]): string {
  const list = texts.slice(0, 20).map(shown).join(', ');
  return texts.length > 20 ? `${list} and ${texts.length - 20} more` : list;
}
