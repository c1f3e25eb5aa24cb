import { errorText } from '../../base/error-text.ts';
import type { RunSpec } from '../../simulation/run/run-spec.ts';
import { type FinishedRun, runNumbers } from './run-numbers.ts';
import { type FromLog, runStrategy } from './run-strategy.ts';

/**
 * Run strategies through one bin's season, one after the other. A run that breaks says so and takes no other with it.
 *
 * @returns  in the order of `strategies`
 */
export function runGroup(
  spec: RunSpec,
  strategies: readonly string[],
  fromLog: FromLog,
  bushels: number | null,
): FinishedRun[] {
  return strategies.map((id) => {
    try {
      const { outcome, why } = runStrategy(spec, id, fromLog);
      return { numbers: outcome === null ? null : runNumbers(outcome, spec.hours.startMs, bushels), why };
    } catch (error) {
      const said = errorText(error);
      return { numbers: null, why: `The run broke: ${said}` };
    }
  });
}
