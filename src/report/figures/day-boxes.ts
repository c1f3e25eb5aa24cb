import { boxPath, type Frame } from './draw.ts';
import type { LocalSpan } from './time-axis.ts';

const DAY_MS = 86_400_000;
const HOUR_MS = 3_600_000;

/** A span as boxes of a day's width; days next to each other with the same hours are one box. */
export function dayBoxes(spans: readonly LocalSpan[], frame: Pick<Frame, 'x' | 'y'>): string {
  const boxes: { day: number; days: number; from: number; to: number }[] = [];
  const open = new Map<string, (typeof boxes)[number]>();
  for (const span of spans) {
    for (let day = Math.floor(span.fromMs / DAY_MS) * DAY_MS; day < span.toMs; day += DAY_MS) {
      // Six minutes are finer than a pixel.
      const hour = (ms: number) => Math.round(((ms - day) / HOUR_MS) * 10) / 10;
      const from = Math.max(0, hour(span.fromMs));
      const to = Math.min(24, hour(span.toMs));
      if (to <= from) continue;
      const key = `${day} ${from} ${to}`;
      const before = open.get(key);
      if (before === undefined) {
        const box = { day, days: 1, from, to };
        boxes.push(box);
        open.set(`${day + DAY_MS} ${from} ${to}`, box);
      } else {
        before.days += 1;
        open.set(`${day + DAY_MS} ${from} ${to}`, before);
      }
    }
  }
  return boxes
    .map((box) =>
      boxPath(
        frame.x(new Date(box.day)),
        frame.y(box.to),
        frame.x(new Date(box.day + box.days * DAY_MS)),
        frame.y(box.from),
      ),
    )
    .join('');
}
