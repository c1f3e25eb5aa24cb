import type { Bin } from '../../season/season.ts';
import type { FanSpans } from '../types.ts';

const DAY_MS = 24 * 3_600_000;

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
