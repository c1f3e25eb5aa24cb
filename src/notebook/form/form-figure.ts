import type { BinReview } from '../../analysis/types.ts';
import { toLocalMs } from '../../base/zone.ts';
import { freeFigure } from '../../report/figures/free-figure.ts';
import type { FreeFigure, FreePoint } from '../../report/figures/free-figure-data.ts';
import type { Figure, OwnNumber } from '../../report/page.ts';
import type { Quantity } from '../../report/quantities.ts';
import type { Units } from '../../report/units.ts';
import { fanDays } from '../fan-days.ts';
import { counted } from '../words.ts';
import { amount, isAmount, isEstimate } from './amount.ts';
import { type AnyRows, toRows } from './any-rows.ts';
import { headingOf, namedUnit } from './named-units.ts';

/** A figure by short orders: which column goes across, which up. */
export interface FigureSpec {
  /** the finding, as a short sentence */
  title: string;
  rows: AnyRows;
  /** across: moments, days (`2024-10-04`), numbers or words */
  x: string;
  /** up: numbers with or without interval */
  y: string;
  /** a line, a set of dots or a bar for each value of this column; more than four become panels */
  by?: string;
  /** left out: bars for words, lines for time, dots for numbers */
  form?: 'line' | 'dots' | 'bars';
  /** columns with the ends of an interval, where `y` does not carry its own */
  low?: string;
  high?: string;
  /** what `y` is of, where its name does not say, and the unit it is in */
  of?: Quantity;
  unit?: string;
  /** under the title; left out: the quantity and its unit */
  subtitle?: string;
  /** for those who cannot see it; left out: the title and the range */
  alt?: string;
  /** a level to hold the values against, as a target */
  level?: { at: OwnNumber; label: string };
  /** this bin's fans are drawn above a time axis */
  fan?: { review: BinReview };
  /** false: without the table of its numbers folded under it, which stands there up to 400 rows */
  numbers?: false;
  /** stem of its address on the page; left out: from the title */
  id?: string;
}

/** A row's value with its place across, before it is drawn. */
interface Told extends FreePoint {
  series: string | null;
}

/** Rows that hold no number: the page says so in the figure's place, as it does of a table without rows. */
export class NothingToDraw extends RangeError {}

/**
 * Prepared rows as a figure of a page.
 *
 * @throws NothingToDraw where no row has a number; RangeError for a column that is not there; TypeError for values that no axis can show, or a `y` of no known kind
 */
export function formFigure(spec: FigureSpec, units: Units): Figure {
  const { names, rows } = toRows(spec.rows);
  const asked = [spec.x, spec.y, spec.by, spec.low, spec.high].filter((name) => name !== undefined);
  const unknown = rows.length === 0 ? [] : asked.filter((name) => !names.includes(name));
  if (unknown.length > 0) {
    throw new RangeError(`there is no column ${unknown.join(', ')}; the rows have ${names.join(', ')}`);
  }
  const of = quantityOf(spec, rows);
  const unit = spec.of === undefined ? (spec.unit ?? namedUnit(spec.y)?.unit) : spec.unit;
  const kind = kindOf(spec, rows);
  const shown = (value: unknown) => shownNumber(value, of, unit, units);
  const told = rows.map((row): Told => {
    const value = row[spec.y];
    const { y, low, high } = shown(value);
    const end = (name: string | undefined, own: number | null) =>
      name === undefined || Number.isNaN(y) ? own : nullIfNaN(shown(row[name]).y);
    return {
      x: placeOf(row[spec.x], kind, units),
      y,
      low: end(spec.low, low),
      high: end(spec.high, high),
      series: spec.by === undefined ? null : String(row[spec.by]),
    };
  });
  const there = told.filter(({ y }) => !Number.isNaN(y));
  if (there.length === 0) throw new NothingToDraw(`${spec.y} has no number in ${counted(rows.length, 'row')}`);
  const lacking = told.length - there.length;
  const said = (y: number) => units.say(of, siOf(y, of, units));
  const data: FreeFigure = {
    id: spec.id ?? spec.title,
    title: spec.title,
    subtitle: spec.subtitle ?? subtitleOf(spec, of, units),
    alt: spec.alt ?? altOf(spec, there, kind, said, units),
    notShown: lacking === 0 ? null : `${lacking} of ${counted(told.length, 'row')} not shown: no number.`,
    form: spec.form ?? (kind === 'words' ? 'bars' : kind === 'time' ? 'line' : 'dots'),
    x: axisOf(spec, told, kind),
    series: seriesOf(told),
    level: spec.level === undefined ? null : levelOf(spec.level, units),
    fanDays: spec.fan === undefined || kind !== 'time' ? null : fanDays(spec.fan.review.fan.spans, units.zone),
    ranges: rangesOf(spec, rows),
    said,
  };
  return freeFigure(data);
}

type Kind = 'time' | 'number' | 'words';
const DAY = /^\d{4}-\d{2}-\d{2}$/;
const MONTH = /^\d{4}-\d{2}$/;
const DAY_MS = 86_400_000;

function kindOf({ x }: FigureSpec, rows: readonly Readonly<Record<string, unknown>>[]): Kind {
  const values = rows.map((row) => row[x]).filter((value) => value !== null && value !== undefined);
  if (values.every((value) => value instanceof Date || (typeof value === 'string' && DAY.test(value)))) return 'time';
  return values.every((value) => typeof value === 'number') ? 'number' : 'words';
}

/** Times by the site's clock; a day stands at its noon. */
function placeOf(value: unknown, kind: Kind, { zone }: Units): number | string {
  if (kind === 'words') return value === null || value === undefined ? '–' : String(value);
  if (value instanceof Date) return toLocalMs(zone, value.getTime());
  if (typeof value === 'string') return Date.parse(value) + DAY_MS / 2;
  return typeof value === 'number' ? value : Number.NaN;
}

function quantityOf({ y, of }: FigureSpec, rows: readonly Readonly<Record<string, unknown>>[]): Quantity {
  if (of !== undefined) return of;
  const kinds = [...new Set(rows.flatMap((row) => (isAmount(row[y]) ? [(row[y] as OwnNumber).of] : [])))];
  if (kinds.length === 1) return kinds[0];
  if (kinds.length > 1) throw new TypeError(`${y} holds numbers of several kinds: ${kinds.join(', ')}`);
  const named = namedUnit(y);
  if (named !== null) return named.of;
  const values = rows.map((row) => row[y]).filter((value) => typeof value === 'number' && !Number.isNaN(value));
  if (rows.some((row) => isEstimate(row[y])))
    throw new TypeError(`${y} holds estimates; say of what, e.g. of: 'money'`);
  return values.every(Number.isInteger) ? 'count' : 'number';
}

/** A number in the shown unit, with its interval. */
function shownNumber(value: unknown, of: Quantity, unit: string | undefined, units: Units) {
  const none = { y: Number.NaN, low: null, high: null };
  if (value === null || value === undefined) return none;
  const told = isAmount(value) ? value.amount : value;
  if (typeof told !== 'number' && !isEstimate(told)) {
    if (typeof told === 'object' && 'why' in told) return none;
    throw new TypeError(`"${String(told).slice(0, 40)}" is no number to draw`);
  }
  const { amount: si } = isAmount(value) ? value : amount(of, told, unit);
  const shown = (one: number) => units.shown(of, one);
  if (typeof si === 'number') return { ...none, y: shown(si) };
  if (si.value === null) return none;
  const ends = si.interval === null ? null : si.interval.map(shown);
  return { y: shown(si.value), low: ends?.[0] ?? null, high: ends?.[1] ?? null };
}

/** Back from the shown unit, to be said by `Units`. */
function siOf(shown: number, of: Quantity, units: Units): number {
  const zero = units.shown(of, 0);
  return (shown - zero) / (units.shown(of, 1) - zero);
}

const nullIfNaN = (value: number): number | null => (Number.isNaN(value) ? null : value);

/** Only what the kit's estimates carry is a 90 % interval. */
function rangesOf({ y, low, high }: FigureSpec, rows: readonly Readonly<Record<string, unknown>>[]): string {
  const ends = [low, high].flatMap((name) => (name === undefined ? [] : [headingOf(name).toLowerCase()]));
  if (ends.length > 0) return ends.join(' to ');
  const byModel = rows.some((row) => isAmount(row[y]) && row[y].known === 'by the model');
  return byModel ? 'range by the model, no 90 % interval' : '90 % interval';
}

function subtitleOf({ y, x, by }: FigureSpec, of: Quantity, units: Units): string {
  const unit = units.unit(of);
  const across =
    by === undefined
      ? headingOf(x).toLowerCase()
      : `${headingOf(x).toLowerCase()}, for each ${headingOf(by).toLowerCase()}`;
  return `${headingOf(y)}${unit === '' ? '' : `, ${unit}`}, by ${across}`;
}

function altOf({ title }: FigureSpec, there: readonly Told[], kind: Kind, said: (y: number) => string, units: Units) {
  const sorted = [...there].sort((a, b) => a.y - b.y);
  const where = ({ x, series }: Told) => {
    const place = kind === 'time' ? dayOf(x as number) : kind === 'number' ? units.number('number', x as number) : x;
    return series === null ? String(place) : `${series}, ${place}`;
  };
  const [least, most] = [sorted[0], sorted[sorted.length - 1]];
  const end = title.endsWith('.') ? '' : '.';
  return `${title}${end} From ${said(least.y)} (${where(least)}) to ${said(most.y)} (${where(most)}); ${counted(there.length, 'value')}.`;
}

/** Local ms as a day. */
const dayOf = (localMs: number): string => new Date(localMs).toISOString().slice(0, 10);

function axisOf({ x }: FigureSpec, told: readonly Told[], kind: Kind): FreeFigure['x'] {
  if (kind === 'words') {
    const words = [...new Set(told.map((one) => String(one.x)))];
    // Months stand in their order, whatever the rows' is.
    return { kind, order: words.every((word) => MONTH.test(word)) ? words.sort() : words };
  }
  if (kind === 'number') return { kind, label: headingOf(x) };
  let fromMs = Number.POSITIVE_INFINITY;
  let toMs = Number.NEGATIVE_INFINITY;
  for (const { x: at } of told) {
    fromMs = Math.min(fromMs, at as number);
    toMs = Math.max(toMs, at as number);
  }
  return { kind, span: { fromMs, toMs: Math.max(toMs, fromMs + DAY_MS) } };
}

function seriesOf(told: readonly Told[]): FreeFigure['series'] {
  const series = new Map<string | null, Told[]>();
  for (const one of told) {
    const of = series.get(one.series);
    if (of === undefined) series.set(one.series, [one]);
    else of.push(one);
  }
  return [...series].map(([name, of]) => ({
    name,
    points: typeof of[0].x === 'number' ? of.sort((a, b) => (a.x as number) - (b.x as number)) : of,
  }));
}

function levelOf({ at, label }: NonNullable<FigureSpec['level']>, units: Units): FreeFigure['level'] {
  const middle = typeof at.amount === 'number' ? at.amount : at.amount.value;
  if (middle === null) return null;
  return { at: units.shown(at.of, middle), label: `${label}, ${units.say(at.of, middle)}` };
}
