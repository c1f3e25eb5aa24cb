import type { BinReview } from '../../analysis/types.ts';
import { dryingElsewhere } from '../../analysis/value/drying-elsewhere.ts';
import { moistureValue } from '../../analysis/value/moisture-value.ts';
import { type Estimate, withheld } from '../../base/estimate.ts';
import { differenceOf } from '../../base/stats/joined.ts';
import type { SectionBody } from '../../report/page.ts';
import type { Units } from '../../report/units.ts';
import type { LoadedSeason } from '../../season/loaded.ts';
import { counted, knownTotal, sentence } from '../words.ts';
import { gainSaid, worthSection } from '../worth-section.ts';

/** What the season's change of moisture came to in money, all bins together. */
export interface ValueTotals {
  /** sold as it came out less sold as it went in, of the bins of which that is known, less what their fans cost */
  net: Estimate;
  /** `4 of 6 bins`; null where all are in it */
  of: string | null;
}

interface BinValue {
  review: BinReview;
  asIn: Estimate;
  asOut: Estimate;
  gained: Estimate;
  /** gained less the fans' cost */
  net: Estimate;
  commercial: Estimate;
  highTemperature: Estimate;
}

function binValues({ season }: LoadedSeason, bins: readonly BinReview[]): BinValue[] {
  return bins.map((review) => {
    const value = moistureValue(review, season);
    return {
      review,
      ...value,
      net: differenceOf(value.gained, review.fan.cost),
      ...dryingElsewhere(review, season),
    };
  });
}

export function valueTotals(loaded: LoadedSeason, bins: readonly BinReview[]): ValueTotals {
  const { total, of } = knownTotal(binValues(loaded, bins).map(({ net }) => net));
  return { net: total, of };
}

/** Bin by bin: sold as it went in, sold as it came out, what the fans cost, and the same points bought elsewhere. */
export function valueSection(loaded: LoadedSeason, bins: readonly BinReview[], units: Units): SectionBody {
  const values = binValues(loaded, bins);
  const { net, of } = valueTotals(loaded, bins);
  const elsewhere = values.filter(
    ({ commercial, highTemperature }) => (commercial.value ?? highTemperature.value) !== null,
  );
  const total = (pick: (one: BinValue) => Estimate) => {
    const sum = knownTotal(values.map(pick));
    return sum.of === null ? sum.total : withheld(`Known of ${sum.of}.`);
  };
  return {
    lead:
      net.value === null
        ? `What the change of moisture was worth can’t be told: ${sentence(net.why ?? 'not known')}`
        : `Sold as it came out instead of as it went in, less what the fans cost, ${of === null ? `the grain of ${counted(bins.length, 'bin')}` : `the grain of ${of}`} brought ${gainSaid(net, units)}.`,
    table:
      net.value === null
        ? undefined
        : {
            id: 'value',
            caption: 'The same grain sold wet at harvest, and sold as it came out',
            columns: [
              { key: 'bin', label: 'Bin', quantity: null },
              { key: 'asIn', label: 'Sold as it went in', quantity: 'money' },
              { key: 'asOut', label: 'Sold as it came out', quantity: 'money' },
              { key: 'gained', label: 'Gained', quantity: 'money' },
              { key: 'fans', label: 'Less the fans', quantity: 'money' },
              { key: 'net', label: 'Left', quantity: 'money' },
            ],
            rows: values.map((one) => ({
              bin: one.review.bin.name,
              asIn: one.asIn,
              asOut: one.asOut,
              gained: one.gained,
              fans: one.review.fan.cost,
              net: one.net,
            })),
            total:
              bins.length < 2
                ? undefined
                : {
                    bin: 'All bins',
                    asIn: total((one) => one.asIn),
                    asOut: total((one) => one.asOut),
                    gained: total((one) => one.gained),
                    fans: total((one) => one.review.fan.cost),
                    net: total((one) => one.net),
                  },
          },
    // The waterfall from what was spared at the scale down to what was left.
    figures: net.value === null ? [] : worthSection(loaded, bins, units).figures,
    tables:
      elsewhere.length === 0
        ? []
        : [
            {
              id: 'elsewhere',
              caption: 'The same points bought elsewhere, at the prices of season.yaml',
              columns: [
                { key: 'bin', label: 'Bin', quantity: null },
                { key: 'fans', label: 'By the fans', quantity: 'money' },
                { key: 'commercial', label: 'Commercial dryer', quantity: 'money' },
                { key: 'hot', label: 'High-temperature dryer', quantity: 'money' },
              ],
              rows: elsewhere.map((one) => ({
                bin: one.review.bin.name,
                fans: one.review.fan.cost,
                commercial: one.commercial,
                hot: one.highTemperature,
              })),
            },
          ],
    notes: [
      ...(net.value === null
        ? []
        : [
            'Both sales are at the one price of season.yaml, with its shrink and discounts by moisture; what the market did between harvest and sale is not in it, nor what storage itself cost. Weight follows the dry matter.',
          ]),
      ...(elsewhere.length === 0
        ? []
        : [
            'Elsewhere: grain times points times the stated fee, or the stated fuel and current; hauling is not in it.',
          ]),
    ],
  };
}
