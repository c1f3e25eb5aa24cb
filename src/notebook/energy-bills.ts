import type { BillShare } from '../analysis/energy/bill-types.ts';
import type { SeasonReview } from '../analysis/types.ts';
import { type Estimate, scaled } from '../base/estimate.ts';
import { toLocalMs } from '../base/zone.ts';
import { billsByTime } from '../report/figures/bills-by-time.ts';
import type { Cell, SectionBody, Table } from '../report/page.ts';
import type { Units } from '../report/units.ts';
import { counted, knownTotal, sentence } from './words.ts';

const UNSAID = 'The bill does not say.';
const said = (value: number | null): Cell => value ?? { value: null, why: UNSAID };

/** Nobody is billed less than nothing: such an energy is no part of a sum. */
const believed = ({ billedKwh }: BillShare) => (billedKwh !== null && billedKwh < 0 ? null : billedKwh);

/** Bills month by month: what share of energy and money the fans explain, with the unexplained rest. */
export function billSection({ bills, failures }: SeasonReview, units: Units): SectionBody {
  if (bills === undefined) {
    const why = failures?.find((one) => one.startsWith('bills:')) ?? 'they could not be worked out';
    return { lead: `Can’t hold the cost against bills: ${why}.` };
  }
  if (bills.length === 0) return { lead: 'Can’t hold the cost against bills: no bills are given.' };
  const summed = bills.filter((bill) => bill.leftOut === null);
  const known = summed.filter((bill) => bill.fansKwh.value !== null);
  const withEnergy = known.filter((bill) => believed(bill) !== null);
  const untold = summed.find((bill) => bill.fansKwh.value === null)?.fansKwh.why ?? 'the bills give no energy';
  const billed = withEnergy.reduce((sum, bill) => sum + (bill.billedKwh ?? 0), 0);
  // Errors of one fan go the same way in all bills, as `knownTotal` takes them.
  const share = scaled(knownTotal(withEnergy.map((bill) => bill.fansKwh)).total, 1 / billed);
  const withMoney = summed.filter((bill) => bill.amount !== null && bill.restMoney.value !== null);
  const heat = bills.some(({ heaterKwh }) => heaterKwh !== null);
  const who = heat ? 'The fans and their electric heaters' : 'The fans';
  const money = withMoney.length === 0 ? '' : ` ${moneySaid(withMoney, heat, units)}`;
  return {
    lead:
      billed > 0
        ? `${who} explain ${units.say('share', share)} of the ${units.say('energy', billed)} billed.${money}`
        : `Can’t tell what share the fans explain: ${sentence(untold)}${money}`,
    figures: billed > 0 ? [billFigure(known, share, who, units)] : [],
    tables: [energyTable(bills), moneyTable(bills)],
    notes: notesOf(bills, units),
  };
}

/** What of the money paid is neither the fans' nor fixed; where the tariff's charges on the fans alone are more, these. */
function moneySaid(bills: readonly BillShare[], heat: boolean, units: Units): string {
  const paid = units.say('money', paidOf(bills));
  const rest = knownTotal(bills.map((bill) => bill.restMoney)).total;
  if (Number(rest.value) >= 0)
    return `Of ${paid} paid, ${units.say('money', rest)} are neither the fans’${heat ? ', nor their heaters’,' : ''} nor fixed charges.`;
  const fans = knownTotal(bills.map((bill) => bill.fansMoney)).total;
  const fixed = bills.reduce((sum, bill) => sum + bill.fixed, 0);
  return `By the tariff the fans${heat ? ' and their heaters' : ''} alone come to ${units.say('money', fans)} beside fixed charges of ${units.say('money', fixed)}; ${paid} were paid.`;
}

const paidOf = (bills: readonly BillShare[]) => bills.reduce((sum, bill) => sum + (bill.amount ?? 0), 0);

/** Bills whose fans alone come to so many times the money paid are priced by another unit, or by another tariff. Our choice. */
const TIMES_PAID = 3;

/** The tariff's price beside the bills' where the first can't be that of the second. */
function priceNotes(bills: readonly BillShare[], units: Units): string[] {
  const ids = [...new Set(bills.map((bill) => bill.tariffId))];
  return ids.flatMap((id) => {
    const of = bills.filter(
      (one) =>
        one.tariffId === id && Number(one.amount) > 0 && Number(believed(one)) > 0 && one.fansMoney.value !== null,
    );
    const paid = paidOf(of);
    const fans = of.reduce((sum, one) => sum + Number(one.fansMoney.value), 0);
    if (!(fans > TIMES_PAID * paid)) return [];
    const used = of.reduce((sum, one) => sum + Number(one.fansKwh.value), 0);
    const billed = of.reduce((sum, one) => sum + Number(one.billedKwh), 0);
    const each = (money: number, kwh: number) => units.say('money per kWh', money / kwh);
    return [
      `By the tariff ${id} the fans alone come to ${units.say('times', fans / paid)} what its bills came to: ${each(fans, used)} of theirs, ${each(paid, billed)} of the bills’, all charges in both. Check the tariff’s prices in season.yaml (cents for dollars?) and the amounts of the bills.`,
    ];
  });
}

function billFigure(bills: readonly BillShare[], share: Estimate, who: string, units: Units) {
  const ids = [...new Set(bills.map((bill) => bill.tariffId))];
  const tariffs = ids.map((name) => ({
    name,
    bills: bills
      .filter((bill) => bill.tariffId === name)
      .sort((a, b) => a.fromMs - b.fromMs)
      .map((bill) => ({
        month: new Date(toLocalMs(units.zone, (bill.fromMs + bill.toMs) / 2)).toISOString().slice(0, 7),
        billedKwh: believed(bill),
        fansKwh: bill.fansKwh.value ?? 0,
        fansInterval: bill.fansKwh.interval ?? ([0, 0] as const),
      })),
  }));
  const title = `${who} explain ${units.say('share', share)} of the energy billed`;
  return billsByTime(
    {
      id: 'bills-by-time',
      title,
      alt: `${title}, in ${counted(bills.length, 'bill')} of ${ids.join(' and ')}.`,
      tariffs,
    },
    units,
  );
}

const WHEN = [
  { key: 'from', label: 'From', quantity: 'day' },
  { key: 'to', label: 'Up to', quantity: 'day' },
  { key: 'tariff', label: 'Tariff', quantity: null },
] as const;

// The table keeps the first moment after the billed time; people say its last day.
const whenOf = (bill: BillShare) => ({ from: bill.fromMs, to: bill.toMs - 1, tariff: bill.tariffId });

function energyTable(bills: readonly BillShare[]): Table {
  return {
    id: 'bills-energy',
    caption: 'Energy of the bills (as stated) and of the fans',
    columns: [
      ...WHEN,
      { key: 'billed', label: 'Billed', quantity: 'energy', known: 'stated' },
      { key: 'fans', label: 'Fans, by their logs', quantity: 'energy' },
      { key: 'share', label: 'Share of the fans', quantity: 'share' },
      { key: 'rest', label: 'Unexplained rest', quantity: 'energy' },
      { key: 'untold', label: 'Fan time no log tells', quantity: 'hours', known: 'measured' },
    ],
    rows: bills.map((bill) => ({
      ...whenOf(bill),
      billed: said(bill.billedKwh),
      fans: bill.fansKwh,
      share: bill.share,
      rest: bill.restKwh,
      untold: bill.untoldHours,
    })),
  };
}

function moneyTable(bills: readonly BillShare[]): Table {
  return {
    id: 'bills-money',
    caption: 'Money of the bills (as stated) and of the fans',
    columns: [
      ...WHEN,
      { key: 'amount', label: 'Amount', quantity: 'money', known: 'stated' },
      { key: 'fans', label: 'Fans, by the tariff', quantity: 'money' },
      { key: 'fixed', label: 'Fixed', quantity: 'money', known: 'stated' },
      { key: 'rest', label: 'Unexplained rest', quantity: 'money' },
    ],
    rows: bills.map((bill) => ({
      ...whenOf(bill),
      amount: said(bill.amount),
      fans: bill.fansMoney,
      fixed: bill.fixed,
      rest: bill.restMoney,
    })),
  };
}

function notesOf(bills: readonly BillShare[], units: Units): string[] {
  const untold = bills.filter((bill) => bill.untoldHours >= 24 && bill.fansKwh.value !== null).length;
  const summed = bills.filter((bill) => bill.leftOut === null);
  const heat = summed.flatMap(({ heaterKwh }) => (heaterKwh === null || heaterKwh.value === null ? [] : [heaterKwh]));
  return [
    ...bills.flatMap((bill) =>
      bill.leftOut === null
        ? []
        : [`The bill from ${units.date(bill.fromMs)}, ${bill.tariffId}, is in no sum. ${bill.leftOut}`],
    ),
    ...(heat.length === 0
      ? []
      : [
          `The fans’ energy and money are with what their electric heaters drew beside them: ${units.say('energy', knownTotal(heat).total)} in the time of these bills, by the stated output; a heater counts wherever no log shows that it was off, and the lower ends count it only where one shows that it burned.`,
        ]),
    'The fans’ money is their energy, the demand of their own peak in the bill’s time (with the ratchet of the eleven months before) and connected load; the rest is what else the meter fed, its part of the demand, and what a minimum charge adds.',
    ...priceNotes(summed, units),
    ...bills.flatMap((bill) =>
      bill.cause === null
        ? []
        : [
            `The bill from ${units.date(bill.fromMs)}, ${bill.tariffId}: the fans explain more than was billed. ${bill.cause}`,
          ],
    ),
    ...(untold > 0
      ? [
          `In the time of ${counted(untold, 'bill')} fans went a day or more without a log while their bins held grain: what they used then may lie in the rest, and the upper ends say how much at most.`,
        ]
      : []),
  ];
}
