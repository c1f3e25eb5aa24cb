/** Legal bushel of corn, 56 lb (US weights and measures), kg. */
export const CORN_BUSHEL_KG = 56 * 0.45359237;

/** 1,000 bu of corn by volume, at a start moisture. */
export function thousandBushels(startWb: number) {
  return { bushels: 1000, dryMatterKg: 1000 * CORN_BUSHEL_KG * (1 - startWb), from: 'volume' as const };
}
