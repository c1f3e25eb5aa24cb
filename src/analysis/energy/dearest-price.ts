import type { RateBreaks } from '../../money/rate-breaks.ts';

/** The highest price of any piece, money per kWh; 0 where none is known. */
export function dearestPrice({ pricePerKwh }: RateBreaks): number {
  return Math.max(0, ...pricePerKwh.filter((price) => !Number.isNaN(price)));
}
