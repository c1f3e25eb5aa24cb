import type * as z from 'zod';
import { MEASURE_KINDS, type StatedMeasure } from '../season.ts';
import type { Check } from './check.ts';
import type { Draft } from './draft.ts';
import { choice, id, list, map } from './fields.ts';
import { checkReference, idsOf } from './ids.ts';
import { NOT_NEGATIVE, quantity, si } from './quantity.ts';
import type { SeasonText } from './season-schema.ts';

export const measuresSchema = (currency: string) =>
  list(
    map(
      {
        measure: choice(MEASURE_KINDS, 'which of the measures that the year-end report names'),
        bins: list(id('a bin'), 'the bins it is for; all when left out', 'a list of bin ids', 1).optional(),
        price: quantity('money', currency, 'what it would cost to put in, once', NOT_NEGATIVE),
      },
      'what a measure would cost, for its payback',
    ),
    'prices of measures, for their payback in the year-end report',
    'a list of measures, e.g. [{ measure: fans-in-turns, price: 1800 USD }]',
  );

type MeasureText = z.infer<ReturnType<typeof measuresSchema>>[number];

/** Bins that are there, and each measure of a bin priced once. */
export function checkMeasures(draft: Draft<SeasonText>, check: Check): void {
  const bins = idsOf(draft.bins, ['bins'], check);
  const priced = new Set<string>();
  draft.measures?.forEach((one, i) => {
    one?.bins?.forEach((bin, b) => {
      if (bin !== undefined) checkReference('bin', bin, bins, ['measures', i, 'bins', b], check);
    });
    if (one?.measure === undefined) return;
    for (const bin of one.bins ?? ['']) {
      const key = `${one.measure} ${bin ?? ''}`;
      if (priced.has(key)) {
        check.report(
          'SEASON_ID',
          ['measures', i, 'measure'],
          `is "${one.measure}", which has a price already. Keep one.`,
        );
      }
      priced.add(key);
    }
  });
}

export function toMeasures(text: readonly MeasureText[], currency: string): StatedMeasure[] {
  return text.map(({ measure, bins, price }) => ({
    measure,
    binIds: bins ?? null,
    price: si('money', price, currency),
  }));
}
