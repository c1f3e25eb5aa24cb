/**
 * The least number of hits that a true share lets expect: fewer come by chance at most with probability `alarm`. Exact
 * binomial sums.
 *
 * @param n      cases, independent
 * @param share  true share of hits
 * @param alarm  chance of a false alarm
 */
export function leastHits(n: number, share: number, alarm: number): number {
  let term = (1 - share) ** n;
  let below = 0;
  let hits = 0;
  while (below + term <= alarm) {
    below += term;
    term *= ((n - hits) / (hits + 1)) * (share / (1 - share));
    hits += 1;
  }
  return hits;
}
