import { errorText } from '../../src/base/error-text.ts';
import type { TableFile } from '../../src/report/page-tables.ts';

export interface WorkbookBytes {
  /** null: not asked for, or it could not be written */
  bytes: Uint8Array | null;
  failures: string[];
}

/**
 * The tables as a workbook. One that cannot be written keeps nothing else from being made; the spreadsheet library is loaded
 * only where a workbook is asked for.
 */
export async function workbookBytes(
  tables: readonly TableFile[],
  title: string,
  wanted: boolean | undefined,
): Promise<WorkbookBytes> {
  if (!wanted) return { bytes: null, failures: [] };
  try {
    const { workbookOf } = await import('../../src/report/workbook/workbook.ts');
    return { bytes: workbookOf(tables, title), failures: [] };
  } catch (error) {
    return { bytes: null, failures: [`season.xlsx: ${errorText(error)}`] };
  }
}
