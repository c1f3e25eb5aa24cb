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
  const paid = withMoney.reduce((sum, bill) => sum + (bill.amount ?? 0), 0);
  const rest = knownTotal(withMoney.map((bill) => bill.restMoney)).total;
  const money =
    withMoney.length === 0
      ? ''
      : ` Of ${units.say('money', paid)} paid, ${units.say('money', rest)} are neither the fans’ nor fixed charges.`;
  return {
    lead:
      billed > 0
        ? `The fans explain ${units.say('share', share)} of the ${units.say('energy', billed)} billed.${money}`
        : `Can’t tell what share the fans explain: ${sentence(untold)}${money}`,
    figures: billed > 0 ? [billFigure(known, share, units)] : [],
    tables: [energyTable(bills), moneyTable(bills)],
    notes: notesOf(bills, units),
  };
}

function billFigure(bills: readonly BillShare[], share: Estimate, units: Units) {
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
  const title = `The fans explain ${units.say('share', share)} of the energy billed`;
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
  return [
    ...bills.flatMap((bill) =>
      bill.leftOut === null
        ? []
        : [`The bill from ${units.date(bill.fromMs)}, ${bill.tariffId}, is in no sum. ${bill.leftOut}`],
    ),
    'The fans’ money is their energy, the demand of their own peak in the bill’s time (with the ratchet of the eleven months before) and connected load; the rest is what else the meter fed, its part of the demand, and what a minimum charge adds.',
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
