import { fromSi, type UnitKind } from '../../base/units.ts';
import type { Quantity } from '../../report/quantities.ts';

/** How the name of a column ends, and what its numbers are therefore of. */
export interface NamedUnit {
  /** after the last `_` */
  ending: string;
  of: Quantity;
  /** the unit as `amount` takes it; left out: the quantity's own */
  unit?: string;
}

const NAMED: readonly NamedUnit[] = [
  { ending: 'f', of: 'temperature', unit: 'degF' },
  { ending: 'c', of: 'temperature' },
  { ending: 'k', of: 'temperature difference' },
  { ending: 'ft', of: 'length', unit: 'ft' },
  { ending: 'm', of: 'length' },
  { ending: 'wb', of: 'moisture' },
  { ending: 'pct', of: 'share', unit: '%' },
  { ending: 'points', of: 'points' },
  { ending: 'lb', of: 'water', unit: 'lb' },
  { ending: 'kg', of: 'water' },
  { ending: 'kwh', of: 'energy' },
  { ending: 'kw', of: 'power' },
  { ending: 'h', of: 'hours' },
  { ending: 'hours', of: 'hours' },
  { ending: 'days', of: 'days' },
  { ending: 'inh2o', of: 'pressure', unit: 'inH2O' },
  { ending: 'pa', of: 'pressure' },
  { ending: 'a', of: 'current' },
  { ending: 'money', of: 'money' },
];

/** What a column's numbers are of by its name: `temp_f`, `mean_moisture_pct`, `fan_h`; null where the name does not say. */
export function namedUnit(column: string): NamedUnit | null {
  const parts = column.toLowerCase().split('_');
  const found = NAMED.find(({ ending }) => ending === parts.at(-1));
  // `h` alone is a name like any other, `hours` tells enough.
  if (found === undefined || (parts.length === 1 && found.ending !== found.of)) return null;
  return found.ending === 'pct' && parts.includes('moisture') ? { ...found, of: 'moisture' } : found;
}

/** `mean_temp_f` as a heading: `Mean temperature`; `fanHours`: `Fan hours`. */
export function headingOf(column: string): string {
  const parts = column.replace(/([a-z])([A-Z])/g, (_, before, after) => `${before}_${after.toLowerCase()}`).split('_');
  const told = namedUnit(column);
  const words = told === null || told.ending === 'hours' || told.ending === 'points' ? parts : parts.slice(0, -1);
  const text = words.map((word) => SPELLED[word] ?? word).join(' ');
  return text.charAt(0).toUpperCase() + text.slice(1);
}

const SPELLED: Readonly<Record<string, string>> = { temp: 'temperature', rh: 'relative humidity' };

/** A stored column (SI) in a reader's unit: the ending of its name, and the kind and unit to convert with. */
interface ShownUnit {
  ending: string;
  kind: UnitKind;
  unit: string;
}

const SHOWN: Readonly<Record<'us' | 'si', Readonly<Record<string, ShownUnit>>>> = {
  us: {
    m: { ending: 'ft', kind: 'length', unit: 'ft' },
    degC: { ending: 'f', kind: 'temperature', unit: 'degF' },
    '1': { ending: 'pct', kind: 'fraction', unit: '%' },
    kg: { ending: 'lb', kind: 'weight', unit: 'lb' },
    J: { ending: 'kwh', kind: 'energy', unit: 'kWh' },
    W: { ending: 'kw', kind: 'power', unit: 'kW' },
    Pa: { ending: 'inh2o', kind: 'pressure', unit: 'inH2O' },
    s: { ending: 'h', kind: 'time', unit: 'h' },
  },
  si: {
    '1': { ending: 'pct', kind: 'fraction', unit: '%' },
    J: { ending: 'kwh', kind: 'energy', unit: 'kWh' },
    W: { ending: 'kw', kind: 'power', unit: 'kW' },
    s: { ending: 'h', kind: 'time', unit: 'h' },
  },
};

/**
 * The name of a stored column for a reader, and how its numbers come there.
 *
 * @param name  as `src/tables/columns.ts` lists it
 * @param unit  SI, of the same list
 */
export function shownColumn(
  name: string,
  unit: string | null,
  system: 'us' | 'si',
): { name: string; shown: (si: number) => number } {
  const same = { name, shown: (si: number) => si };
  // A logged state is 1 or 0, not a share; an air pressure in inches of water would tell nobody anything.
  if (unit === null || name === 'on' || name === 'pressure_pa') return same;
  if (unit === 'currency') return { ...same, name: `${name}_money` };
  const found = SHOWN[system][unit];
  if (found === undefined) return same;
  const stem = name.replace(/_(m|c|wb|kg|j|w|pa|s)$/, '');
  const zero = fromSi(found.kind, 0, found.unit);
  const slope = fromSi(found.kind, 1, found.unit) - zero;
  return { name: `${stem}_${found.ending}`, shown: (si) => zero + slope * si };
}
