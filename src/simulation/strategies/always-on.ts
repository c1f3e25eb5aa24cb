import type { Strategy } from './strategy.ts';

export const alwaysOn: Strategy = {
  id: 'always-on',
  title: 'Always on',
  words: 'The fan runs day and night, whatever the weather (common practice in natural-air drying).',
  parameters: [],
  sourceKey: null,
  fan: () => 1,
};
