import jstat from 'jstat';
import { uniformInt } from 'pure-rand/distribution/uniformInt';
import { xoroshiro128plus } from 'pure-rand/generator/xoroshiro128plus';

/**
 * Points spread evenly over independent standard normals: each number takes the middles of `count` equal shares of its distribution,
 * in an order of its own (a Latin hypercube). A dozen points so span what a dozen drawn at will may leave out. The same for the same counts.
 *
 * @source  McKay, Beckman and Conover 1979 (Technometrics 21), the middles taken; libraries `jstat` (quantiles), `pure-rand` (order)
 * @returns [count][numbers]
 */
export function spreadNormals(count: number, numbers: number): number[][] {
  const generator = xoroshiro128plus(count);
  const middles = Array.from({ length: count }, (_, i) => jstat.normal.inv((i + 0.5) / count, 0, 1));
  const columns = Array.from({ length: numbers }, () => {
    const order = [...middles];
    for (let last = count - 1; last > 0; last--) {
      const other = uniformInt(generator, 0, last);
      [order[last], order[other]] = [order[other], order[last]];
    }
    return order;
  });
  return middles.map((_, i) => columns.map((column) => column[i]));
}
