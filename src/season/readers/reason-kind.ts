/** The kind of a reason, without the value that it shows, the place it names and its advice: rows that fail alike have one. */
export function reasonKind(reason: string): string {
  return reason
    .replace(/".*"/s, '')
    .replace(/, which .*|;.*/s, '')
    .replace(/\d+/g, '#');
}

/** The kind that most have, with its members in their order; of kinds as large the first. */
export function largestKind<T>(reasons: Iterable<readonly [T, string]>): readonly (readonly [T, string])[] {
  const kinds = new Map<string, (readonly [T, string])[]>();
  for (const one of reasons) {
    const kind = reasonKind(one[1]);
    const members = kinds.get(kind);
    if (members === undefined) kinds.set(kind, [one]);
    else members.push(one);
  }
  return [...kinds.values()].sort((a, b) => b.length - a.length)[0] ?? [];
}
