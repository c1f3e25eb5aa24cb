import { AIR_SOURCES } from './air-sources.ts';
import { BIN_SOURCES } from './bin-sources.ts';
import { GRAIN_SOURCES } from './grain-sources.ts';
import { LAW_SOURCES } from './law-sources.ts';
import { MONEY_SOURCES } from './money-sources.ts';
import { NUMBER_SOURCES } from './number-sources.ts';
import type { Source } from './source.ts';
import { STORAGE_SOURCES } from './storage-sources.ts';

/** The bibliography, sorted by key. */
export const SOURCES: readonly Source[] = [
  ...GRAIN_SOURCES,
  ...AIR_SOURCES,
  ...BIN_SOURCES,
  ...STORAGE_SOURCES,
  ...MONEY_SOURCES,
  ...NUMBER_SOURCES,
  ...LAW_SOURCES,
].sort((a, b) => (a.key < b.key ? -1 : 1));

/** @throws RangeError when the bibliography lacks the key */
export function sourceOf(key: string): Source {
  const found = SOURCES.find((source) => source.key === key);
  if (found === undefined) throw new RangeError(`no source "${key}" in the bibliography (src/base/sources)`);
  return found;
}

/** `Okabe, M. and Ito, K. (2008). Color universal design … . Jikei Medical School …` */
export function citation(source: Source): string {
  const year = source.year === null ? '' : ` (${source.year})`;
  return `${source.authors}${year}. ${source.title}. ${source.where}.`;
}
