import type { Strategy } from './strategy.ts';

export const temperatureDifference: Strategy = {
  id: 'temperature-difference',
  title: 'Temperature difference',
  words: 'The fan runs while the air that would enter is cooler than the warmest grain by a difference.',
  parameters: [
    {
      name: 'cooler',
      words: 'by how much the air must be cooler',
      short: '# cooler',
      unit: 'K',
      usual: 5,
      range: [0, 25],
    },
    {
      name: 'coldest',
      words: 'grain is not cooled with air below',
      short: 'not below #',
      unit: 'degC',
      usual: -10,
      range: [-40, 20],
    },
  ],
  sourceKey: null,
  fan: ({ plenumC, warmestC }, { cooler, coldest }) => (plenumC < warmestC - cooler && plenumC > coldest ? 1 : 0),
};
