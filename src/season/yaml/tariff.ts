import type * as z from 'zod';
import type { Tariff } from '../../money/tariff.ts';
import type { Check } from './check.ts';
import type { Draft } from './draft.ts';
import { id, list, map } from './fields.ts';
import type { YamlPath } from './path-text.ts';
import { NOT_NEGATIVE, quantity, si, siOrNull } from './quantity.ts';
import { toWhen, whenSchema } from './when.ts';

export const tariffSchema = (currency: string) =>
  map(
    {
      id: id('name by which fans and bills refer to the tariff'),
      energy: list(
        map(
          {
            price: quantity('price per energy', currency, 'price of energy', NOT_NEGATIVE),
            when: whenSchema().optional(),
          },
          'one price of energy',
        ),
        'prices of energy; the first rule that matches an interval prices it, the last has no `when`',
        'a list of prices, e.g. [{ price: 0.112 USD/kWh }]',
        1,
      ),
      demand: list(
        map(
          {
            price: quantity('price per power', currency, 'price of the month’s highest 15-minute mean', NOT_NEGATIVE),
            when: whenSchema().optional(),
            ratchet: quantity(
              'fraction',
              currency,
              'share of the highest peak of the 11 months before that is billed',
              {
                min: 0,
                max: 1,
                words: 'it must lie between 0 % and 100 %',
              },
            ).optional(),
          },
          'one demand charge',
        ),
        'demand charges; each bills its own peak, and they add up',
        'a list of demand charges, e.g. [{ price: 9.50 USD/kW }]',
      ).optional(),
      fixed: quantity('price per month', currency, 'fixed charge', NOT_NEGATIVE).optional(),
      connected: quantity('price per power and year', currency, 'charge on nameplate power', NOT_NEGATIVE).optional(),
      minimum: quantity('price per month', currency, 'least bill of a month', NOT_NEGATIVE).optional(),
    },
    'an electricity tariff',
  );

type TariffText = z.infer<ReturnType<typeof tariffSchema>>;

/** Every hour needs one price, and every rule must be able to match; a `when` must say something. */
export function checkTariff(tariff: Draft<TariffText>, path: YamlPath, { report, bad }: Check): void {
  for (const part of ['energy', 'demand'] as const) {
    tariff[part]?.forEach((rule, i) => {
      const at = [...path, part, i, 'when'];
      if (rule?.when !== undefined && Object.keys(rule.when).length === 0 && !bad.under(at)) {
        const text = 'is an empty map; it takes months, days or hours. For always, leave `when` out.';
        report('SEASON_MISSING', at, text);
      }
    });
  }
  const rules = tariff.energy ?? [];
  rules.forEach((rule, i) => {
    const last = i === rules.length - 1;
    if (rule === undefined) return;
    if (last && rule.when !== undefined) {
      const text = 'stands in the last rule, so that hours outside it have no price. Add a last rule without `when`.';
      report('SEASON_TARIFF', [...path, 'energy', i, 'when'], text, 'key');
    }
    if (!last && rule.when === undefined && !bad.under([...path, 'energy', i])) {
      const text = 'has no `when` and prices every hour, so that the rules after it never match. Move it to the end.';
      report('SEASON_TARIFF', [...path, 'energy', i], text);
    }
  });
}

export function toTariff(text: TariffText, currency: string): Tariff {
  return {
    id: text.id,
    energy: text.energy.map((rule) => ({
      pricePerKwh: si('price per energy', rule.price, currency),
      when: toWhen(rule.when),
    })),
    demand: (text.demand ?? []).map((rule) => ({
      pricePerKw: si('price per power', rule.price, currency),
      when: toWhen(rule.when),
      ratchet: siOrNull('fraction', rule.ratchet, currency),
    })),
    fixedPerMonth: siOrNull('price per month', text.fixed, currency),
    connectedPerHpYear: siOrNull('price per power and year', text.connected, currency),
    minimumPerMonth: siOrNull('price per month', text.minimum, currency),
  };
}
