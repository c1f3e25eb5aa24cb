import type { Problem } from '../../../base/errors.ts';
import type { ArchiveFormat } from '../../season.ts';
import type { FileReading } from '../file-reading.ts';
import { readAsos } from './asos.ts';
import { readEpw } from './epw.ts';
import { readIsdLite } from './isd-lite.ts';
import { readLcd } from './lcd.ts';
import { readOpenMeteo } from './open-meteo.ts';

/** Reads one public archive format into the weather table; returns the problems that keep the file from being read. */
type ArchiveReader = (reading: FileReading) => Problem[];

/** A format is one file and one line here. */
const ARCHIVES: Readonly<Record<ArchiveFormat, ArchiveReader>> = {
  epw: readEpw,
  'isd-lite': readIsdLite,
  lcd: readLcd,
  asos: readAsos,
  'open-meteo': readOpenMeteo,
};

export function readArchive(reading: FileReading, format: ArchiveFormat): Problem[] {
  return ARCHIVES[format](reading);
}
