import type { Table } from 'apache-arrow';
import { zoneOf } from '../../base/zone.ts';
import { type RateBreaks, rateBreaks } from '../../money/rate-breaks.ts';
import type { Tariff } from '../../money/tariff.ts';
import { numbers, texts } from '../../tables/arrow.ts';
import type { Finding } from '../loaded.ts';
import type { Season } from '../season.ts';

const J_PER_KWH = 3.6e6;
/** Retail prices of power lie in it nearly everywhere, in currencies of about a dollar's worth; common practice, from memory. */
export const PRICE_PER_KWH: readonly [number, number] = [0.005, 2];
const ABOUT_A_DOLLAR: readonly string[] = ['USD', 'EUR', 'CAD', 'AUD', 'NZD', 'GBP', 'CHF'];
/** A bill holds all charges, so that its money for a kWh is no less than the energy's: a price so many times it is of another unit. Our choice. */
export const PRICE_TIMES_BILL = 3;

/** Energy prices that no tariff has, and those that its own bills contradict: most often cents for dollars. */
export function checkTariffs(season: Season, bills: Table): Finding[] {
  return season.tariffs.flatMap((tariff) => [
    ...strange(tariff, season.currency),
    ...besideBills(tariff, season, bills),
  ]);
}

const at = ({ id }: Tariff) => ({
  kind: 'unit' as const,
  where: `tariff ${id}`,
  binId: null,
  fromMs: null,
  toMs: null,
  cells: 0,
});

const said = (price: number, currency: string) => `${Number(price.toPrecision(3))} ${currency}/kWh`;

/** Nothing is said of a price of 0: some hours are free. */
function strange(tariff: Tariff, currency: string): Finding[] {
  if (!ABOUT_A_DOLLAR.includes(currency)) return [];
  const [low, high] = PRICE_PER_KWH;
  return tariff.energy.flatMap(({ pricePerKwh: price }, i): Finding[] =>
    price === 0 || (price >= low && price <= high)
      ? []
      : [
          {
            ...at(tariff),
            text: `Energy price ${i + 1} of tariff ${tariff.id} is ${said(price, currency)}; power costs ${low} to ${said(high, currency)} nearly everywhere. It is used as it stands.`,
            advice: `Check the price in season.yaml${price > high ? `: ${Number(price.toPrecision(3))} cents are ${said(price / 100, currency)}` : ''}.`,
          },
        ],
  );
}

function besideBills(tariff: Tariff, { site, currency }: Season, table: Table): Finding[] {
  const [from, to, energy, amounts] = ['from', 'to', 'energy_j', 'amount'].map((name) => numbers(table, name));
  const zone = zoneOf(site.timeZone);
  let [kwh, paid, priced] = [0, 0, 0];
  texts(table, 'tariff').forEach((id, row) => {
    const billed = energy[row] / J_PER_KWH;
    if (id !== tariff.id || !(billed > 0) || !(amounts[row] > 0)) return;
    kwh += billed;
    paid += amounts[row];
    priced += billed * meanPrice(rateBreaks(tariff, zone, from[row], to[row]), to[row]);
  });
  if (!(priced > PRICE_TIMES_BILL * paid)) return [];
  const prices = tariff.energy.map((rule) => rule.pricePerKwh);
  const [least, most] = [Math.min(...prices), Math.max(...prices)];
  const range = least === most ? '' : ` (${Number(least.toPrecision(3))} to ${said(most, currency)})`;
  return [
    {
      ...at(tariff),
      text: `The energy of tariff ${tariff.id} costs ${said(priced / kwh, currency)} in the mean over the time of its bills${range}, but these came to ${said(paid / kwh, currency)} with all charges in it.`,
      advice:
        'Check the prices of the tariff in season.yaml and the amounts of the bills: one of them is in another unit, most often cents.',
    },
  ];
}

/** Mean of a price through time. @param toMs  where its last piece ends */
function meanPrice({ startMs, pricePerKwh }: RateBreaks, toMs: number): number {
  let sum = 0;
  pricePerKwh.forEach((price, i) => {
    sum += price * ((startMs[i + 1] ?? toMs) - startMs[i]);
  });
  return sum / (toMs - startMs[0]);
}
