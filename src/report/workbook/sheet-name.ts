/** Longest name of a sheet; the signs that it cannot have (`[]:*?/\`) are in no name of a table. */
const LONGEST = 31;

function sumOf(text: string): string {
  let sum = 0;
  for (const char of text) sum = (sum * 31 + (char.codePointAt(0) ?? 0)) >>> 0;
  return sum.toString(36).padStart(7, '0').slice(-5);
}

/**
 * Names of sheets after the names of their tables' files: the same where it is short enough, else its beginning and a sum of
 * the whole, so that a name stays from one review to the next, whatever other tables there are.
 *
 * @param names  no two alike, of small letters, digits and dashes
 */
export function sheetNames(names: readonly string[]): string[] {
  const taken = new Set<string>();
  return names.map((name) => {
    let short = name;
    for (let n = 0; short.length > LONGEST || taken.has(short); n++) {
      const tail = sumOf(n === 0 ? name : `${name} ${n}`);
      short = `${name.slice(0, LONGEST - 1 - tail.length).replace(/-+$/, '')}-${tail}`;
    }
    taken.add(short);
    return short;
  });
}
