import type { UnitKind } from '../base/units.ts';
import type { Rounding } from './number-text.ts';

/** How a kind of number is shown: unit of each system, how to get there, and how many digits mean something. */
export interface QuantityDef {
  /** in tables; `¤` stands for the currency */
  us: string;
  si: string;
  /** in sentences, after the number; the table's unit when left out */
  usWord?: string;
  siWord?: string;
  /** values are SI of this kind and are converted with these spellings; without it values come in the shown unit */
  from?: { kind: UnitKind; us: string; si: string };
  rounding: Rounding;
  /** where SI needs other digits */
  siRounding?: Rounding;
}

const figures = (count: number, maxDecimals: number): Rounding => ({ kind: 'figures', figures: count, maxDecimals });
const decimals = (count: number, minFigures?: number): Rounding => ({ kind: 'decimals', decimals: count, minFigures });
const same = (unit: string, rounding: Rounding, word?: string): QuantityDef => ({
  us: unit,
  si: unit,
  usWord: word,
  siWord: word,
  rounding,
});

/** Every kind of number on a page. One list, so that one number has the same digits wherever it stands. */
export const QUANTITIES = {
  count: same('', decimals(0)),
  number: same('', figures(3, 2)),
  hours: same('h', figures(3, 1)),
  days: same('d', figures(3, 1)),
  years: same('years', figures(2, 1)),
  energy: same('kWh', figures(3, 1)),
  power: same('kW', figures(3, 1)),
  current: same('A', figures(3, 1)),
  money: same('¤', { kind: 'money' }),
  'money per kWh': same('¤/kWh', decimals(3)),
  'money per kW': same('¤/kW', decimals(2)),
  'money per point': same('¤/point', { kind: 'money' }, '¤ a point'),
  // Grain is bought by the bushel or by the tonne; values come in the shown one, as a bushel's weight hangs on the crop.
  grain: { us: 'bu', si: 't', rounding: figures(3, 0), siRounding: figures(3, 1) },
  'money per grain': { us: '¤/bu', si: '¤/t', usWord: '¤ a bushel', siWord: '¤ a tonne', rounding: decimals(3, 2) },
  'money per grain point': {
    us: '¤/bu-point',
    si: '¤/t-point',
    usWord: '¤ a bushel-point',
    siWord: '¤ a tonne-point',
    rounding: decimals(3, 2),
  },
  'energy per grain': { us: 'kWh/bu', si: 'kWh/t', rounding: decimals(2, 2) },
  'energy per grain point': {
    us: 'kWh/bu-point',
    si: 'kWh/t-point',
    usWord: 'kWh a bushel-point',
    siWord: 'kWh a tonne-point',
    rounding: figures(3, 3),
  },
  // Values are W per bushel or tonne, as shown.
  'power per grain': { us: 'W/bu', si: 'W/t', usWord: 'W a bushel', siWord: 'W a tonne', rounding: figures(3, 2) },
  times: same('×', figures(3, 2), 'times'),
  // Values come in the shown unit: Btu of electricity for a pound of water, or kWh for a kilogram.
  'energy per water': {
    us: 'Btu/lb water',
    si: 'kWh/kg water',
    usWord: 'Btu a pound of water',
    siWord: 'kWh a kilogram of water',
    rounding: figures(3, 0),
    siRounding: figures(3, 2),
  },
  // Values are fractions, wet basis.
  moisture: { us: '%', si: '%', from: { kind: 'moisture', us: '%', si: '%' }, rounding: decimals(1) },
  points: same('points', decimals(1)),
  // parts of an interval, which the tenth would hide
  'points, fine': same('points', decimals(2)),
  'points per hundred hours': same('points/100 h', decimals(2), 'points per 100 fan hours'),
  'hours per point': same('h/point', figures(3, 1), 'fan hours a point'),
  share: { us: '%', si: '%', from: { kind: 'fraction', us: '%', si: '%' }, rounding: figures(3, 1) },
  // Of grain that keeps, tenths of a percent.
  'dry matter lost': { us: '%', si: '%', from: { kind: 'fraction', us: '%', si: '%' }, rounding: decimals(2) },
  // Told by a rule that is known to a quarter.
  'storage time used': { us: '%', si: '%', from: { kind: 'fraction', us: '%', si: '%' }, rounding: decimals(0) },
  // Parts of a difference, whose intervals are tens of percent wide.
  'share of difference': { us: '%', si: '%', from: { kind: 'fraction', us: '%', si: '%' }, rounding: decimals(0) },
  temperature: { us: '°F', si: '°C', from: { kind: 'temperature', us: 'degF', si: 'degC' }, rounding: decimals(0) },
  'temperature difference': {
    us: '°F',
    si: 'K',
    from: { kind: 'temperature difference', us: 'degF', si: 'K' },
    rounding: decimals(1),
  },
  // Values are metres per fan hour.
  'front speed': {
    us: 'ft/h',
    si: 'm/h',
    usWord: 'ft per fan hour',
    siWord: 'm per fan hour',
    from: { kind: 'length', us: 'ft', si: 'm' },
    rounding: figures(2, 2),
  },
  length: { us: 'ft', si: 'm', from: { kind: 'length', us: 'ft', si: 'm' }, rounding: decimals(1) },
  pressure: { us: 'inH2O', si: 'Pa', from: { kind: 'pressure', us: 'inH2O', si: 'Pa' }, rounding: figures(3, 2) },
  // Values are inH2O per foot or Pa per metre, and cfm per square foot or m3/s per m2, as shown.
  'pressure per depth': { us: 'inH2O/ft', si: 'Pa/m', rounding: figures(3, 4) },
  'airflow per floor': { us: 'cfm/ft²', si: 'm³/s per m²', rounding: figures(3, 4) },
  // A constant as published, with all its digits; its table says the unit.
  constant: same('', { kind: 'exact' }),
  // A difference to a printed number, in its own unit.
  misfit: same('', figures(2, 6)),
  airflow: { us: 'cfm', si: 'L/s', from: { kind: 'airflow', us: 'cfm', si: 'L/s' }, rounding: figures(3, 1) },
  // Values are cfm per bushel of 1.2445 ft3 or L/s per m3 as shown.
  'airflow per grain': { us: 'cfm/bu', si: 'L/s per m³', rounding: figures(2, 2) },
  water: {
    us: 'lb',
    si: 't',
    from: { kind: 'weight', us: 'lb', si: 't' },
    rounding: figures(3, 0),
    siRounding: figures(3, 1),
  },
  // Values come as shown, by volume as the airflow for the grain.
  'nameplate per grain': {
    us: 'hp/1,000 bu',
    si: 'W/m³',
    usWord: 'hp per 1,000 bushels',
    siWord: 'W per m³',
    rounding: figures(2, 2),
  },
  // Fuel for heat, by the unit of its price.
  'fuel by gal': same('gal', figures(3, 1)),
  'fuel by L': same('L', figures(3, 1)),
  'fuel by m3': same('m³', figures(3, 1)),
  'fuel by ft3': same('ft³', figures(3, 0)),
  'fuel by ccf': same('ccf', figures(3, 1)),
  'fuel by Mcf': same('Mcf', figures(3, 1)),
  'fuel by therm': same('therm', figures(3, 1), 'therms'),
  'fuel by MMBtu': same('MMBtu', figures(3, 1)),
  'fuel by kWh': same('kWh', figures(3, 1)),
  'fuel by MWh': same('MWh', figures(3, 2)),
  nameplate: { us: 'hp', si: 'kW', from: { kind: 'power', us: 'hp', si: 'kW' }, rounding: figures(3, 1) },
  volume: { us: 'm³', si: 'm³', rounding: figures(3, 0) },
  bytes: same('bytes', decimals(0)),
} as const satisfies Record<string, QuantityDef>;

export type Quantity = keyof typeof QUANTITIES;
