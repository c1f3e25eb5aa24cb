import type { Units } from '../report/units.ts';
import { readWay } from '../simulation/strategies/chosen-way.ts';
import type { Strategy } from '../simulation/strategies/strategy.ts';
import { parameterSaid } from './strategy-entries.ts';

/** `Humidity limit, below 65.0 %`: a rule in words, with the parameters that a user chose otherwise than usual. */
export function wayTitle({ title, parameters, chosen = [] }: Strategy, units: Units): string {
  const said = parameters
    .filter(({ name }) => chosen.includes(name))
    .map(({ short, words, unit, usual }) => {
      const value = parameterSaid(unit, usual, units);
      return short === undefined ? `${words}: ${value}` : short.replace('#', value);
    });
  return [title, ...said].join(', ');
}

/** The same of a way by its name; null where the kit has no such way. */
export function wayTitleOf(name: string, units: Units): string | null {
  const read = readWay(name);
  return read.ok ? wayTitle(read.strategy, units) : null;
}
