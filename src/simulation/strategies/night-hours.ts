import type { Strategy } from './strategy.ts';
import { withinClock } from './within-clock.ts';

export const nightHours: Strategy = {
  id: 'night-hours',
  title: 'Night hours',
  words: 'A clock runs the fan at night, when air is coolest.',
  parameters: [
    {
      name: 'from',
      words: 'local hour at which the clock switches on',
      short: 'from #',
      unit: 'h',
      usual: 21,
      range: [0, 24],
    },
    { name: 'to', words: 'local hour at which it switches off', short: 'to #', unit: 'h', usual: 9, range: [0, 24] },
  ],
  sourceKey: null,
  fan: ({ localHour }, { from, to }) => withinClock(localHour, from, to),
};
