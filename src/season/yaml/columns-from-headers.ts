import { linearUnit, unitsOf } from '../../base/units.ts';
import type { ColumnSpec, Holds } from '../season.ts';
import { LAYOUTS } from './column-keys.ts';

/** Keys whose unit the contract names or which have one unit wherever grain is stored. */
const USUAL: Readonly<Record<string, string>> = {
  current: 'A',
  power: 'kW',
  energy: 'kWh',
  run_hours: 'h',
  demand: 'kW',
  humidity: '%',
  moisture: '%',
};

export interface HeaderColumns {
  columns: Record<string, ColumnSpec>;
  /** sentences about columns that cannot be used; empty when all is well */
  problems: string[];
}

/**
 * The columns of a file without `columns`: its headers are the keys of the contract, in any case, with the unit in the
 * header where it is not plain: `temperature (degF)`, `temperature [degF]` or `temperature_degF`. Temperatures, pressures,
 * weights and lengths have no usual unit, and one guessed wrong would spoil every number after it.
 */
export function columnsFromHeaders(holds: Holds, headers: readonly string[], currency: string): HeaderColumns {
  const { keys } = LAYOUTS[holds];
  const columns: Record<string, ColumnSpec> = {};
  const problems: string[] = [];
  for (const header of headers) {
    const found = splitHeader(header, Object.keys(keys));
    if (found === null) continue;
    const { key, unit: written } = found;
    const kind = keys[key];
    const unit = kind === null ? null : (written ?? (kind === 'money' ? currency : USUAL[key]) ?? null);
    const allowed = kind === null ? '' : unitsOf(kind, currency).join(', ');
    if (columns[key] !== undefined) {
      problems.push(`two columns are headed ${key}; name the right one under \`columns\` in season.yaml.`);
    } else if (kind !== null && unit === null) {
      problems.push(
        `the column "${header}" has no unit (units: ${allowed}). Head it e.g. "${key} (${unitsOf(kind, currency)[0]})", or name it under \`columns\` in season.yaml.`,
      );
    } else if (kind !== null && unit !== null && linearUnit(kind, unit, currency) === null) {
      problems.push(`the column "${header}" has the unit "${unit}", which is no unit of ${kind} (units: ${allowed}).`);
    } else columns[key] = { header, unit };
  }
  return { columns, problems };
}

function splitHeader(header: string, keys: readonly string[]): { key: string; unit: string | null } | null {
  const text = header.trim();
  const match = /^(.*?)\s*[([]\s*([^)\]]+?)\s*[)\]]$/.exec(text);
  const name = (match?.[1] ?? text).toLowerCase().replace(/[\s-]+/g, '_');
  if (keys.includes(name)) return { key: name, unit: match?.[2] ?? null };
  if (match !== null) return null;
  const key = keys.find((one) => text.toLowerCase().startsWith(`${one}_`));
  return key === undefined ? null : { key, unit: text.slice(key.length + 1) };
}
