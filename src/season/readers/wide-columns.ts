import type { Season } from '../season.ts';
import { findPlace, type Place } from './places.ts';
import { shownList } from './shown.ts';

/** A sensor that headers of a wide file name; `places` by bin id, for the bins that have it. */
export interface WideSlot {
  name: string;
  places: Map<string, Place>;
}

export interface WideMatch {
  columns: { header: string; index: number; slot: number }[];
  problems: string[];
}

/**
 * The columns of a wide file whose headers fit a pattern such as `T {cable}-{sensor}`.
 *
 * @param bin    the bin of every row; null: a column or `{bin}` in the pattern says it, and a sensor must be in some bin
 * @param cable  the cable where the pattern does not say it
 * @param slots  sensors found so far; added to, so that temperature and moisture of a sensor share a row
 */
export function wideColumns(
  season: Season,
  pattern: string,
  headers: readonly string[],
  bin: string | null,
  cable: string | null,
  slots: WideSlot[],
): WideMatch {
  const test = patternTest(pattern);
  const columns: WideMatch['columns'] = [];
  const unknown: string[] = [];
  const taken = new Map<number, string>();
  const problems: string[] = [];
  headers.forEach((header, index) => {
    const groups = test.exec(header.replace(/\s+/g, ' '))?.groups;
    if (groups === undefined) return;
    const said = { cable: groups.cable?.trim() ?? cable ?? '', sensor: groups.sensor?.trim() ?? '' };
    const own = groups.bin?.trim() ?? bin;
    const places = new Map<string, Place>();
    for (const id of own === null ? season.bins.map((one) => one.id) : [own]) {
      const place = findPlace(season, { bin: id, ...said });
      if (typeof place !== 'string') places.set(place.texts.bin, place);
    }
    if (places.size === 0) {
      unknown.push(header);
      return;
    }
    const slot = slotOf(slots, places, groups.bin !== undefined);
    const twin = taken.get(slot);
    if (twin !== undefined) problems.push(`the headers ${shownList([twin, header])} name the same sensor; rename one`);
    else {
      taken.set(slot, header);
      columns.push({ header, index, slot });
    }
  });
  if (unknown.length > 0) {
    const where = bin === null ? 'a cable and sensor of the season' : `a cable and sensor of bin ${bin}`;
    problems.push(
      `the headers ${shownList(unknown)} fit "${pattern}" but do not name ${where}. Add the cable or sensor to season.yaml, or rename the columns`,
    );
  } else if (columns.length === 0) {
    problems.push(`no header fits "${pattern}"; the headers are ${shownList(headers)}. Correct headers in season.yaml`);
  }
  return { columns, problems: problems.map((text) => `${text}.`) };
}

function slotOf(slots: WideSlot[], places: Map<string, Place>, ownBin: boolean): number {
  const any = places.values().next().value!;
  const name = `${ownBin ? any.texts.bin : ''} ${any.texts.cable} ${any.sensor}`;
  const at = slots.findIndex((slot) => slot.name === name);
  if (at >= 0) return at;
  slots.push({ name, places });
  return slots.length - 1;
}

function patternTest(pattern: string): RegExp {
  const parts = pattern
    .trim()
    .replace(/\s+/g, ' ')
    .split(/(\{cable\}|\{sensor\}|\{bin\})/);
  const source = parts.map((part) => {
    if (part === '{sensor}') return '(?<sensor>\\d{1,4})';
    if (part === '{cable}' || part === '{bin}') return `(?<${part.slice(1, -1)}>.+?)`;
    return part.replace(/[.*+?^${}()|[\]\\]/g, '\\$&');
  });
  return new RegExp(`^\\s*${source.join('')}\\s*$`, 'i');
}
