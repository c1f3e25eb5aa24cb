import type { Problem } from '../../base/errors.ts';
import type { ArchiveFormat } from '../season.ts';
import type { FileReading } from './file-reading.ts';
import { readIsdLite } from './isd-lite.ts';

/** Reads one public archive format into the weather table; returns the problems that keep the file from being read. */
export type ArchiveReader = (reading: FileReading) => Problem[];

/** The formats that are read today: a reader is one new file and one line here. */
export const ARCHIVES: Partial<Readonly<Record<ArchiveFormat, ArchiveReader>>> = {
  'isd-lite': readIsdLite,
};

export function readArchive(reading: FileReading, format: ArchiveFormat): Problem[] {
  const reader = ARCHIVES[format];
  if (reader !== undefined) return reader(reading);
  const message = `has the format ${format}, which is not read yet; read today: ${Object.keys(ARCHIVES).join(', ')}. Convert the file to CSV and name its columns, or take it out of season.yaml.`;
  return [{ code: 'FILE_FORMAT', file: reading.path, message }];
}
