import type { Figure } from '../page.ts';

/** Panels that one printed page takes. */
export const PANELS_A_PAGE = 10;

/**
 * A figure of many panels or rows as several, each of which one printed page takes, so that none is cut and fifty bins stay readable.
 *
 * @param items  its panels in order, by name
 * @param most   of one part
 * @param make   the figure of some of them; all parts to one scale
 */
export function inParts<T extends { name: string }>(
  items: readonly T[],
  most: number,
  make: (some: readonly T[]) => Figure,
): Figure {
  const whole = make(items);
  if (items.length <= most) return whole;
  const count = Math.ceil(items.length / most);
  const each = Math.ceil(items.length / count);
  const parts = Array.from({ length: count }, (_, i) => {
    const some = items.slice(i * each, (i + 1) * each);
    const names = some.length === 1 ? some[0].name : `${some[0].name} to ${some[some.length - 1].name}`;
    return { ...make(some), id: `${whole.id}-${i + 1}`, title: `part ${i + 1} of ${count}: ${names}` };
  });
  return { ...whole, parts };
}

/** What is drawn of a figure: itself, or its parts, each with its title. */
export function partsOf(figure: Figure): readonly Figure[] {
  const { parts } = figure;
  if (parts === undefined) return [figure];
  // What is left out is told once, under the last.
  const last = parts.length - 1;
  return parts.map((part, i) => ({
    ...part,
    id: i === 0 ? figure.id : part.id,
    title: `${figure.title} (${part.title})`,
    notShown: i === last ? figure.notShown : null,
  }));
}
