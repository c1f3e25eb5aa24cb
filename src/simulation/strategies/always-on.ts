import type { Strategy } from './strategy.ts';

export const alwaysOn: Strategy = {
  id: 'always-on',
  title: 'Always on',
  words: 'The fan runs day and night, whatever the weather.',
  parameters: [],
  sourceKey: 'ndsu-2009-wheat-drying',
  fan: () => 1,
};
