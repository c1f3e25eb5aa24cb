import type { Strategy } from './strategy.ts';

export const equilibriumWindow: Strategy = {
  id: 'equilibrium-window',
  title: 'Equilibrium window',
  words:
    'The fan runs while the moisture that the grain would come to in the plenum’s air lies in a window around the target: air that would dry it too far is left out as well as air that would wet it.',
  parameters: [
    {
      name: 'below',
      words: 'so far below the target at most',
      short: 'down to # below',
      unit: '1',
      usual: 0.03,
      range: [0, 0.2],
    },
    {
      name: 'above',
      words: 'so far above it at most',
      short: 'up to # above',
      unit: '1',
      usual: 0.005,
      range: [0, 0.1],
    },
  ],
  sourceKey: 'bartosik-maier-2007',
  fan: ({ plenumEmcWb, targetWb, grainWb }, { below, above }) => {
    // Without a stated target the grain is kept where it is.
    const middle = Number.isNaN(targetWb) ? grainWb : targetWb;
    return plenumEmcWb > middle - below && plenumEmcWb < middle + above ? 1 : 0;
  },
};
