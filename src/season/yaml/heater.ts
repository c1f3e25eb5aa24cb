import type * as z from 'zod';
import { FUEL_UNITS, type FuelUnit } from '../../base/fuel-unit.ts';
import type { Heater } from '../../bin/fan.ts';
import type { Check } from './check.ts';
import type { Draft } from './draft.ts';
import { checked, choice, map } from './fields.ts';
import type { YamlPath } from './path-text.ts';
import { ABOVE_ZERO, quantity, si } from './quantity.ts';
import { show } from './show.ts';

const BTU_J = 1055.05585262; // International Table Btu, NIST SP 811
const GALLON_M3 = 0.003785411784; // US liquid gallon, NIST SP 811
const CUBIC_FOOT_M3 = 0.3048 ** 3;

// Heat of burning as the trade bills it (higher heating value), common practice: propane 91,500 Btu/gal; natural gas 1,000 Btu/ft3.
const PROPANE_J_M3 = (91_500 * BTU_J) / GALLON_M3;
const NATURAL_GAS_J_M3 = (1_000 * BTU_J) / CUBIC_FOOT_M3;

/** Joule of heat in the unit of a price; therm: NIST SP 811 (US); MMBtu: a million Btu. */
const BY_ENERGY = { kWh: 3.6e6, MWh: 3.6e9, therm: 1.054804e8, MMBtu: 1e6 * BTU_J };

const UNITS: Readonly<Record<Heater['fuel'], Readonly<Partial<Record<FuelUnit, number>>>>> = {
  electric: { kWh: BY_ENERGY.kWh, MWh: BY_ENERGY.MWh },
  propane: { gal: PROPANE_J_M3 * GALLON_M3, L: PROPANE_J_M3 / 1000, m3: PROPANE_J_M3, ...BY_ENERGY },
  'natural gas': {
    m3: NATURAL_GAS_J_M3,
    ft3: NATURAL_GAS_J_M3 * CUBIC_FOOT_M3,
    ccf: 100 * NATURAL_GAS_J_M3 * CUBIC_FOOT_M3,
    Mcf: 1000 * NATURAL_GAS_J_M3 * CUBIC_FOOT_M3,
    ...BY_ENERGY,
  },
};

const PRICE = /^(\d+(?:\.\d+)?|\.\d+) *([A-Z]{3}) *\/ *([A-Za-z0-9]+)$/;

export const heaterSchema = (currency: string) =>
  map(
    {
      fuel: choice(['electric', 'propane', 'natural gas'], 'what the heater runs on'),
      output: quantity('heat flow', currency, 'heat that the heater gives', ABOVE_ZERO),
      price: checked(
        'SEASON_UNIT',
        `a price with its unit, e.g. "1.80 ${currency}/gal"`,
        (text) =>
          PRICE.test(text.trim())
            ? { ok: true }
            : {
                ok: false,
                reason: `is ${show(text)}; a price of fuel needs a unit. Write e.g. "1.80 ${currency}/gal".`,
              },
        { description: 'price of the fuel, per gal, L, kWh, therm …', pattern: PRICE.source },
      ).optional(),
      efficiency: quantity('fraction', currency, 'share of the fuel’s heat that reaches the air; 100 % when left out', {
        above: 0,
        max: 1,
        words: 'it must be above 0 % and at most 100 %',
      }).optional(),
    },
    'a heater before or after the fan',
  );

export type HeaterText = z.infer<ReturnType<typeof heaterSchema>>;

/** A price of fuel: money per joule, and the unit by which it is sold; null where the fuel is not sold by that unit or in that currency. */
function priceOf(text: string, fuel: Heater['fuel'], currency: string): Pick<Heater, 'pricePerJ' | 'sold'> | null {
  const [, money, code, spelled] = PRICE.exec(text.trim()) ?? [];
  const unit = FUEL_UNITS.find((one) => one === spelled);
  const unitJ = unit === undefined ? undefined : UNITS[fuel][unit];
  if (unit === undefined || unitJ === undefined || code !== currency) return null;
  return { pricePerJ: Number(money) / unitJ, sold: { unit, unitJ } };
}

export function checkHeater(heater: Draft<HeaterText>, path: YamlPath, { report, currency }: Check): void {
  const { fuel, price } = heater;
  if (fuel === undefined || price === undefined || priceOf(price, fuel, currency) !== null) return;
  const units = Object.keys(UNITS[fuel]).map((unit) => `${currency}/${unit}`);
  report('SEASON_UNIT', [...path, 'price'], `is ${show(price)}; ${fuel} is priced in ${units.join(', ')}.`);
}

export function toHeater(text: HeaterText, currency: string): Heater {
  return {
    fuel: text.fuel,
    outputW: si('heat flow', text.output, currency),
    pricePerJ: null,
    efficiency: text.efficiency === undefined ? 1 : si('fraction', text.efficiency, currency),
    ...(text.price === undefined ? null : priceOf(text.price, text.fuel, currency)),
  };
}
