import * as Plot from '@observablehq/plot';
import { monthName } from '../date-text.ts';
import type { Size } from '../page.ts';
import { boxPath, type Frame, hatch, ownMark } from './draw.ts';

const DAY_MS = 86_400_000;

/** Times in figures are local wall clock as if it were UTC (`toLocalMs`). */
export interface LocalSpan {
  fromMs: number;
  toMs: number;
}

/** One local day of a bin's fans: hours on and hours not known. */
export interface FanDay {
  dayMs: number;
  hours: number;
  unknownHours: number;
}

/** Room above a time figure for the strip of the fans. */
export const STRIP = { height: 26, gap: 8, top: 6 } as const;

function ticks(span: LocalSpan, size: Size): { at: Date; label: string }[] {
  const days = (span.toMs - span.fromMs) / DAY_MS;
  const first = new Date(span.fromMs);
  if (days > 75) {
    const months: { at: Date; label: string }[] = [];
    const step = size.narrow && days > 200 ? 2 : 1;
    for (let m = first.getUTCMonth(); ; m++) {
      const at = new Date(Date.UTC(first.getUTCFullYear(), m, 1));
      if (at.getTime() > span.toMs) break;
      if (at.getTime() < span.fromMs || (m - first.getUTCMonth()) % step !== 0) continue;
      const year = months.length === 0 || at.getUTCMonth() < step ? ` ${at.getUTCFullYear()}` : '';
      months.push({ at, label: `${monthName(at.getUTCMonth() + 1)}${year}` });
    }
    return months;
  }
  const step = [1, 2, 7, 14, 21].find((one) => days / one <= (size.narrow ? 4 : 9)) ?? 28;
  const out: { at: Date; label: string }[] = [];
  for (let ms = Math.ceil(span.fromMs / DAY_MS) * DAY_MS; ms <= span.toMs; ms += step * DAY_MS) {
    const at = new Date(ms);
    out.push({ at, label: `${at.getUTCDate()} ${monthName(at.getUTCMonth() + 1)}` });
  }
  return out;
}

/** Local months that begin within a span, as ms. */
export function monthStarts(span: LocalSpan): number[] {
  const first = new Date(span.fromMs);
  const out: number[] = [];
  for (let m = first.getUTCMonth() + 1; ; m++) {
    const at = Date.UTC(first.getUTCFullYear(), m, 1);
    if (at > span.toMs) return out;
    out.push(at);
  }
}

/** The axis of local days: months by name, weeks when the span is short. */
export function timeAxis(span: LocalSpan, size: Size) {
  const marks = ticks(span, size);
  return Plot.axisX(
    marks.map((mark) => mark.at),
    {
      tickFormat: (at: Date) => marks.find((mark) => mark.at.getTime() === at.getTime())?.label ?? '',
      label: null,
      color: 'currentColor',
    } as Plot.AxisXOptions,
  );
}

export function timeScale(span: LocalSpan) {
  return { type: 'utc' as const, domain: [new Date(span.fromMs), new Date(span.toMs)] };
}

/** The strip of the fans in the top margin: a bar a day, as high as its share of 24 hours; unknown hours hatched. */
export function fanStrip(days: readonly FanDay[], span: LocalSpan, size: Size) {
  return ownMark((frame: Frame) => {
    const bottom = STRIP.top + STRIP.height;
    const clip = (ms: number) => frame.x(new Date(Math.min(span.toMs, Math.max(span.fromMs, ms))));
    let on = '';
    let unknown = '';
    for (const day of days) {
      const x1 = clip(day.dayMs);
      const x2 = clip(day.dayMs + DAY_MS);
      if (x2 <= x1) continue;
      const height = (hours: number) => (Math.min(24, hours) / 24) * STRIP.height;
      const top = bottom - height(day.hours);
      if (day.hours > 0) on += boxPath(x1, top, x2, bottom);
      if (day.unknownHours > 0.1) unknown += boxPath(x1, Math.max(STRIP.top, top - height(day.unknownHours)), x2, top);
    }
    const id = `${size.idPrefix}-fan-hatch`;
    const label = frame.element(
      'text',
      { x: frame.left - 6, y: STRIP.top + STRIP.height / 2, dy: '.35em', 'text-anchor': 'end' },
      size.narrow ? 'fan' : 'fan, h of 24',
    );
    return [
      hatch(frame, id),
      frame.element('path', { d: unknown, fill: `url(#${id})` }),
      frame.element('path', { d: on, fill: 'var(--ink)' }),
      frame.element('path', { d: `M${frame.left} ${bottom}H${frame.right}`, stroke: 'var(--rule)' }),
      frame.element('path', {
        d: `M${frame.left} ${STRIP.top}H${frame.right}`,
        stroke: 'var(--rule)',
        'stroke-dasharray': '1 4',
      }),
      label,
    ];
  });
}
