import type { Entry } from '../report/page.ts';
import type { Units } from '../report/units.ts';
import { STRATEGIES } from '../simulation/strategies/strategies.ts';
import type { Strategy } from '../simulation/strategies/strategy.ts';
import { sourceText } from './methods/source-text.ts';

/** What each strategy does, in words, with the usual values of its parameters and whose rule it is. @throws RangeError for a source that is not in the bibliography */
export function strategyEntries(units: Units): Entry[] {
  return STRATEGIES.map((one) => ({
    term: one.title,
    text: one.words,
    details: [
      ...one.parameters.map(({ words: of, unit, usual }) => `${of}: ${parameterSaid(unit, usual, units)}`),
      `Source: ${ruleSource(one)}.`,
    ],
  }));
}

/** How a reader gets other values than the usual ones. */
export const OTHER_PARAMETERS =
  'The rules are run here with these usual values. A sweep (npm run sweep -- --help) and a notebook’s tryWays take others, and tell each way by them.';

/** Keys of the bibliography that the rules are from. */
export const RULE_SOURCES: readonly string[] = STRATEGIES.flatMap(({ sourceKey }) =>
  sourceKey === null ? [] : [sourceKey],
);

function ruleSource({ sourceKey, ownRule }: Strategy): string {
  if (sourceKey !== null) return sourceText({ key: sourceKey });
  return ownRule === true ? 'none, the rule is the kit’s own' : 'common practice; no publication of it was read';
}

/** A parameter's value in the reader's units. */
export function parameterSaid(unit: '1' | 'degC' | 'K' | 'h', value: number, units: Units): string {
  switch (unit) {
    case 'degC':
      return units.say('temperature', value);
    case 'K':
      return units.say('temperature difference', value);
    case 'h':
      return `${value} h`;
    default:
      return units.say('share', value);
  }
}
