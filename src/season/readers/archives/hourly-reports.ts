import { agreeing } from '../../../base/agreeing.ts';
import { FLAGS } from '../../../tables/flags.ts';
import type { FileReading } from '../file-reading.ts';

const HOUR_MS = 3_600_000;

/** A report of an airport: the kinds are ranked, 0 the routine one. */
export interface Report {
  timeMs: number;
  rank: number;
  /** row of the weather table */
  at: number;
}

/**
 * Flag reports that add to an hour which has a better one: special reports crowd into bad weather, and synoptic ones repeat the routine report
 * of some minutes before, so means over rows would lean. A report belongs to the hour that it is nearest to.
 */
export function flagExtraReports(reading: FileReading, reports: readonly Report[]): void {
  const hourOf = (timeMs: number) => Math.floor(timeMs / HOUR_MS + 0.5);
  const best = new Map<number, Report>();
  for (const report of reports) {
    const known = best.get(hourOf(report.timeMs));
    if (known === undefined || report.rank < known.rank) best.set(hourOf(report.timeMs), report);
  }
  const { table, path } = reading;
  let rows = 0;
  let cells = 0;
  let fromMs = Number.POSITIVE_INFINITY;
  let toMs = Number.NEGATIVE_INFINITY;
  for (const report of reports) {
    const chosen = best.get(hourOf(report.timeMs));
    if (chosen === report || (report.rank === 0 && chosen?.rank === 0)) continue;
    table.addFlag('flags', report.at, FLAGS.duplicate);
    rows += 1;
    cells += table.cellsOf(report.at);
    fromMs = Math.min(fromMs, report.timeMs);
    toMs = Math.max(toMs, report.timeMs);
  }
  if (rows === 0) return;
  reading.findings.push({
    kind: 'duplicate',
    where: path,
    binId: null,
    fromMs,
    toMs,
    cells,
    text: `${path}: ${rows} special or repeated ${agreeing(rows, 'report stands beside the routine report of its', 'reports stand beside the routine report of their')} hour, which is used.`,
    advice: null,
  });
}
