import { linearUnit, type UnitKind } from '../base/units.ts';
import type { MeasuredKey } from './column-keys.ts';

/** A header of the form `temperature (degF)` or `temperature [degF]`, or a name alone. */
export function nameAndUnit(header: string): { name: string; unit: string | null } {
  const match = /^(.*?)\s*[([]\s*([^()[\]]+?)\s*[)\]]$/.exec(header.trim());
  return match === null ? { name: header.trim(), unit: null } : { name: match[1], unit: match[2] };
}

/**
 * The unit of a column that stands elsewhere than in `unit`: in the header as `Amps (A)`, in the key, or in the season's currency. What stands
 * in brackets and is no unit of the kind (`Run (fan 1)`) says nothing.
 */
export function impliedUnit(key: MeasuredKey, kind: UnitKind, header: string, currency: string): string | null {
  const { unit } = nameAndUnit(header);
  if (unit !== null && linearUnit(kind, unit, currency) !== null) return unit;
  return key.defaultUnit ?? (kind === 'money' ? currency : null);
}
