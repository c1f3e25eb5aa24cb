import type { Strategy } from './strategy.ts';

/**
 * A fan run as written down hour by hour: as logged, or as a search found it.
 *
 * @param id     `as-logged` or `best-in-hindsight`
 * @param share  of each hour in which the fan ran, [hours of the run]; beyond its end the fan rests
 * @param heat   1 where the heater burnt, [hours of the run]; left out: never
 */
export function scheduled(id: string, title: string, share: ArrayLike<number>, heat?: ArrayLike<number>): Strategy {
  const strategy: Strategy = {
    id,
    title,
    words: 'The fan runs in the hours that were written down.',
    parameters: [],
    sourceKey: null,
    fan: ({ hourOfRun }) => (hourOfRun < share.length ? share[hourOfRun] : 0),
  };
  return heat === undefined ? strategy : { ...strategy, heater: ({ hourOfRun }) => heat[hourOfRun] === 1 };
}
