import { METHODS } from '../../base/methods/methods.ts';
import { RESISTANCE_CURVES } from '../../bin/resistance-curves.ts';
import { BULK_DENSITY_LINES } from '../../grain/bulk-density.ts';
import { ISOTHERM_CONSTANTS } from '../../grain/isotherm-constants.ts';
import { SPECIFIC_HEAT_LINES } from '../../grain/specific-heat.ts';
import { STORAGE_RULES } from '../../grain/storage-rules.ts';
import { FORMULAS } from './formulas.ts';

/** Keys of every work that definitions, formulas and their constants stand on, each once, sorted. */
export function methodSources(): string[] {
  const keys = [
    ...METHODS.flatMap((method) => method.sourceKeys),
    ...FORMULAS.flatMap((formula) => formula.sources.map((source) => source.key)),
    ...[...ISOTHERM_CONSTANTS, ...RESISTANCE_CURVES, ...SPECIFIC_HEAT_LINES, ...BULK_DENSITY_LINES].map(
      (row) => row.sourceKey,
    ),
    ...STORAGE_RULES.flatMap((rule) => rule.sourceKeys),
  ];
  return [...new Set(keys)].sort();
}
