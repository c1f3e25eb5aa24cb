import type { Season } from '../season.ts';

export type SaidUnit = 'degF' | 'degC' | null;

/** Temperature unit that season.yaml states for each data file; null where it states none. By path. */
export function saidUnits(season: Season): Map<string, SaidUnit> {
  const out = new Map<string, SaidUnit>();
  for (const file of season.files) {
    const written = file.columns?.temperature?.unit ?? null;
    const unit =
      written === null ? null : /f$/i.test(written.trim()) ? 'degF' : /c$/i.test(written.trim()) ? 'degC' : null;
    for (const path of file.paths) out.set(path, unit);
  }
  return out;
}

/** One unit for rows of several files; null when they differ or one is not known. */
export function saidBy(paths: Iterable<string>, units: ReadonlyMap<string, SaidUnit>): SaidUnit {
  let said: SaidUnit | undefined;
  for (const path of paths) {
    const unit = units.get(path) ?? null;
    if (unit === null || (said !== undefined && said !== unit)) return null;
    said = unit;
  }
  return said ?? null;
}

/** Whether season.yaml tells a file's humidity as a fraction; else it is in percent. */
export function saidFraction(season: Season, path: string): boolean {
  const file = season.files.find(({ paths }) => paths.includes(path));
  return file?.columns?.humidity?.unit?.trim() === 'fraction';
}
