import type { FormulaSource } from '../../base/formula.ts';
import { sourceOf } from '../../base/sources/sources.ts';

/** `American Society … (1996), D272.3, eq. 1; from memory`. The whole work stands under the page's sources. @throws RangeError for an unknown key */
export function sourceText({ key, place }: FormulaSource): string {
  const { authors, year, title, provenance } = sourceOf(key);
  // Standards and bulletins go by their number.
  const number = title.match(/^([A-Z]+[-\w. ]*\d[\w.-]*):/)?.[1];
  const name = year === null ? authors : `${authors} (${year})`;
  const parts = [name, number, place].filter((part) => part !== undefined);
  return `${parts.join(', ')}${provenance === 'memory' ? '; from memory' : '; read'}`;
}
