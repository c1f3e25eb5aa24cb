import { RESISTANCE_CURVES } from '../../bin/resistance-curves.ts';
import { KERNEL_DENSITY_KG_M3 } from '../../grain/bulk.ts';
import { BULK_DENSITY_LINES } from '../../grain/bulk-density.ts';
import { CONDUCTIVITY_LINES } from '../../grain/conductivity.ts';
import { CROPS } from '../../grain/crops.ts';
import { ISOTHERM_CONSTANTS } from '../../grain/isotherm-constants.ts';
import { MISSING_PROPERTIES } from '../../grain/missing.ts';
import { SPECIFIC_HEAT_LINES } from '../../grain/specific-heat.ts';
import { STORAGE_RULES } from '../../grain/storage-rules.ts';
import type { Table } from '../../report/page.ts';
import { capital } from '../words.ts';
import { equationText, unitsText } from './equation-text.ts';
import { LB_KG } from './printed-units.ts';
import { resistanceCropOf } from './season-crops.ts';
import { sourceText } from './source-text.ts';

/** A constant with all its digits, as the code holds it. */
export const constant = (value: number) => equationText(String(value));
export const known = { seen: 'read', memory: 'from memory' } as const;

/** All constants that the equations take by crop, made from the tables that the code uses. */
export function constantTables(crops: readonly string[]): Table[] {
  const first = <T>(rows: readonly T[], cropOf: (row: T) => string) => [
    ...rows.filter((row) => crops.includes(cropOf(row))),
    ...rows.filter((row) => !crops.includes(cropOf(row))),
  ];
  const ownResistance = crops.map(resistanceCropOf);
  return [
    isothermTable(first(ISOTHERM_CONSTANTS, (row) => row.crop)),
    resistanceTable([
      ...RESISTANCE_CURVES.filter((row) => ownResistance.includes(row.crop)),
      ...RESISTANCE_CURVES.filter((row) => !ownResistance.includes(row.crop)),
    ]),
    cropTable(first(CROPS, (row) => row.id)),
    storageTable(first(STORAGE_RULES, (row) => row.crop)),
    heatTable(first(SPECIFIC_HEAT_LINES, (row) => row.crop)),
    conductivityTable(),
    densityTable(),
    bulkTable(),
    missingTable(first(MISSING_PROPERTIES, (row) => row.crop)),
  ];
}

/** A column of text. */
export const text = (key: string, label: string) => ({ key, label, quantity: null });

function isothermTable(rows: typeof ISOTHERM_CONSTANTS): Table {
  return {
    id: 'isotherms',
    caption: 'Constants of the isotherms: T in °C, M in percent of the dry matter',
    columns: [
      text('grain', 'Grain'),
      text('equation', 'Equation'),
      text('a', 'A'),
      text('b', 'B'),
      text('c', 'C'),
      text('confirmation', 'How known, and borne out by'),
    ],
    rows: rows.map((row) => ({
      grain: capital(row.grain),
      equation: `${row.equation} ${row.edition}`,
      a: constant(row.a),
      b: constant(row.b),
      c: constant(row.c),
      confirmation: unitsText(`${capital(known[row.provenance])}; ${row.confirmation}`),
    })),
    folded: 'on screen',
  };
}

function resistanceTable(rows: readonly (typeof RESISTANCE_CURVES)[number][]): Table {
  return {
    id: 'resistance',
    caption: 'Constants of the airflow resistance: Pa per m, m/s over the floor',
    columns: [
      text('crop', 'Crop'),
      text('set', 'Set'),
      text('a', 'a'),
      text('b', 'b'),
      text('range', 'Measured, m/s'),
      text('confirmation', 'How known, and borne out by'),
    ],
    rows: rows.map((row) => ({
      crop: cropName(row.crop),
      set: row.set,
      a: constant(row.a),
      b: constant(row.b),
      range: row.rangeMS.join(' to '),
      confirmation: unitsText(`${capital(known[row.provenance])}; ${row.confirmation}`),
    })),
    folded: 'on screen',
  };
}

function cropTable(rows: typeof CROPS): Table {
  return {
    id: 'crops',
    caption: 'Crops: legal bushel, isotherm taken where none is named, multiplier for packing and fines',
    columns: [
      text('name', 'Crop'),
      text('bushel', 'Bushel, lb'),
      text('isotherm', 'Isotherm'),
      text('why', 'Why that one'),
      text('factor', 'Packing and fines'),
    ],
    rows: rows.map((row) => ({
      name: row.name,
      bushel: constant(Math.round((row.legalBushelKg / LB_KG) * 1e6) / 1e6),
      isotherm: row.isotherm,
      why: capital(unitsText(row.isothermWhy)),
      factor: constant(row.airflowFactor),
    })),
    folded: 'on screen',
  };
}

function storageTable(rows: typeof STORAGE_RULES): Table {
  return {
    id: 'storage-rules',
    caption: 'Rules for storage time: what they count and how far they are data',
    columns: [
      text('crop', 'Crop'),
      text('name', 'Rule'),
      text('criterion', 'The time is over when'),
      text('honesty', 'How far it is data'),
      text('source', 'Source'),
    ],
    rows: rows.map((row) => ({
      crop: cropName(row.crop),
      name: row.name,
      criterion: capital(row.criterion),
      honesty: unitsText(row.honesty),
      source: row.sourceKeys.map((key) => sourceText({ key })).join('. '),
    })),
    folded: 'on screen',
  };
}

function heatTable(rows: typeof SPECIFIC_HEAT_LINES): Table {
  return {
    id: 'specific-heat',
    caption: 'Specific heat: a and b, J/(kg K) and per percent of moisture',
    columns: [
      text('crop', 'Crop'),
      text('name', 'Line'),
      text('a', 'a'),
      text('b', 'b'),
      text('basis', 'Basis'),
      text('range', 'Moisture, %'),
      text('source', 'Source'),
    ],
    rows: rows.map((row) => ({
      crop: cropName(row.crop),
      name: row.name,
      a: constant(row.baseJKgK),
      b: constant(Math.round(row.slopeJKgKPct * 1e6) / 1e6),
      basis: row.basis,
      range: row.rangePct.join(' to '),
      source: sourceText({ key: row.sourceKey }),
    })),
    folded: 'on screen',
  };
}

function conductivityTable(): Table {
  return {
    id: 'conductivity',
    caption: 'Conductivity: a and b, W/(m K) and per percent of moisture, wet basis',
    columns: [text('crop', 'Crop'), text('a', 'a'), text('b', 'b')],
    rows: Object.entries(CONDUCTIVITY_LINES).map(([crop, [a, b]]) => ({
      crop: cropName(crop),
      a: constant(a),
      b: constant(b),
    })),
    folded: 'on screen',
  };
}

function densityTable(): Table {
  return {
    id: 'kernels',
    caption: 'Density of whole kernels, kg/m³',
    columns: [text('crop', 'Crop'), text('density', 'Density')],
    rows: Object.entries(KERNEL_DENSITY_KG_M3).map(([crop, density]) => ({
      crop: cropName(crop),
      density: constant(density),
    })),
    folded: 'on screen',
  };
}

function bulkTable(): Table {
  return {
    id: 'bulk-density',
    caption: 'Bulk density by moisture: a and b, kg/m³ and per percent of moisture, wet basis',
    columns: [
      text('crop', 'Crop'),
      text('name', 'Type'),
      text('a', 'a'),
      text('b', 'b'),
      text('range', 'Moisture, %'),
      text('source', 'Source'),
    ],
    rows: BULK_DENSITY_LINES.map((row) => ({
      crop: cropName(row.crop),
      name: row.name,
      a: constant(row.baseKgM3),
      b: constant(row.slopeKgM3Pct),
      range: row.rangePct.join(' to '),
      source: sourceText({ key: row.sourceKey }),
    })),
    folded: 'on screen',
  };
}

function missingTable(rows: typeof MISSING_PROPERTIES): Table {
  return {
    id: 'missing',
    caption: 'What the kit does not know of a crop, and so does not guess',
    columns: [text('crop', 'Crop'), text('property', 'Property'), text('why', 'Why')],
    rows: rows.map((row) => ({ crop: cropName(row.crop), property: row.property, why: row.why })),
    folded: 'on screen',
  };
}

/** The trade's name of a crop; the tables hold some that the crop table does not. */
export function cropName(id: string): string {
  return CROPS.find((crop) => crop.id === id)?.name ?? capital(id.replaceAll('-', ' '));
}
