import { EXIT, generatedAtMs, tellError } from '../command-line.ts';
import type { PdfWish } from './pdf-of.ts';
import { runReview } from './run-review.ts';

/** What the command line of a review may ask for beside the season. */
export interface ReviewWishes {
  /** null: `review` in the season folder */
  out: string | null;
  models?: boolean;
  /** take what is kept of the season where no file changed since */
  keep?: boolean;
  workbook?: boolean;
  parquet?: boolean;
  /** one's own notebooks, pages beside the kit's */
  own?: readonly string[];
  /** run every rule in each year on file first */
  sweep?: boolean;
  previous?: string | null;
  pdf?: PdfWish | null;
}

/** Run a review for a person at a terminal. @returns the exit status */
export async function reviewCommand(seasonFolder: string, wishes: ReviewWishes): Promise<number> {
  const tell = (line: string) => process.stderr.write(`${line}\n`);
  try {
    const madeMs = generatedAtMs(process.env.SOURCE_DATE_EPOCH, Date.now());
    const done = await runReview({ seasonFolder, ...wishes, generatedAtMs: madeMs, onStage: tell });
    process.stdout.write(`Open ${done.out}/index.html\n`);
    if (done.failures.length === 0) return EXIT.whole;
    tell(
      `${done.failures.length === 1 ? 'One part' : `${done.failures.length} parts`} could not be made; the pages say where:`,
    );
    for (const failure of done.failures) tell(`  ${failure}`);
    return EXIT.partly;
  } catch (error) {
    return tellError(error, tell);
  }
}
