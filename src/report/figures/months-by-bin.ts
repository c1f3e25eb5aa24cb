import * as Plot from '@observablehq/plot';
import { monthName, monthText } from '../date-text.ts';
import type { Figure, Size } from '../page.ts';
import type { Quantity } from '../quantities.ts';
import type { Units } from '../units.ts';
import { draw, stripes } from './draw.ts';
import { inParts, PANELS_A_PAGE } from './in-parts.ts';

/** How the parts of a month are filled, from below: told apart in black and white too. */
const SWATCHES = ['block', 'stripe', 'open'] as const;

/** Bars by month for each bin, a panel a bin; values in the shown unit. */
export interface MonthsByBin {
  id: string;
  title: string;
  quantity: Quantity;
  /** at most three, stacked from below */
  parts: readonly string[];
  bins: readonly { name: string; months: readonly { month: string; values: readonly (number | null)[] }[] }[];
}

interface Row {
  panel: string;
  month: string;
  low: number;
  high: number;
  part: number;
  title: string;
}

/** All months from the first to the last, so that an idle one shows as a gap. */
function monthRange(all: readonly string[]): string[] {
  const sorted = [...all].sort();
  if (sorted.length === 0) return [];
  const [year, month] = sorted[0].split('-').map(Number);
  const out: string[] = [];
  for (let i = 0; out.at(-1) !== sorted.at(-1); i++) {
    const at = new Date(Date.UTC(year, month - 1 + i, 1));
    out.push(`${at.getUTCFullYear()}-${String(at.getUTCMonth() + 1).padStart(2, '0')}`);
  }
  return out;
}

/** Small multiples of months: fan hours, or the parts of the cost stacked. */
export function monthsByBin(whole: MonthsByBin, units: Units): Figure {
  const months = monthRange(whole.bins.flatMap((bin) => bin.months.map((one) => one.month)));
  if (months.length === 0) throw new Error('no bin has a month with fan hours');
  const sums = whole.bins.flatMap((bin) =>
    bin.months.map(({ values }) => values.reduce((sum: number, one) => sum + (one ?? 0), 0)),
  );
  const scale = { months, top: Math.max(0, ...sums) };
  return inParts(whole.bins, PANELS_A_PAGE - 2, (bins) => figureOf({ ...whole, bins }, scale, units));
}

/** What all parts share. */
interface Scale {
  months: readonly string[];
  top: number;
}

function figureOf(data: MonthsByBin, { months, top }: Scale, units: Units): Figure {
  const unit = units.unit(data.quantity);
  const rows: Row[] = [];
  let lacking = 0;
  data.bins.forEach((bin, b) => {
    for (const { month, values } of bin.months) {
      let low = 0;
      values.forEach((value, p) => {
        if (value === null) lacking += 1;
        if (value === null || value === 0) return;
        const title = `${bin.name}, ${monthText(month)}: ${data.parts[p]} ${units.say(data.quantity, value)}`;
        rows.push({ panel: String(b), month, low, high: low + value, part: p, title });
        low += value;
      });
    }
  });
  const most = rows.reduce((a, b) => (b.high > (a?.high ?? 0) ? b : a), rows[0]);
  return {
    id: data.id,
    title: data.title,
    subtitle: `By month: ${data.parts.join(' and ')}, ${unit}; a panel for each bin, all to one scale`,
    alt:
      most === undefined
        ? 'No month has any.'
        : `${data.parts.join(' and ')} by month and bin, from ${monthText(months[0])} to ${monthText(months.at(-1) ?? months[0])}; the highest bar reaches ${units.say(data.quantity, most.high)} in ${monthText(most.month)}.`,
    legend: data.parts.length < 2 ? [] : data.parts.map((label, p) => ({ label, swatch: SWATCHES[p] })),
    notShown:
      lacking === 0
        ? null
        : `${lacking} monthly ${lacking === 1 ? 'number' : 'numbers'} not shown: not known; the table says why.`,
    draw: (size) => drawMonths(data, rows, { months, top }, unit, size),
  };
}

function drawMonths(data: MonthsByBin, rows: Row[], { months, top }: Scale, unit: string, size: Size): string {
  const panels = data.bins.map((_, b) => String(b));
  const stripeId = `${size.idPrefix}-stripes`;
  const fills = ['var(--ink)', `url(#${stripeId})`, 'var(--paper)'];
  const label = (month: string) => {
    const [year, number] = month.split('-');
    const name = monthName(Number(number));
    if (size.narrow) return months.length > 8 ? name.slice(0, 1) : name;
    return month === months[0] || number === '01' ? `${name} ${year}` : name;
  };
  return draw(
    size,
    {
      height: panels.length * (size.narrow ? 96 : 104) + 50,
      marginLeft: size.narrow ? 44 : 64,
      marginRight: 8,
      marginTop: 24,
      marginBottom: 28,
      fy: { domain: panels, axis: null, padding: 0.28 },
      x: { domain: months, tickFormat: label, label: null, padding: 0.25, tickSize: 0 },
      y: { domain: [0, top || 1], label: unit, labelArrow: 'none', grid: true, ticks: 3, nice: true },
      marks: [
        Plot.barY(rows, {
          x: 'month',
          y1: 'low',
          y2: 'high',
          fy: 'panel',
          fill: (row: Row) => fills[row.part],
          stroke: 'var(--ink)',
          strokeWidth: 0.75,
          title: 'title',
        }),
        Plot.ruleY([0]),
        Plot.text(
          panels.filter((d) => !rows.some((row) => row.panel === d)),
          { fy: (d: string) => d, text: () => 'none known', frameAnchor: 'middle' },
        ),
        Plot.text(panels, {
          fy: (d: string) => d,
          text: (d: string) => data.bins[Number(d)].name,
          frameAnchor: 'top-left',
          dy: -15,
          fontWeight: 650,
        }),
      ],
      color: { type: 'identity' },
    },
    data.parts.length > 1 ? stripes(stripeId) : '',
  );
}
