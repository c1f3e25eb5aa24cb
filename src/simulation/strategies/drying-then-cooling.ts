import { LAYER_SLACK_WB } from '../run/reached.ts';
import type { Strategy } from './strategy.ts';

/** Place in the memory: 1 once the grain has dried. */
const DRIED = 0;

export const dryingThenCooling: Strategy = {
  id: 'drying-then-cooling',
  title: 'Drying, then cooling',
  words:
    'The fan runs while the outdoor humidity is below a limit until the grain’s mean moisture has come to the target and no layer lies far above it; from then on only while the air is cooler than the warmest grain by a difference, until the mean has come to the target temperature where one is stated (common practice). A bin without a target moisture is cooled from the start.',
  parameters: [
    { name: 'rh', words: 'outdoor relative humidity below which it dries', unit: '1', usual: 0.75, range: [0.2, 1] },
    { name: 'coolerK', words: 'by how much the air must be cooler afterwards', unit: 'K', usual: 5, range: [0, 25] },
  ],
  sourceKey: null,
  endsItself: true,
  fan: ({ grainWb, wettestWb, targetWb, grainC, targetC, outdoorRh, plenumC, warmestC }, { rh, coolerK }, memory) => {
    // NaN, no target: neither lies above it.
    if (!(grainWb > targetWb || wettestWb > targetWb + LAYER_SLACK_WB)) memory[DRIED] = 1;
    if (memory[DRIED] === 0) return outdoorRh < rh ? 1 : 0;
    return plenumC < warmestC - coolerK && !(grainC <= targetC) ? 1 : 0;
  },
};
