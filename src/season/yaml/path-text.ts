/** Where a value stands: keys of maps and positions in lists, from the root. */
export type YamlPath = readonly (string | number)[];

/** `bins[0].grain.depth`; the root is `season.yaml`. */
export function pathText(path: YamlPath): string {
  if (path.length === 0) return 'season.yaml';
  return path
    .map((step, i) => (typeof step === 'number' ? `[${step}]` : i === 0 ? step : `.${step}`))
    .join('')
    .slice(0, 200);
}
