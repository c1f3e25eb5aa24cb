/** Begin each in turn, no more than `most` at a time; the first failure ends it once what was begun is done. */
export async function inTurn<T>(
  items: readonly T[],
  most: number,
  one: (place: number, item: T) => Promise<void>,
): Promise<void> {
  const under = new Set<Promise<void>>();
  const failures: unknown[] = [];
  for (const [place, item] of items.entries()) {
    if (under.size >= most) await Promise.race(under);
    if (failures.length > 0) break;
    const job = one(place, item)
      .catch((error: unknown) => {
        failures.push(error);
      })
      .then(() => {
        under.delete(job);
      });
    under.add(job);
  }
  await Promise.all(under);
  if (failures.length > 0) throw failures[0];
}
