/**
 * Numbers worked out with the heat that is told and with the least that is sure: the first, each interval spanning both.
 *
 * @param told, least  of one make
 */
export function bothHeats<T>(told: T, least: T): T {
  if (Array.isArray(told)) return told.map((one, i) => bothHeats(one, (least as unknown as unknown[])[i])) as T;
  if (told === null || least === null || typeof told !== 'object') return told;
  const [a, b] = [told, least] as unknown as Record<string, unknown>[];
  const spans = isInterval(a.interval) && isInterval(b.interval);
  return Object.fromEntries(
    Object.entries(a).map(([key, value]) => [
      key,
      key === 'interval' && spans
        ? joined(a.interval as [number, number], b.interval as [number, number])
        : bothHeats(value, b[key]),
    ]),
  ) as T;
}

const isInterval = (of: unknown): of is [number, number] => Array.isArray(of) && of.length === 2;

const joined = (one: [number, number], other: [number, number]): [number, number] => [
  Math.min(one[0], other[0]),
  Math.max(one[1], other[1]),
];
