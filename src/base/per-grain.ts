/** An amount for grain (money, fuel, energy), stated by the legal bushel or by weight. */
export interface PerGrain {
  amount: number;
  of: 'bushel' | 'kg';
}

/**
 * The same amount by the legal bushel.
 *
 * @param legalBushelKg  weight of the crop's legal bushel, kg
 */
export function perLegalBushel({ amount, of }: PerGrain, legalBushelKg: number): number {
  return of === 'bushel' ? amount : amount * legalBushelKg;
}
