/** What neither grain nor the air around it can be; SI, fractions. */
export const LIMITS = {
  /** colder and hotter than weather, a sun-baked roof or a heater's air; digital sensors power up at 85 C and report -127 C when cut off */
  tempC: [-50, 70],
  /** bone-dry and soaked; cables report no less and no more */
  moistureWb: [0.03, 0.45],
  /** dry-sensor reading of 0 % is a failure, 105 % the usual overshoot of a wet one */
  rh: [0.01, 1.05],
  /** 20 in of water either way: far above what a bin fan can hold */
  staticPressurePa: [-5000, 5000],
  /** lowest and highest pressure of air at farms from below the sea to 4,500 m */
  pressurePa: [55_000, 110_000],
  /** a clamp around zero wavers; one put on the wrong way round reads as far below zero as it should above; a bin fan's inrush stays below 2,000 A */
  currentA: [-2, 2000],
  /** likewise; the largest nameplate that season.yaml takes */
  powerW: [-500, 1e6],
} as const satisfies Record<string, readonly [number, number]>;

export type LimitName = keyof typeof LIMITS;

/**
 * Positions of values outside the limits; missing values and those not in use are none.
 *
 * @param values  [readings]
 * @param use     [readings], 0 to pass over
 */
export function outsideLimits(name: LimitName, values: ArrayLike<number>, use: ArrayLike<number>): number[] {
  const [low, high] = LIMITS[name];
  const out: number[] = [];
  for (let i = 0; i < values.length; i++) if (use[i] && !(values[i] >= low && values[i] <= high)) out.push(i);
  return out;
}
