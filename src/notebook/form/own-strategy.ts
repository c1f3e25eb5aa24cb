import { AS_LOGGED, SWEPT } from '../../analysis/strategies/run-strategy.ts';
import { didYouMean } from '../../season/yaml/nearest.ts';
import type { View } from '../../simulation/run/view.ts';
import type { Parameters, Strategy } from '../../simulation/strategies/strategy.ts';

/** A way to run the fan as a notebook writes it. */
export interface OwnStrategy {
  /** lower-case words with hyphens, none of the kit's own ids */
  id: string;
  title: string;
  /** what it does, a sentence */
  words?: string;
  /**
   * Whether the fan runs in the hour, or the share of it, 0 to 1.
   *
   * @param now       what a controller could know: `outdoorC`, `outdoorRh` (fraction), `plenumC`, `grainC`, `grainWb` (fraction),
   *                  `localHour`, `pricePerKwh` …; what is not stated for a bin is NaN
   * @param settings  numbers of its own, as `settings` below states them
   * @param memory    eight numbers that it may keep from hour to hour, all 0 at first; the last three are the kit's
   */
  fan(now: View, settings: Parameters, memory: Float64Array): boolean | number;
  /** whether the heater burns while the fan runs */
  heater?(now: View, settings: Parameters, memory: Float64Array): boolean;
  settings?: Readonly<Record<string, number>>;
  /** true: it knows by itself when to rest; else it rests once the bin is at its target, as the kit's own do when they are compared */
  endsItself?: boolean;
}

const ID = /^[a-z][a-z0-9]*(-[a-z0-9]+)*$/;

/** A strategy of one's own in the form that the bed runs. @throws RangeError for an id that cannot be or is the kit's */
export function ownStrategy(own: OwnStrategy): Strategy {
  const { id, title, words = title, settings = {}, endsItself, fan, heater } = own;
  if (!ID.test(id))
    throw new RangeError(`"${id}" is no id of a strategy; write lower-case words with hyphens, e.g. dawn-hours`);
  if (id === AS_LOGGED || SWEPT.includes(id))
    throw new RangeError(`"${id}" is a strategy of the kit; give yours another id`);
  return {
    id,
    title,
    words,
    parameters: Object.entries(settings).map(([name, usual]) => ({
      name,
      words: name,
      unit: '1',
      usual,
      range: [Number.NEGATIVE_INFINITY, Number.POSITIVE_INFINITY],
    })),
    sourceKey: null,
    endsItself,
    fan: (view, parameters, memory) => shareOf(id, fan(knownOnly(view), parameters, memory)),
    ...(heater === undefined
      ? {}
      : { heater: (view, parameters, memory) => heater(knownOnly(view), parameters, memory) }),
  };
}

/** What the language itself asks any object for, `JSON.stringify` and `await`. */
const ASKED_OF_ALL = ['toJSON', 'then'];

/** A word that `now` does not have would read as undefined, compare as false, and leave the fan at rest without a word. @throws RangeError that names it */
function knownOnly(view: View): View {
  return new Proxy(view, {
    get(of, key) {
      if (typeof key === 'string' && !(key in of) && !ASKED_OF_ALL.includes(key)) {
        const known = Object.keys(of);
        throw new RangeError(`now has no "${key}".${didYouMean(key, known)} It has ${known.join(', ')}`);
      }
      return Reflect.get(of, key);
    },
  });
}

/** @throws RangeError for what is neither; a number out of range is told where it is run */
function shareOf(id: string, given: unknown): number {
  if (typeof given === 'boolean' || typeof given === 'number') return Number(given);
  const shown = typeof given === 'string' ? `"${given}"` : String(given);
  throw new RangeError(`strategy ${id}: fan gave ${shown}; true, false or a share of the hour, 0 to 1, is due`);
}
