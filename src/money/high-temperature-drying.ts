import { assertRange } from '../base/errors.ts';

/** Use and prices of a high-temperature dryer. Fuel in any unit, the same in use and price. */
export interface DryerRates {
  /** fuel per bushel and point, 0 or more; propane 0.015 to 0.022 gal (Iowa State University, PM 3063C) */
  fuelPerBushelPoint: number;
  /** money per unit of fuel, 0 or more */
  fuelPrice: number;
  /** kWh per bushel and point, 0 or more */
  kwhPerBushelPoint: number;
  /** money per kWh, 0 or more */
  pricePerKwh: number;
  /** money per bushel whatever the points (handling, labour), 0 or more; left out: 0 */
  otherPerBushel?: number;
}

/** What drying takes and costs, for all bushels. */
export interface DryingCost {
  fuel: number;
  kwh: number;
  fuelCost: number;
  electricityCost: number;
  otherCost: number;
  cost: number;
}

/**
 * Use and cost of drying in a high-temperature dryer, fuel and electricity in proportion to bushels and points.
 *
 * @param wetBushels  0 or more
 * @param points      points of moisture removed, 0 to 60
 * @throws            RangeError outside and on NaN
 */
export function highTemperatureDrying(wetBushels: number, points: number, rates: DryerRates): DryingCost {
  assertRange('wetBushels', wetBushels, 0, Number.MAX_VALUE);
  assertRange('points', points, 0, 60);
  const { fuelPerBushelPoint, fuelPrice, kwhPerBushelPoint, pricePerKwh, otherPerBushel = 0 } = rates;
  for (const [name, value] of Object.entries({ ...rates, otherPerBushel })) {
    assertRange(name, value, 0, Number.MAX_VALUE);
  }
  const fuel = fuelPerBushelPoint * points * wetBushels;
  const kwh = kwhPerBushelPoint * points * wetBushels;
  const fuelCost = fuel * fuelPrice;
  const electricityCost = kwh * pricePerKwh;
  const otherCost = otherPerBushel * wetBushels;
  return { fuel, kwh, fuelCost, electricityCost, otherCost, cost: fuelCost + electricityCost + otherCost };
}
