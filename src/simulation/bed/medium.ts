import type { CubicTable } from './cubic-table.ts';
import type { StorageLife } from './storage-life.ts';

/**
 * The grain of a bed as plain numbers and tables, made once by `mediumOf`; what the loop over layers reads.
 *
 * Every isotherm in use is one function of a product, RH = f(q(T) p(M)): f(z) = 1 - exp(-z) for Henderson, exp(-z) for
 * Chung-Pfost and Halsey, 1 / (1 + z^C) for Oswin. The tables hold f, q and p, so that a step takes neither powers nor exponentials.
 */
export interface Medium {
  crop: string;
  isotherm: string;
  /** q(T), of the grain temperature in degC, at the places of `SATURATION` */
  byTemp: CubicTable;
  /** p(M), of the moisture as fraction of dry matter */
  byMoisture: CubicTable;
  /** f(z) */
  humidity: CubicTable;
  /** heat of grain with its water, J/(kg K) of dry matter: heatDry + heatPerMoisture * M */
  heatDryJKgK: number;
  heatPerMoistureJKgK: number;
  /** heat that binds the water, beyond that of free water, summed from bone dry: J per kg of dry matter, of M */
  binding: CubicTable;
  /** thin-layer rate k of dM/dt = -k (M - Me), 1/s, of the grain temperature in degC */
  rate: CubicTable;
  /** true: grain and leaving air are in balance after each step, whatever the rate */
  nearEquilibrium: boolean;
  /** what the rate rests on, for the page */
  thinLayer: string;
  /** dry matter of bulk grain, kg/m3 */
  dryDensityKgM3: number;
  conductivityWMK: number;
  storage: StorageLife | null;
  /** heat and water of respiration over those of the storage rule's dry-matter loss: 1 unless a log tells otherwise */
  respirationFactor: number;
  /** what the tables were made with, see `MediumOptions`: multiplies the published rate and specific heat; moves the isotherm, dry basis */
  rateFactor: number;
  heatFactor: number;
  moistureShiftDb: number;
}
