import type { Strategy } from './strategy.ts';

export const humidityLimit: Strategy = {
  id: 'humidity-limit',
  title: 'Humidity limit',
  words: 'The fan runs while the outdoor relative humidity is below a limit (a humidistat).',
  parameters: [
    {
      name: 'rh',
      words: 'outdoor relative humidity below which the fan runs',
      short: 'below #',
      unit: '1',
      usual: 0.7,
      range: [0.2, 1],
    },
  ],
  sourceKey: null,
  fan: ({ outdoorRh }, { rh }) => (outdoorRh < rh ? 1 : 0),
};
