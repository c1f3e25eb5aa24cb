import * as z from 'zod';
import type { DryingAlternative, GrainPrice } from '../season.ts';
import type { Check } from './check.ts';
import { checkSchedule } from './check-schedule.ts';
import { cropIds, cropText } from './crop.ts';
import type { Draft } from './draft.ts';
import { list, map } from './fields.ts';
import { grainAmount, perBushelOf, perGrain } from './per-grain.ts';
import { MOISTURE, NOT_NEGATIVE, quantity, si, siOrNull } from './quantity.ts';
import { scheduleSchema, toSchedule } from './schedule.ts';

const priceSchema = (currency: string) =>
  map(
    {
      price: perGrain('price per bushel', currency, 'price of a legal bushel, or of a tonne', NOT_NEGATIVE),
      base_moisture: quantity('moisture', currency, 'moisture that the price is for', MOISTURE).optional(),
      shrink: quantity('shrink per point', currency, 'weight taken off for each point above the base', {
        min: 0,
        max: 0.1,
        words: 'it must lie between 0 and 10 %/point',
      }).optional(),
      discount: perGrain('price per bushel-point', currency, 'money taken off for each point', NOT_NEGATIVE).optional(),
      schedules: list(
        scheduleSchema(currency),
        'deductions by moisture that a flat shrink or discount cannot say; all add up',
        'a list of schedules, e.g. [{ above: 15 %, rate: 0.05 USD/bu, per: 1 point }]',
      ).optional(),
    },
    'what the market pays for a crop',
  );

/** Crop to price. Keys are checked by checkPrices, so that a wrong one is told as a crop. */
export const pricesSchema = (currency: string) =>
  z
    .record(z.string(), priceSchema(currency), { error: 'a map of crops, e.g. corn: { price: 4.35 USD/bu }' })
    .meta({ description: 'prices by crop', propertyNames: { anyOf: [{ enum: cropIds() }, { pattern: '^x-' }] } });

type PricesText = z.infer<ReturnType<typeof pricesSchema>>;

export function checkPrices(prices: Draft<PricesText> | undefined, check: Check): void {
  const { report, bad } = check;
  for (const [crop, price] of Object.entries(prices ?? {})) {
    if (!cropIds().includes(crop)) report('SEASON_CROP', ['prices', crop], cropText(crop), 'key');
    price?.schedules?.forEach((schedule, i) => {
      if (schedule === undefined) return;
      const path = ['prices', crop, 'schedules', i];
      // A base that is wrong is told already, and is no missing one.
      const base = bad.under(['prices', crop, 'base_moisture']) ? '0 %' : price.base_moisture;
      const takes = checkSchedule(schedule, base, path, check);
      if (takes === 'weight' && price.shrink !== undefined) {
        report('SEASON_CONFLICT', path, 'takes off weight, and so does shrink. Keep one of them.');
      }
    });
  }
}

export function toPrices(text: PricesText, currency: string): Record<string, GrainPrice> {
  return Object.fromEntries(
    Object.entries(text).map(([crop, one]) => [
      crop,
      {
        pricePerBushel: perBushelOf('price per bushel', one.price, currency, crop) as number,
        baseMoistureWb: siOrNull('moisture', one.base_moisture, currency),
        shrinkPerPoint: siOrNull('shrink per point', one.shrink, currency),
        discountPerBushelPoint: perBushelOf('price per bushel-point', one.discount, currency, crop),
        schedules: (one.schedules ?? []).map((schedule) => toSchedule(schedule, one.base_moisture, currency, crop)),
      },
    ]),
  );
}

export const dryingAlternativeSchema = (currency: string) =>
  map(
    {
      commercial: perGrain(
        'price per bushel-point',
        currency,
        'what a commercial dryer charges',
        NOT_NEGATIVE,
      ).optional(),
      high_temperature: map(
        {
          fuel: quantity('price per fuel', currency, 'price of the fuel', NOT_NEGATIVE),
          fuel_use: perGrain('fuel per bushel-point', currency, 'fuel for a bushel (or tonne) and point', NOT_NEGATIVE),
          electricity: perGrain(
            'energy per bushel-point',
            currency,
            'electricity for a bushel (or tonne) and point',
            NOT_NEGATIVE,
          ).optional(),
        },
        'a high-temperature dryer of one’s own',
      ).optional(),
    },
    'what the same points would have cost elsewhere',
  );

type DryingAlternativeText = z.infer<ReturnType<typeof dryingAlternativeSchema>>;

export function checkDryingAlternative(text: Draft<DryingAlternativeText> | undefined, { report, bad }: Check): void {
  const path = ['drying_alternative'];
  if (text !== undefined && Object.keys(text).length === 0 && !bad.under(path)) {
    report('SEASON_MISSING', path, 'is an empty map; it takes commercial or high_temperature, or both.');
  }
}

export function toDryingAlternative(text: DryingAlternativeText, currency: string): DryingAlternative {
  const hot = text.high_temperature;
  return {
    commercialPerPoint:
      text.commercial === undefined ? null : grainAmount('price per bushel-point', text.commercial, currency),
    highTemperature:
      hot === undefined
        ? null
        : {
            fuelPricePerM3: si('price per fuel', hot.fuel, currency),
            fuelM3PerPoint: grainAmount('fuel per bushel-point', hot.fuel_use, currency),
            electricityKwhPerPoint:
              hot.electricity === undefined ? null : grainAmount('energy per bushel-point', hot.electricity, currency),
          },
  };
}
