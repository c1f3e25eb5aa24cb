import { distance } from 'fastest-levenshtein';

/** The known word nearest to what was written, or null when none is near enough to be meant. */
export function nearest(given: string, known: readonly string[]): string | null {
  const word = given.toLowerCase().replaceAll('-', '_');
  let best: string | null = null;
  let least = Number.POSITIVE_INFINITY;
  for (const one of known) {
    const far = distance(word.slice(0, 100), one.toLowerCase().replaceAll('-', '_'));
    if (far < least) {
      least = far;
      best = one;
    }
  }
  if (best === null) return null;
  // A third of the letters wrong is a typing error, and so are all letters in another order; more is another word. Of one or two
  // letters any other would do: B3 is not meant for B1.
  const typing = Math.floor(Math.max(word.length, best.length) / 3);
  return least <= typing || sorted(word) === sorted(best) ? best : null;
}

const sorted = (word: string) => [...word].sort().join('');

/** ` Did you mean "bins"?`, or nothing. */
export function didYouMean(given: string, known: readonly string[]): string {
  const near = nearest(given, known);
  return near === null ? '' : ` Did you mean "${near}"?`;
}
