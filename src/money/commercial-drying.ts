import { assertRange } from '../base/errors.ts';

/**
 * Drying for hire at a flat fee. Fees that change with moisture: a `MoistureSchedule`.
 *
 * @param wetBushels         as delivered, 0 or more (common practice: fees count wet bushels)
 * @param points             points of moisture removed, 0 to 60
 * @param feePerBushelPoint  money per bushel and point, 0 or more
 * @returns                  money
 * @throws                   RangeError outside and on NaN
 */
export function commercialDrying(wetBushels: number, points: number, feePerBushelPoint: number): number {
  assertRange('wetBushels', wetBushels, 0, Number.MAX_VALUE);
  assertRange('points', points, 0, 60);
  assertRange('feePerBushelPoint', feePerBushelPoint, 0, Number.MAX_VALUE);
  return wetBushels * points * feePerBushelPoint;
}
