import type { FittedValues } from '../../src/analysis/model/fitted-values.ts';
import type { BinModel } from '../../src/analysis/model/model-types.ts';
import { withheld } from '../../src/base/estimate.ts';

/**
 * A model as a fit would leave it, trusted, so that nothing waits for one.
 *
 * @param fitted   what is left out is as the season states it
 */
export function statedModel(fitted: Partial<FittedValues> | null, changes: Partial<BinModel> = {}): BinModel {
  return {
    fitted: fitted as FittedValues | null,
    cables: [],
    flowM3S: withheld('not asked'),
    moistureBiasPoints: withheld('not asked'),
    endMoistureWb: withheld('not asked'),
    mayBes: [],
    isotherms: [],
    trained: null,
    unseen: null,
    trusted: true,
    why: 'Stated by a test.',
    wouldHelp: [],
    notes: [],
    ...changes,
  };
}
