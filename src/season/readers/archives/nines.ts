import { agreeing } from '../../../base/agreeing.ts';
import { groupedCount } from '../../../base/grouped-count.ts';
import { listed } from '../../../base/listed.ts';
import type { FileReading } from '../file-reading.ts';
import type { ArchiveCell } from './archive-row.ts';

/** Three nines or more, whatever stands behind the point: what archives write where they have no number (common practice). */
const NINES = /^[+-]?9{3,}(?:\.[09]*)?$/;
/** What outdoor air cannot be, SI: 999 is a sound pressure in hPa and no temperature. */
const POSSIBLE: Readonly<Record<ArchiveCell['column'], readonly [number, number]>> = {
  temp_c: [-95, 65],
  dew_point_c: [-95, 65],
  rh: [0, 1.2],
  pressure_pa: [40_000, 120_000],
};

/** Numbers of nines alone in the place of a missing value, in files whose own mark for it is another: counted, to be told once. */
export class Nines {
  private readonly seen = new Map<string, number>();

  /** Whether a cell is such a number; then it counts. @param si  its value, before it is brought to the site's height */
  isMissing(text: string, column: ArchiveCell['column'], si: number): boolean {
    const [low, high] = POSSIBLE[column];
    if (!NINES.test(text) || (si >= low && si <= high)) return false;
    this.seen.set(text, (this.seen.get(text) ?? 0) + 1);
    return true;
  }

  /** Say how many cells were taken as missing, if any. */
  tell({ findings, path, tally }: FileReading): void {
    const cells = [...this.seen.values()].reduce((sum, count) => sum + count, 0);
    if (cells === 0) return;
    const codes = [...this.seen.keys()].sort();
    findings.push({
      kind: 'gap',
      where: path,
      binId: null,
      fromMs: tally.firstMs,
      toMs: tally.lastMs,
      cells,
      text: `${path}: ${groupedCount(cells)} ${agreeing(cells, 'value is', 'values are')} ${listed(codes)}, which no air can have and archives write for a missing value; ${agreeing(cells, 'it counts', 'they count')} as missing.`,
      advice: null,
    });
  }
}
