import { uniformFloat64 } from 'pure-rand/distribution/uniformFloat64';
import { xoroshiro128plus } from 'pure-rand/generator/xoroshiro128plus';

/** A stream of random numbers of its own: adding a draw in one place moves no other. */
export interface Random {
  /** [0, 1) */
  uniform(): number;
  /** mean 0, standard deviation 1 */
  normal(): number;
  /** whole number, both ends included */
  integer(from: number, to: number): number;
}

/** @param name what the stream is for; the seed and the name together settle every draw */
export function randomStream(seed: number, name: string): Random {
  let hash = seed | 0;
  for (let i = 0; i < name.length; i++) hash = Math.imul(hash ^ name.charCodeAt(i), 0x01000193) ^ (hash >>> 13);
  const generator = xoroshiro128plus(hash);
  const uniform = () => uniformFloat64(generator);
  let spare: number | null = null;
  return {
    uniform,
    normal() {
      if (spare !== null) {
        const kept = spare;
        spare = null;
        return kept;
      }
      // Box-Muller: two uniforms make two normals.
      const radius = Math.sqrt(-2 * Math.log(1 - uniform()));
      const angle = 2 * Math.PI * uniform();
      spare = radius * Math.sin(angle);
      return radius * Math.cos(angle);
    },
    integer: (from, to) => from + Math.floor(uniform() * (to - from + 1)),
  };
}
