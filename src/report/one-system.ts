/** Units of the two kinds of reader, as texts that do not know who reads them say both: `3 °C (5.4 °F)`, `650 to 1,500 L/s (0.77 to 1.7 cfm/bu)`. */
const BOTH: readonly (readonly [si: string, us: string])[] = [
  ['°C', '°F'],
  ['L/s', 'cfm/bu'],
  ['L/s per m³', 'cfm/bu'],
  ['kW', 'hp'],
  ['m', 'ft'],
  ['kPa', 'inches of water'],
  ['kWh a tonne-point', 'kWh a bushel-point'],
  ['kWh a tonne', 'kWh a bushel'],
];

const AMOUNT = String.raw`([-−]?\d[\d.,]*(?: to [-−]?\d[\d.,]*)?)`;
const PAIRS = BOTH.map(([si, us]) => ({
  si,
  us,
  said: new RegExp(String.raw`${AMOUNT} ${si} \(${AMOUNT} ${us}\)`, 'g'),
}));

/** A text with one of the two units where it says both. */
export function oneSystem(text: string, system: 'us' | 'si'): string {
  return PAIRS.reduce(
    (told, { si, us, said }) =>
      told.replace(said, (_, metric, customary) => (system === 'us' ? `${customary} ${us}` : `${metric} ${si}`)),
    text,
  );
}

/** The same in every text of a page's data; functions and what else is no text stay as they are. */
export function oneSystemIn<T>(data: T, system: 'us' | 'si'): T {
  if (typeof data === 'string') return oneSystem(data, system) as T;
  if (Array.isArray(data)) return data.map((each) => oneSystemIn(each, system)) as T;
  if (typeof data !== 'object' || data === null || Object.getPrototypeOf(data) !== Object.prototype) return data;
  return Object.fromEntries(Object.entries(data).map(([key, value]) => [key, oneSystemIn(value, system)])) as T;
}
