import { mkdirSync, mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { dirname, join } from 'node:path';
import type { Fan } from '../../../src/bin/fan.ts';
import type { Bin, FileSpec, Season } from '../../../src/season/season.ts';
import { plainBin, stoodAt } from '../../support/plain-bin.ts';

/** A bin of corn by these cables. */
export const binOf = (id: string, cables: Bin['cables'], depthM = 5): Bin =>
  plainBin(
    { id, name: id, diameterM: 11, eaveHeightM: 6, cables },
    { depthSteps: stoodAt(depthM), bulkDensityKgM3: 721 },
  );

const cable = (id: string, sensorHeightsM: number[]) => ({ id, fromCentreM: 0, bearingDeg: null, sensorHeightsM });

export const fanOf = (id: string): Fan => ({
  id,
  nameplateW: 11000,
  supply: null,
  load: null,
  motorEfficiency: null,
  runningAboveA: null,
  tariffId: 'T1',
  curve: null,
  heater: null,
});

/** A file of the season; what is not said is as season.yaml would leave it. */
export function fileOf(holds: FileSpec['holds'], path: string, more: Partial<FileSpec> = {}): FileSpec {
  return {
    pattern: path,
    at: { line: 1, column: 1 },
    paths: [path],
    holds,
    shape: 'long',
    columns: null,
    constants: {},
    timeFormat: null,
    timeZone: null,
    delimiter: null,
    decimal: null,
    format: null,
    role: 'season',
    ...more,
  };
}

/** A season by hand: bins B1 (cable C1: 3 sensors, C2: 1) and B2 (C1: 1), fans F1 and F2, tariff T1, Chicago, 300 m. */
export function seasonOf(folder: string, files: FileSpec[], more: Partial<Season> = {}): Season {
  return {
    title: 'Hand-made',
    folder,
    startsMs: null,
    endsMs: null,
    preparedFor: null,
    preparedBy: null,
    site: { latitudeDeg: null, longitudeDeg: null, elevationM: 300, timeZone: 'America/Chicago' },
    showUnits: 'us',
    currency: 'USD',
    tariffs: [
      {
        id: 'T1',
        energy: [{ pricePerKwh: 0.1, when: null }],
        demand: [],
        fixedPerMonth: null,
        connectedPerHpYear: null,
        minimumPerMonth: null,
      },
    ],
    prices: {},
    dryingAlternative: null,
    bins: [binOf('B1', [cable('C1', [0.5, 1.5, 2.5]), cable('C2', [1])]), binOf('B2', [cable('C1', [0.6])])],
    fans: [fanOf('F1'), fanOf('F2')],
    sensors: {
      temperature: { accuracyK: null, noiseK: null, biasK: null },
      moisture: { accuracyWb: null, noiseWb: null, biasWb: null, isotherm: null },
    },
    files,
    ...more,
  };
}

/** A folder with these files, and the way to take it away again. */
export function folderOf(files: Readonly<Record<string, string | Uint8Array>>): { folder: string; remove: () => void } {
  const folder = mkdtempSync(join(tmpdir(), 'fanbook-'));
  for (const [path, data] of Object.entries(files)) {
    mkdirSync(dirname(join(folder, path)), { recursive: true });
    writeFileSync(join(folder, path), data);
  }
  return { folder, remove: () => rmSync(folder, { recursive: true, force: true }) };
}
