import type * as z from 'zod';
import { binSchema } from './bin.ts';
import { date } from './dates.ts';
import { fanSchema } from './fan.ts';
import { checked, choice, list, map, text } from './fields.ts';
import { fileSchema } from './file.ts';
import { measuresSchema } from './measures.ts';
import { nearest } from './nearest.ts';
import { dryingAlternativeSchema, pricesSchema } from './prices.ts';
import { sensorsSchema } from './sensors.ts';
import { show } from './show.ts';
import { siteSchema } from './site.ts';
import { tariffSchema } from './tariff.ts';
import { usefulHoursSchema } from './useful-hours.ts';

const made = new Map<string, ReturnType<typeof makeSchema>>();

/** The shape of season.yaml; every scalar is the text as written. `currency` is the code that prices carry. */
export function seasonSchema(currency: string): ReturnType<typeof makeSchema> {
  // Made once for each currency: making it takes longer than a check.
  const schema = made.get(currency) ?? makeSchema(currency);
  made.set(currency, schema);
  return schema;
}

const makeSchema = (currency: string) =>
  map(
    {
      format: checked(
        'SEASON_FORMAT',
        'the number 1',
        (value) =>
          value === '1'
            ? { ok: true }
            : { ok: false, reason: `is ${show(value)}; this kit reads format 1. Write "format: 1".` },
        { description: 'version of this format; opens the file', type: 'integer', const: 1 },
      ),
      season: text('title of the season, e.g. Harvest 2024'),
      starts: date('first local day of the season; readings before it are left out').optional(),
      ends: date('last local day of the season; readings after it are left out').optional(),
      prepared_for: text('for whom the year-end report is').optional(),
      prepared_by: text('who wrote it').optional(),
      site: siteSchema(currency),
      show_units: choice(['us', 'si'], 'units of pages and workbooks; us when left out').optional(),
      currency: checked(
        'SEASON_CHOICE',
        'a currency code, e.g. USD',
        (value) =>
          CURRENCY.test(value)
            ? { ok: true }
            : { ok: false, reason: `is ${show(value)}; it takes the three capital letters of ISO 4217, e.g. USD.` },
        { description: 'ISO 4217 code; all prices are in it; USD when left out', pattern: CURRENCY.source },
      ).optional(),
      tariffs: list(tariffSchema(currency), 'electricity tariffs', 'a list of tariffs').optional(),
      prices: pricesSchema(currency).optional(),
      drying_alternative: dryingAlternativeSchema(currency).optional(),
      bins: list(binSchema(currency), 'the bins', 'a list of at least one bin', 1),
      fans: list(fanSchema(currency), 'the fans', 'a list of fans').optional(),
      sensors: sensorsSchema(currency).optional(),
      useful_hours: usefulHoursSchema(currency).optional(),
      measures: measuresSchema(currency).optional(),
      files: list(fileSchema(), 'the files and what they hold', 'a list of files').optional(),
    },
    'A storage season: what was stored where, with which fans, at which prices, and which file holds what',
  );

export type SeasonText = z.infer<ReturnType<typeof seasonSchema>>;

const CURRENCY = /^[A-Z]{3}$/;

/**
 * The code that prices are checked against, before the rest of the file is. Where the key or its code is misspelt, which is told, that
 * of the prices themselves: they should not all be called wrong too.
 */
export function currencyOf(data: Readonly<Record<string, unknown>>): string {
  const stated = Object.keys(data).find((key) => !key.startsWith('x-') && nearest(key, ['currency']) !== null);
  if (stated === undefined) return 'USD';
  const given = typeof data[stated] === 'string' ? data[stated].trim().toUpperCase() : '';
  return CURRENCY.test(given) ? given : (codeOfPrices(data) ?? 'USD');
}

/** The code that most prices carry, `0.29 EUR/kWh`; null where none has one. */
function codeOfPrices(data: unknown): string | null {
  const codes = textsIn(data).flatMap((text) => /^\s*[\d.,]+ *([A-Z]{3})(?:\/|$)/.exec(text)?.[1] ?? []);
  const count = (code: string) => codes.filter((one) => one === code).length;
  return codes.sort((a, b) => count(b) - count(a) || (a < b ? -1 : 1))[0] ?? null;
}

function textsIn(data: unknown): string[] {
  if (typeof data === 'string') return [data];
  return data !== null && typeof data === 'object' ? Object.values(data).flatMap(textsIn) : [];
}
