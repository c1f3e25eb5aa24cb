/** A crop as the trade sells and stores it. */
export interface Crop {
  id: string;
  name: string;
  /** weight of a legal bushel, kg */
  legalBushelKg: number;
  /** default isotherm, as season.yaml names it */
  isotherm: string;
  /** usual resistance multiplier for packing and fines */
  airflowFactor: number;
}

const LB_KG = 0.45359237;

const crop = (id: string, name: string, bushelLb: number, isotherm: string, airflowFactor: number): Crop => ({
  id,
  name,
  legalBushelKg: bushelLb * LB_KG,
  isotherm,
  airflowFactor,
});

// Legal bushel weights: USDA/state weights and measures tables, as in Wikipedia "Test weight"; default isotherms: ASAE D245.5 and D245.4.
export const CROPS: readonly Crop[] = [
  crop('corn', 'Corn', 56, 'modified Henderson D245.5', 1.5),
  crop('soybean', 'Soybeans', 60, 'modified Halsey D245.5', 1.3),
  crop('wheat', 'Wheat', 60, 'modified Chung-Pfost D245.5', 1.3),
  crop('soft-wheat', 'Soft wheat', 60, 'modified Henderson D245.4', 1.3),
  crop('durum', 'Durum wheat', 60, 'modified Oswin D245.5', 1.3),
  crop('sorghum', 'Grain sorghum', 56, 'modified Chung-Pfost D245.5', 1.3),
  crop('barley', 'Barley', 48, 'modified Henderson D245.4', 1.3),
  crop('rice', 'Rough rice', 45, 'modified Henderson D245.5', 1.3),
  crop('canola', 'Canola', 50, 'modified Halsey D245.5', 1.3),
];

/** @throws RangeError that lists the crops */
export function cropOf(id: string): Crop {
  const found = CROPS.find((one) => one.id === id);
  if (found === undefined) throw new RangeError(`no crop "${id}"; there are ${CROPS.map((one) => one.id).join(', ')}`);
  return found;
}
