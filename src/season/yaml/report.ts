import type { Problem } from '../../base/errors.ts';
import type { SeasonCode } from './codes.ts';
import { pathText, type YamlPath } from './path-text.ts';
import type { Place, Places } from './places.ts';

export const SEASON_FILE_NAME = 'season.yaml';

/** Which part of a pair a problem points at; `parent` for a key that is missing. */
export type Spot = 'value' | 'key' | 'parent';

/** Takes one problem: `text` goes on after the path, e.g. `is "36"; a length needs a unit …`. */
export type Report = (code: SeasonCode, path: YamlPath, text: string, spot?: Spot) => void;

/** Problems with their places, gathered until all checks are done. */
export class Problems {
  private readonly found: Problem[] = [];
  private readonly places: Places;

  constructor(places: Places) {
    this.places = places;
  }

  readonly report: Report = (code, path, text, spot = 'value') => {
    const at = spot === 'key' ? this.places.key(path) : this.places.value(spot === 'parent' ? path.slice(0, -1) : path);
    this.found.push({ code, file: SEASON_FILE_NAME, ...at, message: `${pathText(path)} ${text}` });
  };

  /** Line and column of the value at a path. */
  place(path: YamlPath): Place {
    return this.places.value(path);
  }

  /** A problem whose place is known already. */
  add(problem: Problem): void {
    this.found.push(problem);
  }

  /** In the order of the file. */
  list(): Problem[] {
    return this.found.toSorted((a, b) => (a.line ?? 0) - (b.line ?? 0) || (a.column ?? 0) - (b.column ?? 0));
  }
}
