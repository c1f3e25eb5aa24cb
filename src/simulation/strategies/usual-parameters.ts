import { assertRange } from '../../base/errors.ts';
import type { Parameters, Strategy } from './strategy.ts';

/**
 * A strategy's parameters, those not given at their usual values.
 *
 * @throws RangeError on one that the strategy does not have, with those that it has, or out of its range
 */
export function usualParameters({ id, parameters }: Strategy, given: Parameters): Parameters {
  const unknown = Object.keys(given).find((name) => !parameters.some((one) => one.name === name));
  if (unknown !== undefined) {
    const names = parameters.map(({ name }) => name).join(', ') || 'none';
    throw new RangeError(`${id} has no parameter "${unknown}"; it has ${names}`);
  }
  return Object.fromEntries(
    parameters.map(({ name, usual, range }) => {
      const value = given[name] ?? usual;
      assertRange(`${id}.${name}`, value, ...range);
      return [name, value];
    }),
  );
}
