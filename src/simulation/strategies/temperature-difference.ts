import type { Strategy } from './strategy.ts';

export const temperatureDifference: Strategy = {
  id: 'temperature-difference',
  title: 'Temperature difference',
  words: 'The fan runs while the air that would enter is cooler than the warmest grain by a difference.',
  parameters: [
    { name: 'coolerK', words: 'by how much the air must be cooler', unit: 'K', usual: 5, range: [0, 25] },
    { name: 'coldestC', words: 'grain is not cooled with air below', unit: 'degC', usual: -10, range: [-40, 20] },
  ],
  sourceKey: null,
  fan: ({ plenumC, warmestC }, { coolerK, coldestC }) => (plenumC < warmestC - coolerK && plenumC > coldestC ? 1 : 0),
};
