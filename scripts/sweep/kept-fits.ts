import { existsSync, readFileSync } from 'node:fs';
import type { FittedValues } from '../../src/analysis/model/fitted-values.ts';
import type { BinModel } from '../../src/analysis/model/model-types.ts';
import { appendLines, writeWhole } from './whole-file.ts';

/** What a sweep takes from a bin's fitted model. */
export type KeptFit = Pick<BinModel, 'fitted' | 'trusted' | 'why'>;

/** A line: the bin, its fit; `offsets` in plain lists, null where not a number. */
type Line = [
  bin: string,
  trusted: boolean,
  why: string,
  fitted: Omit<FittedValues, 'offsetsWb'> | null,
  offsets: (number | null)[][],
];

/**
 * Fits of a season's bins, kept in a file, since a fit takes as long as hundreds of runs: a sweep that goes on, or asks for more of
 * the same season, takes them over. Those of other files or other code are dropped.
 */
export class KeptFits {
  private readonly path: string;
  private readonly fits = new Map<string, KeptFit>();

  /** @param of  hash of the season's files and of the code */
  constructor(path: string, of: string) {
    this.path = path;
    const header = `${JSON.stringify({ format: 1, of })}\n`;
    const text = existsSync(path) ? readFileSync(path, 'utf8') : '';
    if (!text.startsWith(header)) writeWhole(path, header);
    else for (const line of text.slice(header.length).split('\n')) this.read(line);
    // A line that a kill cut short must not run into the next.
    if (text.startsWith(header) && !text.endsWith('\n')) appendLines(path, '\n');
  }

  get(bin: string): KeptFit | undefined {
    return this.fits.get(bin);
  }

  add(bin: string, { trusted, why, fitted }: KeptFit): void {
    this.fits.set(bin, { trusted, why, fitted });
    const { offsetsWb = [], ...plain } = fitted ?? {};
    const line = [bin, trusted, why, fitted === null ? null : plain, offsetsWb.map((one) => [...one])];
    appendLines(this.path, `${JSON.stringify(line)}\n`);
  }

  private read(line: string): void {
    let cells: Line;
    try {
      cells = JSON.parse(line);
    } catch {
      return;
    }
    const [bin, trusted, why, plain, offsets] = cells;
    const offsetsWb = offsets.map((one) => Float64Array.from(one, (value) => value ?? Number.NaN));
    this.fits.set(bin, { trusted, why, fitted: plain === null ? null : { ...plain, offsetsWb } });
  }
}
