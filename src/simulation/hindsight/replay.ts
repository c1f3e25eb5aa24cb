/** What a bed has come to, as its limits are put: moistures wet basis, fractions; degC; share of the allowable storage time; dry matter lost, fraction, NaN where no rule tells it. */
export interface Standing {
  meanWb: number;
  wettestWb: number;
  driestWb: number;
  meanC: number;
  warmestC: number;
  lifeUsed: number;
  lossMean: number;
  /** true once the bin's temperatures have been reached, in time: they ask for nothing any more */
  cooled: boolean;
  /** points that they were short of at the hour by which it had to be; 0 until then, and where it was */
  missed: number;
}

/**
 * A bin's season that can be played hour by hour and put back, for a search that tries one way and then another. `State` is
 * whatever the replay keeps; the search only hands it back.
 */
export interface Replay<State> {
  /** hours that may be chosen */
  readonly hours: number;
  /** 1: fan off or on; 2: also with its heater */
  readonly ways: 1 | 2;
  newState(): State;
  keep(into: State): void;
  restore(from: State): void;
  /** play an hour; `way` 0: off, 1: the fan, 2: fan and heater */
  play(hour: number, way: number): void;
  /** money spent so far, and what it makes later bills owe */
  cost(): number;
  /** fill `into`. No allocation */
  stand(into: Standing): void;
}

export function newStanding(): Standing {
  return {
    meanWb: 0,
    wettestWb: 0,
    driestWb: 0,
    meanC: 0,
    warmestC: 0,
    lifeUsed: 0,
    lossMean: 0,
    cooled: false,
    missed: 0,
  };
}
