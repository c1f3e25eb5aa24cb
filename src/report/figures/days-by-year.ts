import * as Plot from '@observablehq/plot';
import { toLocalMs } from '../../base/zone.ts';
import { monthName } from '../date-text.ts';
import type { Figure, Size } from '../page.ts';
import type { Units } from '../units.ts';
import { draw } from './draw.ts';

/** The day on which something was done in a year's weather. */
export interface YearDay {
  /** calendar year in which the year's season begins */
  year: number;
  /** ms UTC; null: not done */
  doneMs: number | null;
}

export interface DaysByYear {
  id: string;
  title: string;
  /** what was done: `target reached` */
  what: string;
  groups: readonly { name: string; rows: readonly { name: string; years: readonly YearDay[] }[] }[];
  /** said of what is not drawn; null where all is */
  notShown: string | null;
}

interface Dot {
  key: string;
  day: Date;
  label: string;
  /** what pointer and keys read out */
  said: string;
  /** a label close behind another stands below */
  below: boolean;
}

const DAY_MS = 86_400_000;
/** A year without a leap day, on whose calendar all are laid over each other. */
const ANY_YEAR = 2001;
/** So many years get their labels each; of more the first and the last do. */
const LABELLED = 4;

/** Under each group's name its rows, a dot a year on one calendar. */
export function daysByYear({ id, title, what, groups, notShown }: DaysByYear, units: Units): Figure {
  const rows = groups.flatMap(({ rows: some }, group) => some.map((row, i) => ({ ...row, key: `${group} ${i}` })));
  const lines = groups.flatMap(({ name, rows: some }, group) => [
    { key: `group ${group}`, text: name, bold: true },
    ...some.map((row, i) => ({ key: `${group} ${i}`, text: `${row.name}${notDone(row.years)}`, bold: false })),
  ]);
  const onCalendar = ({ year, doneMs }: YearDay) => {
    if (doneMs === null) return null;
    // What is done at midnight was done that day.
    const local = new Date(toLocalMs(units.zone, doneMs - 1));
    return new Date(Date.UTC(ANY_YEAR + local.getUTCFullYear() - year, local.getUTCMonth(), local.getUTCDate()));
  };
  const dots = rows.flatMap(({ key, name, years }) => {
    const done = years
      .flatMap((one) => {
        const day = onCalendar(one);
        const said = `${name}, ${one.year}: ${day === null ? '' : dayText(day)}`;
        return day === null ? [] : [{ key, day, label: String(one.year), said, below: false }];
      })
      .sort((a, b) => Number(a.day) - Number(b.day));
    return done.map((dot, i) => ({
      ...dot,
      label: done.length <= LABELLED || i === 0 || i === done.length - 1 ? dot.label : '',
    }));
  });
  return {
    id,
    title,
    subtitle: `day on which the ${what}, a dot a year`,
    alt: rows
      .map(({ name, years }) => {
        const said = years.map(({ year, doneMs }) => `${year} ${doneMs === null ? 'not' : units.date(doneMs - 1)}`);
        return `${name}: ${said.join(', ')}.`;
      })
      .join(' '),
    legend: [],
    notShown,
    draw: (size) => drawDays(lines, dots, size),
  };
}

function notDone(years: readonly YearDay[]): string {
  const not = years.filter(({ doneMs }) => doneMs === null).map(({ year }) => year);
  if (not.length === 0) return '';
  return not.length <= LABELLED ? ` (not in ${not.join(', ')})` : ` (not in ${not.length} of ${years.length} years)`;
}

/** Without a year: the calendar is any year’s. */
function dayText(day: Date): string {
  return `${day.getUTCDate()} ${monthName(day.getUTCMonth() + 1)}`;
}

function drawDays(
  lines: readonly { key: string; text: string; bold: boolean }[],
  dots: readonly Dot[],
  size: Size,
): string {
  const { narrow, width } = size;
  const longest = Math.max(...lines.map(({ text }) => text.length));
  const left = narrow ? 12 : 34 + longest * 8;
  const right = 28;
  const days = dots.map(({ day }) => Number(day));
  const domain = [Math.min(...days) - 3 * DAY_MS, Math.max(...days) + 3 * DAY_MS];
  const pxPerMs = (width - left - right) / (domain[1] - domain[0]);
  const placed = dots.map((dot) => ({ ...dot }));
  placed.forEach((dot, i) => {
    const before = placed[i - 1];
    const close = before?.key === dot.key && (Number(dot.day) - Number(before.day)) * pxPerMs < 38;
    dot.below = close && !before.below;
  });
  const rim = { stroke: 'var(--paper)', strokeWidth: 4, fill: 'currentColor' } as const;
  const label = (below: boolean) =>
    Plot.text(
      placed.filter((dot) => dot.below === below && dot.label !== ''),
      { x: 'day', y: 'key', text: 'label', dy: below ? 24 : -7, ...rim },
    );
  // Beside its line where there is room, else above it.
  const at = (bold: boolean) => (narrow ? { dy: bold ? -4 : -24 } : { dx: 12 - left, dy: 8 });
  const name = (bold: boolean) =>
    Plot.text(
      lines.filter((line) => line.bold === bold),
      {
        frameAnchor: 'left',
        y: 'key',
        text: 'text',
        textAnchor: 'start',
        fontWeight: bold ? 'bold' : 'normal',
        ...at(bold),
        ...rim,
      },
    );
  return draw(size, {
    height: lines.length * (narrow ? 66 : 48) + 60,
    marginLeft: left,
    marginRight: right,
    marginTop: 8,
    marginBottom: 40,
    x: {
      type: 'utc',
      domain: domain.map((ms) => new Date(ms)),
      label: null,
      grid: true,
      ticks: narrow ? 4 : 8,
      tickFormat: dayText,
    },
    y: { domain: lines.map(({ key }) => key), axis: null },
    marks: [
      Plot.ruleY(
        lines.filter(({ bold }) => !bold),
        { y: 'key', stroke: 'var(--rule)', dy: 8 },
      ),
      Plot.dot(placed, { x: 'day', y: 'key', r: 5, fill: 'currentColor', dy: 8, title: 'said' }),
      label(false),
      label(true),
      name(true),
      name(false),
    ],
  });
}
