/** Mean width of a sign of the sans that pages use, in sizes of its type. */
export const SIGN_WIDTH = 0.56;

/** Labels under the middles of evenly spaced columns, left to right: all that do not run into the one before. */
export function spacedLabels(
  labels: readonly string[],
  stepPx: number,
  typePx: number,
): { text: string; at: number }[] {
  const kept: { text: string; at: number }[] = [];
  let freeFromPx = Number.NEGATIVE_INFINITY;
  labels.forEach((text, at) => {
    const half = (text.length * SIGN_WIDTH * typePx) / 2;
    const middle = at * stepPx;
    if (middle - half < freeFromPx) return;
    kept.push({ text, at });
    freeFromPx = middle + half + typePx / 3;
  });
  return kept;
}
