import { listed } from '../../base/listed.ts';
import type { Cover } from '../../report/page.ts';
import type { Units } from '../../report/units.ts';
import type { LoadedSeason } from '../../season/loaded.ts';

/** What a person may state for the cover, in place of what season.yaml says. */
export interface Stated {
  preparedFor: string | null;
  preparedBy: string | null;
  /** `20 May 2025` */
  date: string | null;
}

export interface CoverInput {
  loaded: LoadedSeason;
  units: Units;
  stated?: Stated;
}

/** Names from the command line, else from season.yaml; a date only where one is given. */
export function yearEndCover({ loaded, units, stated }: CoverInput): Cover {
  const { season, load } = loaded;
  const files = load.files.filter(({ role }) => role !== 'history');
  const first = files.flatMap(({ firstMs }) => (firstMs === null ? [] : [firstMs]));
  const last = files.flatMap(({ lastMs }) => (lastMs === null ? [] : [lastMs]));
  const span =
    first.length === 0
      ? ''
      : `, ${units.date(season.startsMs ?? Math.min(...first))} to ${units.date((season.endsMs ?? Math.max(...last) + 1) - 1)}`;
  const names = season.bins.map(({ name }) => name);
  return {
    preparedFor: stated?.preparedFor ?? season.preparedFor,
    preparedBy: stated?.preparedBy ?? season.preparedBy,
    date: stated?.date ?? null,
    subtitle: `Grain, fans and energy of ${season.bins.length > 8 ? `${season.bins.length} bins` : listed(names)}${span}`,
    about:
      'The first page after this one sums the season up; each chapter begins with its answer; the last pages say how the numbers were made and who says so. Numbers in brackets are 90 % intervals: nine times in ten the true value lies inside. A dash is a number that the data cannot carry, with its reason.',
  };
}
