import type { MathJsInstance, Unit } from 'mathjs';
import mathjs from 'mathjs/lib/browser/math.js';
import { BUSHEL_FT3 } from './bushel.ts';

const { create, createUnitDependencies, toDependencies, unitDependencies } = mathjs;
// Dimensional arithmetic is the library's; only the trade's own units are told to it here.
const math = create({ unitDependencies, createUnitDependencies, toDependencies }, {}) as MathJsInstance;
math.createUnit('point'); // a point of moisture, wet basis
math.createUnit('money'); // any currency
math.createUnit('bu'); // a bushel stays its own dimension: of weight for money, of 1.2445 ft3 for volume
math.createUnit('inH2O', '249.08891 Pa'); // NIST SP 811, table of conversion factors: inch of water, 4 degC 249.082, 39.2 degF conventional 249.0889
math.createUnit('bushelVolume', `${BUSHEL_FT3} ft^3`);
math.createUnit('cfm', '1 ft^3/minute');

/** What a quantity is of. Values inside the kit are in the SI unit of its kind. */
export type UnitKind =
  | 'length'
  | 'temperature'
  | 'temperature difference'
  | 'power'
  | 'heat flow'
  | 'energy'
  | 'pressure'
  | 'airflow'
  | 'fraction'
  | 'moisture'
  | 'bulk density'
  | 'weight'
  | 'current'
  | 'voltage'
  | 'time'
  | 'speed'
  | 'money'
  | 'price per energy'
  | 'price per power'
  | 'price per month'
  | 'price per power and year'
  | 'price per bushel'
  | 'price per bushel-point'
  | 'price per tonne'
  | 'price per tonne-point'
  | 'price per fuel'
  | 'fuel per bushel-point'
  | 'energy per bushel-point'
  | 'fuel per tonne-point'
  | 'energy per tonne-point'
  | 'shrink per point';

interface KindDef {
  /** the unit inside, as the library spells it; empty: a plain number */
  expression: string;
  /** spelling in files -> the library's expression */
  units: Readonly<Record<string, string>>;
  /** an example for messages */
  example: string;
}

const CURRENCY = '¤'; // stands for the season's currency code in the spellings below

const KINDS: Readonly<Record<UnitKind, KindDef>> = {
  length: { expression: 'm', units: { ft: 'ft', in: 'inch', m: 'm', cm: 'cm', mm: 'mm' }, example: '36 ft' },
  temperature: { expression: 'degC', units: { degF: 'degF', degC: 'degC', K: 'K' }, example: '40 degF' },
  'temperature difference': {
    expression: 'K',
    units: { degF: 'degF', degC: 'degC', K: 'K' },
    example: '1 degF',
  },
  power: { expression: 'W', units: { hp: 'hp', kW: 'kW', W: 'W' }, example: '15 hp' },
  'heat flow': { expression: 'W', units: { 'BTU/h': 'BTU/hour', kW: 'kW', W: 'W' }, example: '60000 BTU/h' },
  energy: {
    expression: 'J',
    units: { kWh: 'kWh', Wh: 'Wh', MWh: 'MWh', MJ: 'MJ', J: 'J' },
    example: '120 kWh',
  },
  pressure: {
    expression: 'Pa',
    units: { inH2O: 'inH2O', Pa: 'Pa', hPa: 'hPa', kPa: 'kPa', mbar: 'mbar', inHg: '3386.389 Pa', mmHg: 'mmHg' },
    example: '3.1 inH2O',
  },
  airflow: {
    expression: 'm^3/s',
    units: { cfm: 'cfm', 'm3/s': 'm^3/s', 'm3/h': 'm^3/hour', 'L/s': 'L/s' },
    example: '17800 cfm',
  },
  fraction: { expression: '', units: { '%': '0.01', fraction: '1' }, example: '60 %' },
  moisture: { expression: '', units: { '%': '0.01', fraction: '1' }, example: '15 %' },
  'bulk density': {
    expression: 'kg/m^3',
    units: { 'lb/bu': 'lbm/bushelVolume', 'kg/m3': 'kg/m^3', 'kg/hL': 'kg/hL', 'lb/ft3': 'lbm/ft^3' },
    example: '56 lb/bu',
  },
  weight: {
    expression: 'kg',
    units: { lb: 'lbm', kg: 'kg', t: '1000 kg', ton: '2000 lbm' },
    example: '52140 lb',
  },
  current: { expression: 'A', units: { A: 'A', mA: 'mA' }, example: '4 A' },
  voltage: { expression: 'V', units: { V: 'V', kV: 'kV' }, example: '230 V' },
  time: { expression: 's', units: { h: 'hour', min: 'minute', s: 's' }, example: '812.4 h' },
  speed: {
    expression: 'm/s',
    units: { mph: 'mi/hour', 'm/s': 'm/s', 'km/h': 'km/hour', kn: '1852 m/hour' },
    example: '10 mph',
  },
  money: { expression: 'money', units: { [CURRENCY]: 'money' }, example: `120.50 ${CURRENCY}` },
  'price per energy': {
    expression: 'money/kWh',
    units: { [`${CURRENCY}/kWh`]: 'money/kWh', [`${CURRENCY}/MWh`]: 'money/MWh' },
    example: `0.094 ${CURRENCY}/kWh`,
  },
  'price per power': {
    expression: 'money/kW',
    units: { [`${CURRENCY}/kW`]: 'money/kW' },
    example: `9.50 ${CURRENCY}/kW`,
  },
  'price per month': {
    expression: 'money',
    units: { [`${CURRENCY}/month`]: 'money' },
    example: `38 ${CURRENCY}/month`,
  },
  'price per power and year': {
    expression: 'money/hp',
    units: { [`${CURRENCY}/hp/year`]: 'money/hp', [`${CURRENCY}/kW/year`]: 'money/kW' },
    example: `12 ${CURRENCY}/hp/year`,
  },
  'price per bushel': {
    expression: 'money/bu',
    units: { [`${CURRENCY}/bu`]: 'money/bu' },
    example: `4.35 ${CURRENCY}/bu`,
  },
  'price per bushel-point': {
    expression: 'money/bu/point',
    units: { [`${CURRENCY}/bu/point`]: 'money/bu/point' },
    example: `0.03 ${CURRENCY}/bu/point`,
  },
  'price per tonne': {
    expression: 'money/kg',
    units: { [`${CURRENCY}/t`]: 'money/tonne' },
    example: `171 ${CURRENCY}/t`,
  },
  'price per tonne-point': {
    expression: 'money/kg/point',
    units: { [`${CURRENCY}/t/point`]: 'money/tonne/point' },
    example: `1.20 ${CURRENCY}/t/point`,
  },
  'price per fuel': {
    expression: 'money/m^3',
    units: { [`${CURRENCY}/gal`]: 'money/gallon', [`${CURRENCY}/L`]: 'money/L', [`${CURRENCY}/m3`]: 'money/m^3' },
    example: `1.80 ${CURRENCY}/gal`,
  },
  'fuel per bushel-point': {
    expression: 'm^3/bu/point',
    units: { 'gal/bu/point': 'gallon/bu/point', 'L/bu/point': 'L/bu/point' },
    example: '0.02 gal/bu/point',
  },
  'energy per bushel-point': {
    expression: 'kWh/bu/point',
    units: { 'kWh/bu/point': 'kWh/bu/point' },
    example: '0.01 kWh/bu/point',
  },
  'fuel per tonne-point': {
    expression: 'm^3/kg/point',
    units: { 'L/t/point': 'L/tonne/point' },
    example: '3 L/t/point',
  },
  'energy per tonne-point': {
    expression: 'kWh/kg/point',
    units: { 'kWh/t/point': 'kWh/tonne/point' },
    example: '0.4 kWh/t/point',
  },
  'shrink per point': {
    expression: '',
    units: { '%/point': '0.01' },
    example: '1.4 %/point',
  },
};

/** A unit of a column or quantity as a straight line: si = value * scale + offset. */
export interface LinearUnit {
  scale: number;
  offset: number;
}

/** The spellings that files may use for a kind, with the season's currency in them. */
export function unitsOf(kind: UnitKind, currency = 'USD'): string[] {
  return Object.keys(KINDS[kind].units).map((unit) => unit.replace(CURRENCY, currency));
}

/** A quantity of the kind as somebody would write it, for messages. */
export function exampleOf(kind: UnitKind, currency = 'USD'): string {
  return KINDS[kind].example.replace(CURRENCY, currency);
}

/** `degF` however a file spells it: `°F`, `F`, `deg F`, and `m3` that is written `m³` or `m^3`; `"` and `'` stay refused, they are quotes. */
function canonical(unit: string): string {
  const text = unit
    .trim()
    .replace(/\s*\/\s*/g, '/')
    .replace(/(?<=m|ft)(?:\^3|³)/g, '3');
  const degree = /^(?:°|deg ?)([CF])$/i.exec(text);
  if (degree) return `deg${degree[1].toUpperCase()}`;
  return text;
}

/** Lines found before: pages ask for the same few, hundreds of thousands of times. */
const lines = new Map<string, LinearUnit>();

/**
 * The straight line from a unit to the kind's SI unit, or null when the kind does not know the unit.
 * `temperature difference` takes the degree without its zero.
 */
export function linearUnit(kind: UnitKind, unit: string, currency = 'USD'): LinearUnit | null {
  const key = `${kind}|${currency}|${unit}`;
  const known = lines.get(key);
  if (known !== undefined) return known;
  const line = lineOf(kind, unit, currency);
  // Files may hold any number of words that are no unit.
  if (line !== null) lines.set(key, Object.freeze(line));
  return line;
}

function lineOf(kind: UnitKind, unit: string, currency: string): LinearUnit | null {
  const def = KINDS[kind];
  const spelled = canonical(unit);
  const key = Object.keys(def.units).find((known) => known.replace(CURRENCY, currency) === spelled);
  if (key === undefined) return null;
  const expression = def.units[key];
  if (def.expression === '') return { scale: Number(expression), offset: 0 };
  if (kind === 'temperature difference') {
    const line = linearUnit('temperature', spelled);
    return line === null ? null : { scale: line.scale, offset: 0 };
  }
  const at = (value: number) => siNumber(math.unit(`${value} ${expression}`), def.expression);
  if (kind !== 'temperature') return { scale: math.unit(expression).toNumber(def.expression), offset: 0 };
  const offset = at(0);
  return { scale: at(1) - offset, offset };
}

function siNumber(unit: Unit, expression: string): number {
  return unit.toNumber(expression);
}

/** A quantity as text read into SI: the value, or what is wrong with it. */
export type QuantityResult = { ok: true; si: number; unit: string } | { ok: false; reason: string };

const QUANTITY = /^([+-]?(?:\d[\d,_]*\.?\d*|\.\d+)(?:[eE][+-]?\d+)?)\s*(.*)$/;

/**
 * Read `36 ft`, `1,050 ft`, `60 %`, `0.094 USD/kWh`.
 *
 * @param also  units that another kind would take here, to be told in messages
 * @returns si in the kind's SI unit, or the reason in words: what was given, what is allowed, an example
 */
export function parseQuantity(
  kind: UnitKind,
  text: string,
  currency = 'USD',
  also: readonly string[] = [],
): QuantityResult {
  const allowed = `units: ${[...unitsOf(kind, currency), ...also].join(', ')}`;
  const example = `Write e.g. "${exampleOf(kind, currency)}"`;
  const match = QUANTITY.exec(text.trim());
  if (match === null)
    return { ok: false, reason: `is "${text}"; it must be a number with a unit (${allowed}). ${example}.` };
  const value = Number(match[1].replace(/[,_]/g, ''));
  const unit = match[2].trim();
  if (unit === '') return { ok: false, reason: `is "${text}"; a ${kind} needs a unit (${allowed}). ${example}.` };
  const line = linearUnit(kind, unit, currency);
  if (line === null) {
    return { ok: false, reason: `is "${text}"; "${unit}" is no unit of ${kind} (${allowed}). ${example}.` };
  }
  return { ok: true, si: value * line.scale + line.offset, unit };
}

/** An SI value of a kind in another unit. @throws RangeError when the kind does not know the unit */
export function fromSi(kind: UnitKind, si: number, unit: string, currency = 'USD'): number {
  const line = linearUnit(kind, unit, currency);
  if (line === null)
    throw new RangeError(`"${unit}" is no unit of ${kind}; there are ${unitsOf(kind, currency).join(', ')}`);
  return (si - line.offset) / line.scale;
}
