import type { Bin } from '../../season/season.ts';
import { fillTimes } from '../grain/fill-times.ts';
import type { FanSpans } from '../types.ts';

const DAY_MS = 24 * 3_600_000;

/** Why a log tells nothing of a bin's season: it ends before the grain came, or begins after it went; null where it does not. */
export function otherSeason(bin: Bin, spans: FanSpans): string | null {
  const from = fillTimes(bin).begunMs ?? bin.grain.filledMs;
  const to = bin.grain.unloadedMs;
  const before = from !== null && spans.endMs[spans.endMs.length - 1] <= from;
  const after = to !== null && spans.startMs[0] >= to;
  if (!before && !after) return null;
  return `The fan log ${before ? 'ends before any grain was in' : 'begins after all grain was out'}: what the fans did to this grain, and what it cost, is not known. Check the path of the log and the dates in season.yaml.`;
}

/** What of the time with grain in the bin its fan log does not tell, whole sentences. @param unknownHours  within the log, h */
export function coverageNotes(bin: Bin, spans: FanSpans, unknownHours: number): string[] {
  const notes: string[] = [];
  const show = (value: number) => String(Number(value.toPrecision(3)));
  if (unknownHours >= 0.05) {
    notes.push(
      `The fan log is silent for ${show(unknownHours)} h; those hours are counted neither as on nor as off, and the upper ends of the intervals include them.`,
    );
  }
  const { filledMs, unloadedMs } = bin.grain;
  const late = filledMs === null ? 0 : (spans.startMs[0] - filledMs) / DAY_MS;
  if (late > 2)
    notes.push(
      `The fan log begins ${show(late)} days after the bin was filled; fan time before is not in these numbers.`,
    );
  const early = unloadedMs === null ? 0 : (unloadedMs - spans.endMs[spans.endMs.length - 1]) / DAY_MS;
  if (early > 2)
    notes.push(
      `The fan log ends ${show(early)} days before the bin was unloaded; fan time after is not in these numbers.`,
    );
  return notes;
}
