/** The units in which fuel, or current, for heat is sold. */
export const FUEL_UNITS = ['gal', 'L', 'm3', 'ft3', 'ccf', 'Mcf', 'therm', 'MMBtu', 'kWh', 'MWh'] as const;

export type FuelUnit = (typeof FUEL_UNITS)[number];
