/** Ids of the strategies that the kit can simulate, which a bin may state as its own; those of `STRATEGIES` in the simulation, in its order. */
export const STRATEGY_IDS: readonly string[] = [
  'always-on',
  'daytime-hours',
  'night-hours',
  'humidity-limit',
  'temperature-difference',
  'equilibrium-window',
  'cheap-hours',
  'drying-then-cooling',
  'warmed-air',
];
