import { RESISTANCE_CURVES } from '../../bin/resistance-curves.ts';
import { KERNEL_DENSITY_KG_M3 } from '../../grain/bulk.ts';
import { BULK_DENSITY_LINES } from '../../grain/bulk-density.ts';
import { CONDUCTIVITY_LINES } from '../../grain/conductivity.ts';
import { CROPS } from '../../grain/crops.ts';
import { ISOTHERM_CONSTANTS } from '../../grain/isotherm-constants.ts';
import { MISSING_PROPERTIES } from '../../grain/missing.ts';
import { SPECIFIC_HEAT_LINES } from '../../grain/specific-heat.ts';
import { STORAGE_RULES } from '../../grain/storage-rules.ts';
import type { Cell, Column, OwnNumber, Table } from '../../report/page.ts';
import { capital } from '../words.ts';
import { cropName } from './crop-name.ts';
import { unitsText } from './equation-text.ts';
import { LB_KG } from './printed-units.ts';
import { resistanceCropOf } from './season-crops.ts';
import { sourceText } from './source-text.ts';

/** A constant with all its digits, as the code holds it. */
export const constant = (value: number): OwnNumber => ({ of: 'constant', amount: value });
export const known = { seen: 'read', memory: 'from memory' } as const;

/** All constants that the equations take by crop, made from the tables that the code uses. */
export function constantTables(crops: readonly string[]): Table[] {
  const first = <T>(rows: readonly T[], nameOf: (row: T) => string, own: readonly (string | null)[] = crops) => [
    ...rows.filter((row) => own.includes(nameOf(row))),
    ...rows.filter((row) => !own.includes(nameOf(row))),
  ];
  return [
    isothermTable(first(ISOTHERM_CONSTANTS, (row) => row.crop)),
    resistanceTable(first(RESISTANCE_CURVES, (row) => row.crop, crops.map(resistanceCropOf))),
    cropTable(first(CROPS, (row) => row.id)),
    storageTable(first(STORAGE_RULES, (row) => row.crop)),
    heatTable(first(SPECIFIC_HEAT_LINES, (row) => row.crop)),
    conductivityTable(),
    densityTable(),
    bulkTable(),
    missingTable(first(MISSING_PROPERTIES, (row) => row.crop)),
  ];
}

/** Columns of text and of constants, their labels by key. */
export function constantColumns(labels: Readonly<Record<string, string>>, rows: Table['rows']): Column[] {
  const isNumber = (cell: Cell | undefined) => typeof cell === 'object' && cell !== null;
  return Object.entries(labels).map(([key, label]) => ({
    key,
    label,
    quantity: rows.some((row) => isNumber(row[key])) ? 'own' : null,
  }));
}

function constantTable(
  id: string,
  caption: string,
  labels: Readonly<Record<string, string>>,
  rows: Table['rows'],
): Table {
  return { id, caption, columns: constantColumns(labels, rows), rows, folded: 'on screen' };
}

function isothermTable(rows: typeof ISOTHERM_CONSTANTS): Table {
  return constantTable(
    'isotherms',
    'Constants of the isotherms: T in °C, M in percent of the dry matter',
    { grain: 'Grain', equation: 'Equation', a: 'A', b: 'B', c: 'C', confirmation: 'How known, and borne out by' },
    rows.map((row) => ({
      grain: capital(row.grain),
      equation: `${row.equation} ${row.edition}`,
      a: constant(row.a),
      b: constant(row.b),
      c: constant(row.c),
      confirmation: unitsText(`${capital(known[row.provenance])}; ${row.confirmation}`),
    })),
  );
}

function resistanceTable(rows: typeof RESISTANCE_CURVES): Table {
  return constantTable(
    'resistance',
    'Constants of the airflow resistance: Pa per m, m/s over the floor',
    {
      crop: 'Crop',
      set: 'Set',
      a: 'a, Pa s²/m³',
      b: 'b, m² s/m³',
      range: 'Measured, m/s',
      confirmation: 'How known, and borne out by',
    },
    rows.map((row) => ({
      crop: cropName(row.crop),
      set: row.set,
      a: constant(row.a),
      b: constant(row.b),
      range: row.rangeMS.join(' to '),
      confirmation: unitsText(`${capital(known[row.provenance])}; ${row.confirmation}`),
    })),
  );
}

function cropTable(rows: typeof CROPS): Table {
  return constantTable(
    'crops',
    'Crops: legal bushel, isotherm taken where none is named, multiplier for packing and fines',
    { name: 'Crop', bushel: 'Bushel, lb', isotherm: 'Isotherm', why: 'Why that one', factor: 'Packing and fines, ×' },
    rows.map((row) => ({
      name: row.name,
      bushel: constant(Math.round((row.legalBushelKg / LB_KG) * 1e6) / 1e6),
      isotherm: row.isotherm,
      why: capital(unitsText(row.isothermWhy)),
      factor: constant(row.airflowFactor),
    })),
  );
}

function storageTable(rows: typeof STORAGE_RULES): Table {
  return constantTable(
    'storage-rules',
    'Rules for storage time: what they count and how far they are data',
    { crop: 'Crop', name: 'Rule', criterion: 'The time is over when', honesty: 'How far it is data', source: 'Source' },
    rows.map((row) => ({
      crop: cropName(row.crop),
      name: row.name,
      criterion: capital(row.criterion),
      honesty: unitsText(row.honesty),
      source: row.sourceKeys.map((key) => sourceText({ key })).join('. '),
    })),
  );
}

function heatTable(rows: typeof SPECIFIC_HEAT_LINES): Table {
  return constantTable(
    'specific-heat',
    'Specific heat: a + b × moisture',
    {
      crop: 'Crop',
      name: 'Line',
      a: 'a, J/(kg K)',
      b: 'b, J/(kg K) per %',
      basis: 'Basis',
      range: 'Moisture, %',
      source: 'Source',
    },
    rows.map((row) => ({
      crop: cropName(row.crop),
      name: row.name,
      a: constant(row.baseJKgK),
      b: constant(Math.round(row.slopeJKgKPct * 1e6) / 1e6),
      basis: row.basis,
      range: row.rangePct.join(' to '),
      source: sourceText({ key: row.sourceKey }),
    })),
  );
}

function conductivityTable(): Table {
  return constantTable(
    'conductivity',
    'Conductivity: a + b × moisture, wet basis',
    { crop: 'Crop', a: 'a, W/(m K)', b: 'b, W/(m K) per %' },
    Object.entries(CONDUCTIVITY_LINES).map(([crop, [a, b]]) => ({
      crop: cropName(crop),
      a: constant(a),
      b: constant(b),
    })),
  );
}

function densityTable(): Table {
  return constantTable(
    'kernels',
    'Density of whole kernels',
    { crop: 'Crop', density: 'Density, kg/m³' },
    Object.entries(KERNEL_DENSITY_KG_M3).map(([crop, density]) => ({
      crop: cropName(crop),
      density: constant(density),
    })),
  );
}

function bulkTable(): Table {
  return constantTable(
    'bulk-density',
    'Bulk density by moisture: a + b × moisture, wet basis',
    { crop: 'Crop', name: 'Type', a: 'a, kg/m³', b: 'b, kg/m³ per %', range: 'Moisture, %', source: 'Source' },
    BULK_DENSITY_LINES.map((row) => ({
      crop: cropName(row.crop),
      name: row.name,
      a: constant(row.baseKgM3),
      b: constant(row.slopeKgM3Pct),
      range: row.rangePct.join(' to '),
      source: sourceText({ key: row.sourceKey }),
    })),
  );
}

function missingTable(rows: typeof MISSING_PROPERTIES): Table {
  return constantTable(
    'missing',
    'What the kit does not know of a crop, and so does not guess',
    { crop: 'Crop', property: 'Property', why: 'Why' },
    rows.map((row) => ({ crop: cropName(row.crop), property: row.property, why: row.why })),
  );
}
