import { isDry, isWet, wouldWet } from './is-dry.ts';
import type { Strategy } from './strategy.ts';

/** Place in the memory: 0 before the first hour, then 1 while the grain is to be dried, 2 once it is dry. */
const STAGE = 0;
const DRIES = 1;
const DRIED = 2;

export const dryingThenCooling: Strategy = {
  id: 'drying-then-cooling',
  title: 'Drying, then cooling',
  words:
    'The fan runs while the outdoor humidity is below a limit until the grain’s mean moisture has come to the target and no layer lies far above it; from then on only while the air is cooler than the warmest grain by a difference and would not wet it again, until the mean has come to the target temperature where one is stated. Grain that has become too wet again is dried again. A bin whose goal is cooling, or without a target moisture, or at it from the start, is cooled from the start.',
  parameters: [
    {
      name: 'rh',
      words: 'outdoor relative humidity below which it dries',
      short: 'dries below #',
      unit: '1',
      usual: 0.75,
      range: [0.2, 1],
    },
    {
      name: 'cooler',
      words: 'by how much the air must be cooler afterwards',
      short: 'then # cooler',
      unit: 'K',
      usual: 5,
      range: [0, 25],
    },
  ],
  sourceKey: null,
  endsItself: true,
  fan: (view, { rh, cooler }, memory) => {
    const { goal, grainC, targetC, outdoorRh, plenumC, warmestC } = view;
    const dries = goal !== 'cool' && (memory[STAGE] === DRIES ? !isDry(view) : isWet(view));
    memory[STAGE] = dries ? DRIES : DRIED;
    if (dries) return outdoorRh < rh ? 1 : 0;
    return plenumC < warmestC - cooler && !(grainC <= targetC) && !(goal === 'dry' && wouldWet(view)) ? 1 : 0;
  },
};
