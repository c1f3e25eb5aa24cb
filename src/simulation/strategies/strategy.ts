import type { View } from '../run/view.ts';

/** A number that a strategy hangs on. Inside: SI and fractions. */
export interface Parameter {
  name: string;
  /** what it is, a phrase */
  words: string;
  /** the rule's title with it, `#` for the value: `below #`; left out: `words` and the value */
  short?: string;
  unit: '1' | 'degC' | 'K' | 'h';
  /** a moisture (wet basis) or a humidity is told in percent on pages */
  usual: number;
  range: readonly [low: number, high: number];
}

export type Parameters = Readonly<Record<string, number>>;

/** How a fan is run, as a pure function of what a controller could know. */
export interface Strategy {
  /** as season.yaml and `summary.json` name it; with chosen parameters `wayName` */
  id: string;
  title: string;
  /** plain words, with the parameters' numbers left to the page */
  words: string;
  parameters: readonly Parameter[];
  /** names of those that a user chose otherwise than usual; left out: none */
  chosen?: readonly string[];
  /** key of the bibliography; null: common practice, no source of it was read */
  sourceKey: string | null;
  /** true: made here and nobody's practice; left out: it is not */
  ownRule?: true;
  /** true: it knows by itself when the grain needs no more, see `untilReached`; left out: it does not */
  endsItself?: boolean;
  /**
   * Share of this hour in which the fan runs, 0 to 1.
   *
   * @param memory  numbers that the strategy keeps from hour to hour, all 0 at first, [MEMORY]
   */
  fan(view: View, parameters: Parameters, memory: Float64Array): number;
  /** whether the heater burns while the fan runs; left out: never */
  heater?(view: View, parameters: Parameters, memory: Float64Array): boolean;
}

/** Numbers that a strategy may keep. */
export const MEMORY = 8;
