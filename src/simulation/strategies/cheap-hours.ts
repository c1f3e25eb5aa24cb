import type { Strategy } from './strategy.ts';

export const cheapHours: Strategy = {
  id: 'cheap-hours',
  title: 'Cheap hours',
  words:
    'The fan runs in the hours whose energy is cheap among those of the day ahead (a tariff is known in advance). Where all hours cost the same it runs always.',
  parameters: [
    {
      name: 'share',
      words: 'an hour is cheap up to this part of the way from the day’s cheapest to its dearest price',
      short: 'up to # of the way',
      unit: '1',
      usual: 0.5,
      range: [0, 1],
    },
  ],
  sourceKey: null,
  ownRule: true,
  fan: ({ pricePerKwh, cheapestPerKwh, dearestPerKwh }, { share }) =>
    // Without prices there is nothing to choose by.
    pricePerKwh > cheapestPerKwh + share * (dearestPerKwh - cheapestPerKwh) ? 0 : 1,
};
