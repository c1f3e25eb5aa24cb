import * as Plot from '@observablehq/plot';
import { monthName } from '../date-text.ts';
import type { Figure, Size } from '../page.ts';
import type { Units } from '../units.ts';
import { draw } from './draw.ts';

/** One bill's bar. */
export interface BillBar {
  /** local calendar month in which the middle of the billed time lies, `2024-10` */
  month: string;
  billedKwh: number | null;
  fansKwh: number;
  fansInterval: readonly [number, number];
}

export interface BillsByTime {
  id: string;
  title: string;
  alt: string;
  /** a panel each, bills in the order of time */
  tariffs: readonly { name: string; bills: readonly BillBar[] }[];
}

/** Billed energy as outlined bars, what the fans explain of it filled, its interval as a line; a panel for each tariff. */
export function billsByTime(data: BillsByTime, units: Units): Figure {
  const unit = units.unit('energy');
  const unknown = data.tariffs.flatMap((one) => one.bills).filter((bill) => bill.billedKwh === null).length;
  return {
    id: data.id,
    title: data.title,
    subtitle: `By bill: billed energy and the fans’ part of it, ${unit}; a panel for each tariff, each to its own scale`,
    alt: data.alt,
    legend: [
      { label: 'fans, by their logs', swatch: 'var(--ink)' },
      { label: 'billed', swatch: 'var(--wash)' },
      { label: '90 % interval of the fans', swatch: 'line' },
    ],
    notShown:
      unknown === 0
        ? null
        : `${unknown} ${unknown === 1 ? 'bill has' : 'bills have'} no outline: no energy is given, or one below zero.`,
    draw: (size) => data.tariffs.map((tariff) => drawTariff(tariff, unit, units, size)).join(''),
  };
}

function drawTariff({ name, bills }: BillsByTime['tariffs'][number], unit: string, units: Units, size: Size): string {
  // Two bills may have their middle in one month: each keeps a place of its own.
  const rows = bills.map((bill, i) => ({
    ...bill,
    at: String(i),
    title: `${name}, ${bill.month}: fans ${units.say('energy', { value: bill.fansKwh, interval: [...bill.fansInterval], why: null })}${bill.billedKwh === null ? '' : ` of ${units.say('energy', bill.billedKwh)} billed`}`,
  }));
  const label = (at: string) => {
    const [year, month] = rows[Number(at)].month.split('-');
    const text = monthName(Number(month));
    if (size.narrow) return rows.length > 8 ? text.slice(0, 1) : text;
    return at === '0' || month === '01' ? `${text} ${year}` : text;
  };
  const billed = rows.filter((row) => row.billedKwh !== null);
  const whiskers = rows.filter((row) => row.fansInterval[1] > row.fansInterval[0]);
  return draw(size, {
    height: size.narrow ? 150 : 170,
    marginLeft: size.narrow ? 52 : 64,
    marginRight: 8,
    marginTop: 28,
    marginBottom: 28,
    x: { domain: rows.map((row) => row.at), tickFormat: label, label: null, padding: 0.25, tickSize: 0 },
    y: { label: unit, labelArrow: 'none', grid: true, ticks: 4, nice: true, zero: true },
    marks: [
      Plot.barY(billed, { x: 'at', y: 'billedKwh', fill: 'var(--wash)', stroke: 'var(--ink)', title: 'title' }),
      Plot.barY(rows, { x: 'at', y: 'fansKwh', fill: 'var(--ink)', insetLeft: 5, insetRight: 5, title: 'title' }),
      // On a halo of paper, so that it shows over the filled bar too.
      ...(['var(--paper)', 'var(--ink)'] as const).map((stroke, i) =>
        Plot.ruleX(whiskers, {
          x: 'at',
          y1: (row: BillBar) => row.fansInterval[0],
          y2: (row: BillBar) => row.fansInterval[1],
          stroke,
          strokeWidth: i === 0 ? 6 : 2.5,
        }),
      ),
      Plot.ruleY([0]),
      Plot.text([name], { text: (d: string) => d, frameAnchor: 'top-left', dy: -24, fontWeight: 'bold' }),
    ],
  });
}
