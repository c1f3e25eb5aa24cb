import type { Season } from '../../season/season.ts';
import { unknownHoursBetween } from '../fan/spans.ts';
import { fillTimes } from '../grain/fill-times.ts';
import type { FanSeason } from '../types.ts';

const HOUR_MS = 3_600_000;

/** Hours of [fromMs, toMs) of which the fan's log does not tell: outside it while a bin of the fan holds grain, or unknown in it. */
export function untoldHours(
  { fanId, spans }: FanSeason,
  season: Pick<Season, 'bins'>,
  fromMs: number,
  toMs: number,
): number {
  const bins = season.bins.filter((bin) => bin.fanIds.includes(fanId));
  const filled = bins.map((bin) => fillTimes(bin).begunMs ?? Number.NEGATIVE_INFINITY);
  const emptied = bins.map((bin) => bin.grain.unloadedMs ?? Number.POSITIVE_INFINITY);
  const anyBin = bins.length > 0;
  const from = Math.max(fromMs, anyBin ? Math.min(...filled) : fromMs);
  const to = Math.min(toMs, anyBin ? Math.max(...emptied) : toMs);
  const count = spans.startMs.length;
  const told = count === 0 ? 0 : Math.max(0, Math.min(spans.endMs[count - 1], to) - Math.max(spans.startMs[0], from));
  return Math.max(0, to - from - told) / HOUR_MS + unknownHoursBetween(spans, fromMs, toMs);
}
