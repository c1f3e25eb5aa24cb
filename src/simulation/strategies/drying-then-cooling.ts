import type { Strategy } from './strategy.ts';

/** Place in the memory: 1 once the grain has dried. */
const DRIED = 0;

export const dryingThenCooling: Strategy = {
  id: 'drying-then-cooling',
  title: 'Drying, then cooling',
  words:
    'The fan runs while the outdoor humidity is below a limit until the grain’s mean moisture has come to the target; from then on only while the air is cooler than the warmest grain by a difference (common practice).',
  parameters: [
    { name: 'rh', words: 'outdoor relative humidity below which it dries', unit: '1', usual: 0.75, range: [0.2, 1] },
    { name: 'coolerK', words: 'by how much the air must be cooler afterwards', unit: 'K', usual: 5, range: [0, 25] },
  ],
  sourceKey: null,
  fan: ({ grainWb, targetWb, outdoorRh, plenumC, warmestC }, { rh, coolerK }, memory) => {
    if (grainWb <= targetWb) memory[DRIED] = 1;
    if (memory[DRIED] === 1) return plenumC < warmestC - coolerK ? 1 : 0;
    return outdoorRh < rh ? 1 : 0;
  },
};
