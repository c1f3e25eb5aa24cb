import type { BinReview } from '../analysis/types.ts';
import type { BinWhatIf } from '../analysis/what-if/what-if-types.ts';
import { listed } from '../base/listed.ts';
import type { Units } from '../report/units.ts';
import { STRATEGIES } from '../simulation/strategies/strategies.ts';
import { quoted } from './words.ts';

const HEATING = STRATEGIES.filter(({ heater }) => heater !== undefined);

/** When a heater burns in the runs: where bins have one, what heats the air was run. */
export function heaterNotes(
  bins: readonly { review: Pick<BinReview, 'bin'>; whatIf: Pick<BinWhatIf, 'strategies'> }[],
): string[] {
  const names = bins
    .filter(({ whatIf }) => whatIf.strategies.some(({ id }) => HEATING.some((one) => one.id === id)))
    .map(({ review }) => review.bin.name);
  if (names.length === 0) return [];
  const heating = listed(HEATING.map(({ title }) => quoted(title)));
  return [
    `${listed(names)}: no fan log tells when a heater burns. As run it is taken to burn when the warming of the plenum’s air tells it, and without that whenever its fan does; ${heating} burns it by its own rule, the best in hindsight in the hours that pay, and all other rules leave it off.`,
  ];
}

/** What of a bin's cost is heat, where a cost of fans is told as one number. */
export function heatCostNotes(
  bins: readonly { bin: Pick<BinReview['bin'], 'name'>; fan: Pick<BinReview['fan'], 'cost' | 'heatCost' | 'fans'> }[],
  units: Units,
): string[] {
  return bins.flatMap(({ bin, fan: { cost, heatCost, fans } }) =>
    cost.value === null || !(Number(heatCost.value) > 0)
      ? []
      : [
          `${bin.name}: ${units.say('money', heatCost)} of the ${units.say('money', cost.value)} is for heat; ${fans.some(({ heater }) => heater !== undefined) ? 'the warming of the plenum’s air tells in which hours the heater burned' : 'the heater is taken to run whenever its fan does, and the lower end leaves it out'}. What it burnt or drew is not in the kWh.`,
        ],
  );
}
