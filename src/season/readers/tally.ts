import type { FileLoad, Reject } from '../loaded.ts';
import type { FileSpec } from '../season.ts';

/** Counts the cells of one file as they are read, so that cells = kept + missing + rejected + outside at every moment. */
export class Tally {
  readonly path: string;
  rows = 0;
  kept = 0;
  missing = 0;
  rejected = 0;
  outside = 0;
  firstMs: number | null = null;
  lastMs: number | null = null;
  /** the file is a typical year's */
  typicalYear = false;
  readonly rejects: Reject[] = [];

  constructor(path: string) {
    this.path = path;
  }

  rejectCell(line: number, column: string, text: string, reason: string): void {
    this.rejected += 1;
    this.rejects.push({ file: this.path, line, column, text, reason });
  }

  /** @param cells  measured cells of the row, all of which are lost with it */
  rejectRow(line: number, cells: number, text: string, reason: string): void {
    this.rejected += cells;
    this.rejects.push({ file: this.path, line, column: null, text, reason });
  }

  keptRow(timeMs: number): void {
    if (this.firstMs === null || timeMs < this.firstMs) this.firstMs = timeMs;
    if (this.lastMs === null || timeMs > this.lastMs) this.lastMs = timeMs;
  }

  done(spec: FileSpec, bytes: { sha256: string; bytes: number }): FileLoad {
    this.rejects.sort((a, b) => a.line - b.line);
    return {
      path: this.path,
      holds: spec.holds,
      role: spec.role,
      sha256: bytes.sha256,
      bytes: bytes.bytes,
      rows: this.rows,
      cells: this.kept + this.missing + this.rejected + this.outside,
      kept: this.kept,
      missing: this.missing,
      rejected: this.rejected,
      outside: this.outside,
      firstMs: this.firstMs,
      lastMs: this.lastMs,
      ...(this.typicalYear ? { typicalYear: true as const } : {}),
    };
  }
}
