import type { Entry } from '../report/page.ts';
import type { Units } from '../report/units.ts';
import { STRATEGIES } from '../simulation/strategies/strategies.ts';

/** What each strategy does, in words, with the parameters that it was run with. */
export function strategyEntries(units: Units): Entry[] {
  return STRATEGIES.map(({ title, words, parameters }) => ({
    term: title,
    text: words,
    details: parameters.map(({ words: of, unit, usual }) => `${of}: ${parameterSaid(unit, usual, units)}`),
  }));
}

function parameterSaid(unit: '1' | 'degC' | 'K' | 'h', value: number, units: Units): string {
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
