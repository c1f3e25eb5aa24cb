import { FAN_ON } from '../types.ts';
import { middle } from './usual-interval.ts';

const SPIKE = 2.5;

/**
 * Take the starting surge out of sampled power: a motor draws five to eight times its running current for seconds, and a
 * sample that hits them would be held for a whole interval. A lone on sample over 2.5 times the usual power becomes the
 * usual power; a level that lasts, as of a heater, has a neighbour like it and stays.
 *
 * @param watt   [samples]
 * @param state  [samples]
 */
export function withoutInrush(watt: Float64Array, state: Uint8Array): Float64Array {
  const usual = middle(watt.filter((value, i) => state[i] === FAN_ON && !Number.isNaN(value)));
  return watt.map((value, i) => {
    if (state[i] !== FAN_ON || !(value > SPIKE * usual)) return value;
    const like = (other: number) => Math.abs(other - value) <= 0.3 * value;
    return like(watt[i - 1]) || like(watt[i + 1]) ? value : usual;
  });
}
