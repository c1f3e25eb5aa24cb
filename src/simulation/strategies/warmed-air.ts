import type { Strategy } from './strategy.ts';

export const warmedAir: Strategy = {
  id: 'warmed-air',
  title: 'Warmed air',
  words:
    'The fan runs always; its heater burns while the plenum’s air would leave the grain wetter than the target. Bins without a heater are not run by it.',
  parameters: [
    {
      name: 'above',
      words: 'so far above the target that the heater burns',
      short: 'burns from # above',
      unit: '1',
      usual: 0,
      range: [-0.05, 0.1],
    },
  ],
  sourceKey: null,
  fan: () => 1,
  heater: ({ plenumEmcWb, targetWb }, { above }) => plenumEmcWb > targetWb + above,
};
