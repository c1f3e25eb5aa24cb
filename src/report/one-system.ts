/** `3 °C (5.4 °F)`, as texts say it that do not know who reads them. */
const PAIR = /(-?\d[\d.,]*) °C \((-?\d[\d.,]*) °F\)/g;

/** `0.65 to 1.5 m³/s (0.77 to 1.7 cfm/bu)`. */
const FLOWS = /([\d.,]+ to [\d.,]+) m³\/s \(([\d.,]+ to [\d.,]+) cfm\/bu\)/g;

/** A text with one of the two units where it says both. */
export function oneSystem(text: string, system: 'us' | 'si'): string {
  return text
    .replace(PAIR, (_, celsius, fahrenheit) => (system === 'us' ? `${fahrenheit} °F` : `${celsius} °C`))
    .replace(FLOWS, (_, metric, perBushel) => (system === 'us' ? `${perBushel} cfm/bu` : `${metric} m³/s`));
}

/** The same in every text of a page's data; functions and what else is no text stay as they are. */
export function oneSystemIn<T>(data: T, system: 'us' | 'si'): T {
  if (typeof data === 'string') return oneSystem(data, system) as T;
  if (Array.isArray(data)) return data.map((each) => oneSystemIn(each, system)) as T;
  if (typeof data !== 'object' || data === null || Object.getPrototypeOf(data) !== Object.prototype) return data;
  return Object.fromEntries(Object.entries(data).map(([key, value]) => [key, oneSystemIn(value, system)])) as T;
}
