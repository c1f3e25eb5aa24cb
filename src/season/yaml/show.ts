/** What was given, short enough for a message: `"36"`, `a list`, `nothing`. */
export function show(value: unknown): string {
  if (value === null || value === undefined) return 'empty';
  if (Array.isArray(value)) return value.length === 0 ? 'an empty list' : 'a list';
  if (typeof value === 'object') return 'a map';
  const text = String(value);
  return JSON.stringify(text.length > 60 ? `${text.slice(0, 57)}…` : text);
}
